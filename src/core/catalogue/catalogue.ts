import type { Category } from './category.ts'

/** One numbered state of the whole catalogue. Retired categories are in it, so that old inventories can still be read. */
export interface Catalogue {
  readonly revision: number
  readonly categories: ReadonlyMap<string, Category>
}

export function catalogueOf(revision: number, categories: Iterable<Category>): Catalogue {
  const sorted = [...categories].sort((a, b) => (a.code < b.code ? -1 : 1))
  return { revision, categories: new Map(sorted.map((category) => [category.code, category])) }
}
