import type { StoredKey } from '../core/access/apiKey.ts'
import type { KeyStore } from '../stores/keyStore.ts'
import type { KeyMemory } from './deps.ts'

/** How long what was looked up is good for: a key that another process revoked is refused here within a second. */
const KEPT_MS = 900
const NOTED_EVERY_MS = 60_000
/** Looked-up keys, and ids that name none, at most; those that were looked up first go first. */
const KEPT = 10_000
const BOOTSTRAP = ''
const ALL = ''

interface LookUp<T> {
  readonly since: number
  readonly found: Promise<T>
}
type Kept<T> = Map<string, LookUp<T>>

/** Keeps looked-up keys for less than a second. `onError` hears of a use that could not be stored. */
export function openKeyMemory(
  store: KeyStore,
  clock: () => Date,
  onError: (error: unknown) => void,
): KeyMemory {
  const kept: Kept<StoredKey | null> = new Map()
  const keptOrigins: Kept<ReadonlySet<string>> = new Map()
  const noted = new Map<string, number>()
  const storing = new Set<Promise<void>>()

  const recall = <T>(from: Kept<T>, name: string, lookUp: () => Promise<T>) => {
    const now = clock().getTime()
    const known = from.get(name)
    const age = known && now - known.since
    if (known && age !== undefined && age >= 0 && age < KEPT_MS) return known.found
    // From the beginning of the look-up, and not from its end: what it finds may be old by then.
    const found = lookUp()
    put(from, name, { since: now, found })
    void found.catch(() => from.get(name)?.found === found && from.delete(name))
    return found
  }
  return {
    find: (id) => recall(kept, id, () => store.find(id)),
    bootstrapKey: () => recall(kept, BOOTSTRAP, () => store.bootstrapKey()),
    // All of them at once, so that a flood of made-up origins is one look-up.
    isOrigin: async (origin) => (await recall(keptOrigins, ALL, () => store.origins(clock()))).has(origin),
    forget: (id) => {
      kept.delete(id)
      kept.delete(BOOTSTRAP)
      keptOrigins.clear()
    },
    noteUse: (id, at) => {
      if (at.getTime() - (noted.get(id) ?? -Infinity) < NOTED_EVERY_MS) return
      put(noted, id, at.getTime())
      const stored = store.noteUse(id, at).catch(onError)
      storing.add(stored)
      void stored.finally(() => storing.delete(stored))
    },
    settled: async () => {
      await Promise.all(storing)
    },
  }
}

/** Puts a value at the end of a Map, which keeps the order of insertion, and drops the first where there are too many. */
function put<T>(map: Map<string, T>, name: string, value: T): void {
  map.delete(name)
  map.set(name, value)
  if (map.size > KEPT) map.delete(map.keys().next().value!)
}
