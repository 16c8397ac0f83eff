import type { NewAuditEvent } from '../core/access/auditEvent.ts'
import type { Category } from '../core/catalogue/category.ts'
import type { RevisionNote } from '../core/catalogue/revision.ts'

/**
 * What the audit trail says of an edit. That of one category holds it before and after. What an edit of several changed is
 * in the revision itself, which nobody can change either; the event names it, so that 10,000 categories are not kept twice.
 */
export function auditOfEdit(
  note: RevisionNote,
  catalogueRevision: number,
  changed: readonly Category[],
  before: readonly Category[],
): NewAuditEvent {
  const { at, origin, reason } = note
  const action = `catalogue.${note.action}`
  const [only] = changed
  const past = { catalogueRevision: catalogueRevision - 1 }
  const made = { catalogueRevision, reason }
  if (changed.length === 1 && only)
    return {
      at,
      origin,
      action,
      subjectKind: 'category',
      subjectId: only.code,
      before: before[0] ? { ...past, category: before[0] } : null,
      after: { ...made, category: only },
    }
  return {
    at,
    origin,
    action,
    subjectKind: 'catalogue',
    subjectId: String(catalogueRevision),
    before: past,
    after: { ...made, changedCategories: changed.length },
  }
}
