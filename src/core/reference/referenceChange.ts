import type { ChangeKind } from '../catalogue/categoryChange.ts'
import { type FieldChange, fieldChanges } from '../catalogue/fieldChanges.ts'
import type { ReferenceData } from './referenceData.ts'
import { statesOf } from './referenceData.ts'
import type { ReferenceContents, ReferenceEntry, ReferenceKind } from './referenceEntry.ts'

/** What happened to one entry between two states. */
export interface ReferenceChange {
  readonly code: string
  readonly kind: ChangeKind
  /** Null where the entry is new. */
  readonly before: ReferenceEntry | null
  readonly after: ReferenceEntry
  /** Every field that differs; none where the entry is new. */
  readonly fields: readonly FieldChange[]
}

/** The change from one state of an entry to another; null where there is none. */
export function referenceChange(
  before: ReferenceEntry | null,
  after: ReferenceEntry,
): ReferenceChange | null {
  const { code } = after.content
  if (before === null) return { code, kind: 'added', before, after, fields: [] }
  const fields = fieldChanges(before.content, after.content)
  return fields.length === 0 ? null : { code, kind: changeKind(before, after), before, after, fields }
}

function changeKind(before: ReferenceEntry, after: ReferenceEntry): ChangeKind {
  if (before.content.retired === after.content.retired) return 'changed'
  return after.content.retired ? 'retired' : 'restored'
}

/** The entry of a kind and a code; null where there is none. */
export function entryAt(data: ReferenceData, kind: ReferenceKind, code: string): ReferenceEntry | null {
  const content: ReferenceContents[ReferenceKind] | undefined = data.entries[kind].get(code)
  return content === undefined ? null : ({ kind, content } as ReferenceEntry)
}

/** What the revision of `made` changed, given the state `before` it; by kind and in the order of the codes. */
export const changesOfRevision = (before: ReferenceData | null, made: ReferenceData): ReferenceChange[] =>
  statesOf(made)
    .filter(({ revision }) => revision === made.revision)
    .flatMap(({ entry }) => {
      const past = before && entryAt(before, entry.kind, entry.content.code)
      return referenceChange(past, entry) ?? []
    })
