import type { NewAuditEvent } from '../core/access/auditEvent.ts'
import type { RevisionNote } from '../core/catalogue/revision.ts'
import type { ReferenceEntry } from '../core/reference/referenceEntry.ts'

/**
 * What the audit trail says of an edit of tariffs or emission factors. That of one entry holds it before and after; the
 * first loading, which is of all, names its revision, which holds them.
 */
export function auditOfReference(
  { at, origin, reason, action }: RevisionNote,
  referenceRevision: number,
  changed: readonly ReferenceEntry[],
  before: ReferenceEntry | null,
): NewAuditEvent {
  const [only] = changed
  const past = { referenceRevision: referenceRevision - 1 }
  const made = { referenceRevision, reason }
  const event = { at, origin, action: `reference.${action}` }
  if (changed.length === 1 && only)
    return {
      ...event,
      subjectKind: only.kind,
      subjectId: only.content.code,
      before: before && { ...past, content: before.content },
      after: { ...made, content: only.content },
    }
  return {
    ...event,
    subjectKind: 'reference-data',
    subjectId: String(referenceRevision),
    before: past,
    after: { ...made, changedEntries: changed.length },
  }
}
