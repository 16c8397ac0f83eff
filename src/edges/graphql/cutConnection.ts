/** Which part of an ordered list a connection shows; the arguments of Relay's connections, cursors already read. */
export interface Window {
  readonly first?: number | undefined
  readonly last?: number | undefined
  /** Keys between which the part lies, both outside of it. */
  readonly after?: string | undefined
  readonly before?: string | undefined
}

/**
 * The part of a list that a connection shows. `items` are in the order of their keys, and a key need not be in the
 * list: a cursor of something that is gone still says where it stood. Whether there is more on either side is
 * exact in both directions, which the specification of connections only asks for in the direction of paging.
 */
export function cutConnection<T>(
  items: readonly T[],
  { first, last, after, before }: Window,
  { keyOf, cursorOf }: { readonly keyOf: (item: T) => string; readonly cursorOf: (item: T) => string },
) {
  const start = after === undefined ? 0 : countWhile(items, (item) => keyOf(item) <= after)
  const upTo = before === undefined ? items.length : countWhile(items, (item) => keyOf(item) < before)
  const end = Math.max(start, upTo)
  const to = first === undefined ? end : Math.min(end, start + first)
  const from = last === undefined ? start : Math.max(start, to - last)
  const edges = items.slice(from, to).map((node) => ({ node, cursor: cursorOf(node) }))
  return {
    edges,
    pageInfo: {
      hasNextPage: to < items.length,
      hasPreviousPage: from > 0,
      startCursor: edges[0]?.cursor ?? null,
      endCursor: edges.at(-1)?.cursor ?? null,
    },
  }
}

/** How many items from the beginning meet the condition. */
function countWhile<T>(items: readonly T[], meets: (item: T) => boolean): number {
  const index = items.findIndex((item) => !meets(item))
  return index === -1 ? items.length : index
}
