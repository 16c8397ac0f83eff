import type { Category } from './category.ts'
import type { Overlay } from './overlay.ts'

/** One numbered state of the whole catalogue. Retired categories are in it, so that old inventories can still be read. */
export interface Catalogue {
  readonly revision: number
  readonly categories: ReadonlyMap<string, Category>
  /**
   * By code: the revision that gave the category the state that it has here. It names that state, whatever is edited
   * elsewhere. Of a category of the overlay it is the overlay's own revision.
   */
  readonly changedIn: ReadonlyMap<string, number>
  /** The organisation's own figures that lie over it (layeredCatalogue.ts); missing from the shared catalogue as it is. */
  readonly overlay?: Overlay
}

/** A category as one revision left it. */
export interface CategoryState {
  readonly category: Category
  readonly revision: number
}

/** @param changedIn where it is left out, every category counts as changed in this revision */
export function catalogueOf(
  revision: number,
  categories: Iterable<Category>,
  changedIn?: ReadonlyMap<string, number>,
): Catalogue {
  const sorted = [...categories].sort((a, b) => (a.code < b.code ? -1 : 1))
  return {
    revision,
    categories: new Map(sorted.map((category) => [category.code, category])),
    changedIn: changedIn ?? new Map(sorted.map(({ code }) => [code, revision])),
  }
}

/** The catalogue at a later revision, from one before it and the states that came in between. */
export function laterCatalogue(
  earlier: Catalogue,
  revision: number,
  states: readonly CategoryState[],
): Catalogue {
  const categories = new Map(earlier.categories)
  const changedIn = new Map(earlier.changedIn)
  for (const { category, revision: made } of states) {
    categories.set(category.code, category)
    changedIn.set(category.code, made)
  }
  return catalogueOf(revision, categories.values(), changedIn)
}
