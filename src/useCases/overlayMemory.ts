import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { layeredCatalogue } from '../core/catalogue/layeredCatalogue.ts'
import { type Overlay, overlayOf } from '../core/catalogue/overlay.ts'
import { inTurn } from '../core/inTurn.ts'
import type { OverlayStore } from '../stores/overlayStore.ts'
import type { OverlayMemory } from './deps.ts'
import { lastUsed } from './lastUsed.ts'
import { oneForAll } from './oneForAll.ts'

export interface OverlayMemoryLimits {
  /** Categories of newest overlays, of all organisations together. */
  readonly categories?: number
  /** Past revisions, and shared catalogues with an overlay over them. */
  readonly kept?: number
}

/**
 * Holds the newest overlays of organisations, so that no estimate waits for the database: all of them as long as they hold
 * no more than `categories` together, else those that were used last, and the others are read again when they are asked
 * for. A new revision replaces what is held only once it is read, and until then the one before is given.
 */
export async function openOverlayMemory(
  store: OverlayStore,
  { categories = 50_000, kept = 128 }: OverlayMemoryLimits = {},
): Promise<OverlayMemory> {
  let newest: ReadonlyMap<string, number> = new Map()
  // A Map keeps the order of insertion: the first organisation is the one that was not used for longest.
  const held = new Map<string, Overlay>()
  let size = 0
  const load = lastUsed(kept, (name: string) => {
    const [organisation = '', revision] = name.split('@')
    return store.overlayAt(organisation, Number(revision))
  })
  const layered = keptLast<Catalogue>(kept)

  function drop(overlay: Overlay | undefined): void {
    if (overlay && held.delete(overlay.organisation)) size -= sizeOf(overlay)
  }
  function hold(overlay: Overlay): Overlay {
    drop(held.get(overlay.organisation))
    held.set(overlay.organisation, overlay)
    size += sizeOf(overlay)
    for (const other of held.values()) if (size > categories && other !== overlay) drop(other)
    return overlay
  }
  async function read(organisation: string, revision: number): Promise<Overlay> {
    const overlay = await load(nameOf(organisation, revision))
    if (overlay === null) throw new Error(`Revision ${revision} of the overlay of ${organisation} is gone.`)
    const other = held.get(organisation)
    // What began to be read earlier must not take the place of what came since.
    return other && other.revision >= revision ? other : hold(overlay)
  }
  const refresh = oneForAll(async () => {
    const found = await store.latestRevisions()
    const failures: unknown[] = []
    for (const [organisation, revision] of found) {
      const isNew = revision > (held.get(organisation)?.revision ?? newest.get(organisation) ?? 0)
      if (isNew && (held.has(organisation) || size < categories))
        await read(organisation, revision).catch((error: unknown) => failures.push(error))
    }
    newest = found
    // One that cannot be read keeps none of the others from being seen.
    if (failures.length > 0) throw new AggregateError(failures, 'Overlays could not be read.')
  })
  await refresh()

  return {
    current: async (organisation) => {
      const overlay = held.get(organisation)
      if (overlay) return hold(overlay)
      const revision = newest.get(organisation) ?? 0
      return revision === 0 ? overlayOf(organisation, 0) : read(organisation, revision)
    },
    at: async (organisation, revision) => {
      if (revision === 0) return overlayOf(organisation, 0)
      const overlay = held.get(organisation)
      return overlay?.revision === revision ? overlay : load(nameOf(organisation, revision))
    },
    over: (shared, overlay) => {
      // Most organisations have none; they must not push those that have one out.
      if (overlay.revision === 0) return shared
      const name = `${shared.revision}@${nameOf(overlay.organisation, overlay.revision)}`
      return layered(name, () => layeredCatalogue(shared, overlay))
    },
    refresh,
    inTurn: inTurn(),
  }
}

const nameOf = (organisation: string, revision: number) => `${organisation}@${revision}`

/** An overlay without a category takes room, too. */
const sizeOf = ({ categories }: Overlay) => categories.size + 1

/** Keeps what was made for the last used names. */
function keptLast<T>(limit: number): (name: string, make: () => T) => T {
  const made = new Map<string, T>()
  return (name, make) => {
    const value = made.get(name) ?? make()
    made.delete(name)
    made.set(name, value)
    if (made.size > limit) made.delete(made.keys().next().value!)
    return value
  }
}
