import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { type CategoryFilter, listCategories } from '../core/catalogue/listCategories.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

export interface PageRequest {
  readonly limit: number
  /** The code after which the page starts; the edges wrap it in an opaque cursor. */
  readonly after?: string | undefined
}

export interface CategoryPage {
  readonly items: readonly LabelledCategory[]
  /** The code to go on after, or null on the last page. */
  readonly next: string | null
  readonly total: number
  readonly catalogueRevision: number
  /** By code: the revision that gave the category the state shown. */
  readonly changedIn: ReadonlyMap<string, number>
}

/**
 * One page of the catalogue in the order of the codes.
 * @throws DomainError unknown-revision
 */
export async function listCategoryPage(
  deps: Deps,
  filter: CategoryFilter & { readonly catalogueRevision?: number | undefined },
  page: PageRequest,
): Promise<CategoryPage> {
  const catalogue = await catalogueOf(deps, filter.catalogueRevision)
  const all = listCategories(catalogue, filter)
  const rest = page.after === undefined ? all : all.filter(({ code }) => code > page.after!)
  const items = rest.slice(0, page.limit).map(labelled)
  const next = rest.length > items.length ? items.at(-1)!.code : null
  const { revision, changedIn } = catalogue
  return { items, next, total: all.length, catalogueRevision: revision, changedIn }
}
