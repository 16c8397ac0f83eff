import { type Catalogue, catalogueOf, laterCatalogue } from '../core/catalogue/catalogue.ts'
import { inTurn } from '../core/inTurn.ts'
import type { CatalogueStore } from '../stores/catalogueStore.ts'
import type { CatalogueMemory } from './deps.ts'

/**
 * Loads the newest catalogue and holds it; an empty store gives an empty catalogue, revision 0. Of past revisions the
 * `pastRevisions` last asked for are held, too.
 */
export async function openCatalogueMemory(
  store: CatalogueStore,
  { pastRevisions = 16 }: { readonly pastRevisions?: number } = {},
): Promise<CatalogueMemory> {
  let current = catalogueOf(0, [])
  const past = lastUsed(pastRevisions, (revision) => store.catalogueAt(revision))
  const refresh = oneForAll(async () => {
    const latest = await store.latestRevision()
    if (latest <= current.revision) return
    const newer = await newerCatalogue(store, current, latest)
    if (newer) current = newer
  })
  await refresh()
  return {
    current: () => current,
    at: async (revision) => (revision === current.revision ? current : past(revision)),
    refresh,
    inTurn: inTurn(),
  }
}

/** What came since is laid over what is held: an edit of one category does not read the whole catalogue again. */
async function newerCatalogue(
  store: CatalogueStore,
  held: Catalogue,
  latest: number,
): Promise<Catalogue | null> {
  if (held.revision === 0) return store.catalogueAt(latest)
  return laterCatalogue(held, latest, await store.statesBetween(held.revision, latest))
}

/** Keeps what was loaded for the last used numbers. A load that finds nothing, or fails, is not kept. */
function lastUsed(
  limit: number,
  load: (revision: number) => Promise<Catalogue | null>,
): (revision: number) => Promise<Catalogue | null> {
  // A Map keeps the order of insertion: the first key is the one that was not used for longest.
  const kept = new Map<number, Promise<Catalogue | null>>()
  return async (revision) => {
    const loading = kept.get(revision) ?? load(revision)
    kept.delete(revision)
    kept.set(revision, loading)
    if (kept.size > limit) kept.delete(kept.keys().next().value!)
    try {
      const found = await loading
      if (found === null) kept.delete(revision)
      return found
    } catch (error) {
      kept.delete(revision)
      throw error
    }
  }
}

/**
 * Makes calls at the same time share one run. Who calls while a run is under way shares the run after it, since this one
 * may have looked already when the caller's own edit was stored.
 */
function oneForAll(work: () => Promise<void>): () => Promise<void> {
  let running: Promise<void> | null = null
  let next: Promise<void> | null = null
  const run = () => {
    next = null
    running = work().finally(() => (running = null))
    return running
  }
  return () => next ?? (running === null ? run() : (next = running.then(run, run)))
}
