import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { layerOf } from '../core/catalogue/layerOf.ts'
import { type CategoryFilter, listCategories } from '../core/catalogue/listCategories.ts'
import { type RevisionsUsed, revisionsUsed } from '../core/catalogue/revisionsUsed.ts'
import type { Sender } from './authorize.ts'
import { type AskedRevisions, callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'

export interface PageRequest {
  readonly limit: number
  /** The code after which the page starts; the edges wrap it in an opaque cursor. */
  readonly after?: string | undefined
}

export interface CategoryPage extends RevisionsUsed {
  readonly items: readonly LabelledCategory[]
  /** The code to go on after, or null on the last page. */
  readonly next: string | null
  readonly total: number
  /** By code: the revision that gave the category the state shown, of its own layer. */
  readonly changedIn: ReadonlyMap<string, number>
}

/**
 * One page of the catalogue that the caller sees, in the order of the codes.
 * @throws DomainError unknown-revision, unknown-overlay-revision
 */
export async function listCategoryPage(
  deps: Deps,
  sender: Pick<Sender, 'caller'>,
  filter: CategoryFilter & AskedRevisions,
  page: PageRequest,
): Promise<CategoryPage> {
  return categoryPage(await callersCatalogue(deps, sender, filter), filter, page)
}

/** One page of a catalogue. */
export function categoryPage(catalogue: Catalogue, filter: CategoryFilter, page: PageRequest): CategoryPage {
  const all = listCategories(catalogue, filter)
  const rest = page.after === undefined ? all : all.filter(({ code }) => code > page.after!)
  const items = rest
    .slice(0, page.limit)
    .map((category) => labelled(category, layerOf(catalogue, category.code)))
  const next = rest.length > items.length ? items.at(-1)!.code : null
  const { changedIn } = catalogue
  return { items, next, total: all.length, ...revisionsUsed(catalogue), changedIn }
}
