import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { layerOf } from '../core/catalogue/layerOf.ts'
import { type CategoryFilter, listCategories } from '../core/catalogue/listCategories.ts'
import { type RevisionsUsed, revisionsUsed } from '../core/catalogue/revisionsUsed.ts'
import type { Sender } from './authorize.ts'
import { type AskedRevisions, callersCatalogue } from './callersCatalogue.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

export interface ExportedCategories extends RevisionsUsed {
  readonly categories: readonly LabelledCategory[]
}

/**
 * The whole shared catalogue at once, retired categories too; nothing of any organisation's own is in it, so that it can be
 * imported again.
 * @throws DomainError unknown-revision
 */
export const exportCatalogue = async (
  deps: Deps,
  catalogueRevision: number | undefined,
): Promise<ExportedCategories> =>
  everythingIn(await catalogueOf(deps, catalogueRevision), { includeRetired: true })

/**
 * All categories that a filter lets through, at once, as the caller sees them.
 * @throws DomainError unknown-revision, unknown-overlay-revision
 */
export const exportCategories = async (
  deps: Deps,
  sender: Pick<Sender, 'caller'>,
  filter: CategoryFilter & AskedRevisions,
): Promise<ExportedCategories> => everythingIn(await callersCatalogue(deps, sender, filter), filter)

const everythingIn = (catalogue: Catalogue, filter: CategoryFilter): ExportedCategories => ({
  categories: listCategories(catalogue, filter).map((category) =>
    labelled(category, layerOf(catalogue, category.code)),
  ),
  ...revisionsUsed(catalogue),
})
