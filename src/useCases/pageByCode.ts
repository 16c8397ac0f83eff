/** A page of entries in the order of their codes, and the code that the next one begins after; null on the last. */
export function pageByCode<T extends { readonly code: string }>(
  all: readonly T[],
  { limit, after }: { readonly limit: number; readonly after?: string | undefined },
): { readonly items: readonly T[]; readonly next: string | null } {
  const sorted = [...all].sort((a, b) => (a.code < b.code ? -1 : 1))
  const rest = after === undefined ? sorted : sorted.filter(({ code }) => code > after)
  const items = rest.slice(0, limit)
  return { items, next: rest.length > items.length ? items.at(-1)!.code : null }
}
