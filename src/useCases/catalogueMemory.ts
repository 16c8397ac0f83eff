import { type Catalogue, catalogueOf, laterCatalogue } from '../core/catalogue/catalogue.ts'
import type { CatalogueStore } from '../stores/catalogueStore.ts'
import type { CatalogueMemory } from './deps.ts'
import { openRevisionMemory, type RevisionMemoryOptions } from './revisionMemory.ts'

/** The catalogue by its revisions, held in memory; an empty store gives an empty catalogue, revision 0. */
export const openCatalogueMemory = (
  store: CatalogueStore,
  options: RevisionMemoryOptions = {},
): Promise<CatalogueMemory> =>
  openRevisionMemory<Catalogue>(
    {
      empty: catalogueOf(0, []),
      latest: () => store.latestRevision(),
      load: (revision) => store.catalogueAt(revision),
      newer: (held, latest) => newerCatalogue(store, held, latest),
    },
    options,
  )

/** What came since is laid over what is held: an edit of one category does not read the whole catalogue again. */
async function newerCatalogue(
  store: CatalogueStore,
  held: Catalogue,
  latest: number,
): Promise<Catalogue | null> {
  if (held.revision === 0) return store.catalogueAt(latest)
  return laterCatalogue(held, latest, await store.statesBetween(held.revision, latest))
}
