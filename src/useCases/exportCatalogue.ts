import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { type CategoryFilter, listCategories } from '../core/catalogue/listCategories.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

/**
 * All categories that a filter lets through, at once; an empty filter with `includeRetired` gives the whole catalogue.
 * @throws DomainError unknown-revision
 */
export async function exportCatalogue(
  deps: Deps,
  filter: CategoryFilter & { readonly catalogueRevision?: number | undefined },
): Promise<{ readonly categories: readonly LabelledCategory[]; readonly catalogueRevision: number }> {
  const catalogue = await catalogueOf(deps, filter.catalogueRevision)
  return {
    categories: listCategories(catalogue, filter).map(labelled),
    catalogueRevision: catalogue.revision,
  }
}
