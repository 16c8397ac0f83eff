import type { Category, CategoryMode, TypicalDraw } from './category.ts'
import { type FieldChange, fieldChanges } from './fieldChanges.ts'

export const CHANGE_KINDS = ['added', 'changed', 'retired', 'restored'] as const
export type ChangeKind = (typeof CHANGE_KINDS)[number]

/** What happened to one category between two states of the catalogue. */
export interface CategoryChange {
  readonly code: string
  readonly kind: ChangeKind
  /** Null where the category is new. */
  readonly before: Category | null
  readonly after: Category
  /** Every field that differs; none where the category is new. */
  readonly fields: readonly FieldChange[]
}

/** The change from one state of a category to another; null where there is none. */
export function categoryChange(before: Category | null, after: Category): CategoryChange | null {
  const { code } = after
  if (before === null) return { code, kind: 'added', before, after, fields: [] }
  const fields = fieldChanges(before, after, nameOfMember)
  return fields.length === 0 ? null : { code, kind: kindOf(before, after), before, after, fields }
}

function kindOf(before: Category, after: Category): ChangeKind {
  if (before.retired === after.retired) return 'changed'
  return after.retired ? 'retired' : 'restored'
}

/** A mode is the same by its name, a draw by its years of manufacture, an alias by its text. */
function nameOfMember(member: unknown): string {
  const { mode, yearFrom, yearTo } = Object(member) as Partial<CategoryMode & TypicalDraw>
  return JSON.stringify(mode ?? (yearFrom === undefined ? member : [yearFrom, yearTo]))
}

export type ChangeCounts = Readonly<Record<ChangeKind, number>>

export function countChanges(changes: readonly CategoryChange[]): ChangeCounts {
  const count = (kind: ChangeKind) => changes.filter((change) => change.kind === kind).length
  return {
    added: count('added'),
    changed: count('changed'),
    retired: count('retired'),
    restored: count('restored'),
  }
}
