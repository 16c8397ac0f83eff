/** One field that differs: where (JSON Pointer, the same in both), and its value on either side. A side that has no such field lacks the member. */
export interface FieldChange {
  readonly pointer: string
  readonly before?: unknown
  readonly after?: unknown
}

/** What tells the members of a list apart, so that a list whose members are other ones, or stand in another order, is seen as another list. */
type MemberName = (member: unknown) => string

/**
 * Every field in which two JSON values differ. A list is compared member by member only where both hold the same members in
 * the same order, as `nameOf` tells them apart; otherwise the list as a whole is the field, since an index would speak of
 * different members on the two sides.
 */
export function fieldChanges(
  before: unknown,
  after: unknown,
  nameOf: MemberName = JSON.stringify,
  base = '',
): FieldChange[] {
  if (before === after) return []
  if (Array.isArray(before) && Array.isArray(after))
    return sameMembers(before, after, nameOf)
      ? before.flatMap((member, index) => fieldChanges(member, after[index], nameOf, `${base}/${index}`))
      : [{ pointer: base, before, after }]
  if (!isRecord(before) || !isRecord(after)) return [{ pointer: base, before, after }]
  const names = new Set([...Object.keys(before), ...Object.keys(after)])
  return [...names].flatMap((name) => {
    const pointer = `${base}/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`
    if (!Object.hasOwn(before, name)) return [{ pointer, after: after[name] }]
    if (!Object.hasOwn(after, name)) return [{ pointer, before: before[name] }]
    return fieldChanges(before[name], after[name], nameOf, pointer)
  })
}

const sameMembers = (a: readonly unknown[], b: readonly unknown[], nameOf: MemberName) =>
  a.length === b.length && a.every((member, index) => nameOf(member) === nameOf(b[index]))

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
