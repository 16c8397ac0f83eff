import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import { DomainError } from '../../src/core/fault.ts'
import { type Inventory, type InventorySummary, summaryOf } from '../../src/core/inventory/inventory.ts'
import type { StoredEstimate } from '../../src/core/inventory/storedEstimate.ts'
import { unknownInventory } from '../../src/core/inventory/unknownInventory.ts'
import type {
  BatchEntry,
  BatchOutcome,
  InventoryFilter,
  InventoryStore,
  TimedPlace,
} from '../../src/stores/inventoryStore.ts'
import type { Once, OnceResult } from '../../src/stores/once.ts'
import type { Window } from '../../src/stores/window.ts'

const DAY_MS = 86_400_000
const copy = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T

interface Kept {
  readonly once: Once
  readonly inventory: string
  readonly result: object
}
interface Household {
  readonly inventory: Inventory
  readonly estimates: readonly StoredEstimate[]
}

export interface MemoryInventoryStore extends InventoryStore {
  /** What it holds of all organisations, for what is gathered across them. */
  readonly everything: () => readonly { readonly organisation: string; readonly inventory: Inventory }[]
}

/** A store of households in memory, for tests; `write` takes its audit events. */
export function memoryInventoryStore(write: (event: NewAuditEvent) => void): MemoryInventoryStore {
  const organisations = new Map<string, Map<string, Household>>()
  const kept = new Map<string, Kept>()
  const of = (organisation: string) => {
    const households = organisations.get(organisation) ?? new Map<string, Household>()
    organisations.set(organisation, households)
    return households
  }
  const found = (organisation: string, id: string) => {
    const household = of(organisation).get(id)
    if (!household) throw unknownInventory(id)
    return household
  }
  const put = (organisation: string, inventory: Inventory) => {
    const { reference } = inventory.content
    const holder = [...of(organisation).values()].find(
      (one) => one.inventory.content.reference === reference && one.inventory.id !== inventory.id,
    )
    if (holder) throw new DomainError('inventory-exists', 'It exists.', { id: holder.inventory.id })
    const { estimates } = of(organisation).get(inventory.id) ?? { estimates: [] }
    of(organisation).set(inventory.id, { inventory: copy(inventory), estimates })
  }
  const runOnce = <T extends object>(
    organisation: string,
    inventory: string,
    once: Once | null,
    work: () => T,
  ): OnceResult<T> => {
    const name = `${organisation} ${once?.key}`
    const known = once && kept.get(name)
    if (known && known.once.at.getTime() > once.at.getTime() - DAY_MS) {
      if (Buffer.compare(known.once.digest, once.digest) !== 0)
        throw new DomainError('idempotency-key-reused', 'It came with another request.')
      return { result: copy(known.result as T), replayed: true }
    }
    const result = work()
    if (once) kept.set(name, { once, inventory, result: copy(result) })
    return { result, replayed: false }
  }
  const batches = new Map<string, { readonly entry: BatchEntry }>()
  const addLine = (organisation: string, batch: string, entry: BatchEntry): BatchOutcome => {
    const name = `${organisation} ${batch} ${entry.line}`
    const before = batches.get(name)?.entry
    if (before && of(organisation).has(before.inventory.id))
      return Buffer.compare(before.digest, entry.digest) === 0
        ? { kind: 'already-stored', estimate: before.estimate }
        : { kind: 'line-changed', inventory: before.inventory.id }
    const { reference } = entry.inventory.content
    const holder = [...of(organisation).values()].find(
      ({ inventory }) => inventory.content.reference === reference,
    )
    if (holder) return { kind: 'reference-taken', inventory: holder.inventory.id }
    of(organisation).set(entry.inventory.id, {
      inventory: copy(entry.inventory),
      estimates: [copy(entry.estimate)],
    })
    batches.set(name, { entry })
    return { kind: 'stored', estimate: entry.estimate }
  }
  return {
    everything: () =>
      [...organisations].flatMap(([organisation, households]) =>
        [...households.values()].map(({ inventory }) => ({ organisation, inventory })),
      ),
    addBatch: async (organisation, batch, entries, event) => {
      const outcomes = entries.map((entry) => addLine(organisation, batch, entry))
      if (outcomes.some(({ kind }) => kind === 'stored')) write(event)
      return outcomes
    },
    add: async (organisation, inventory, event, once) =>
      runOnce(organisation, inventory.id, once, () => {
        put(organisation, inventory)
        write(event)
        return inventory
      }),
    find: async (organisation, id) => of(organisation).get(id)?.inventory ?? null,
    list: async (organisation, filter, window) =>
      cut(
        [...of(organisation).values()]
          .map(({ inventory }) => summaryOf(inventory))
          .filter((one) => fits(one, filter)),
        ({ createdAt, id }) => ({ at: new Date(createdAt), id }),
        window,
      ),
    count: async (organisation, filter) =>
      [...of(organisation).values()]
        .map(({ inventory }) => summaryOf(inventory))
        .filter((one) => fits(one, filter)).length,
    change: async (organisation, id, decide, once) =>
      runOnce(organisation, id, once, () => {
        const { after, event } = decide(found(organisation, id).inventory)
        put(organisation, after)
        write(event)
        return after
      }),
    remove: async (organisation, id, decide) => {
      const event = decide(found(organisation, id).inventory)
      of(organisation).delete(id)
      for (const [name, { inventory }] of kept) if (inventory === id) kept.delete(name)
      write(event)
    },
    addEstimate: async (organisation, stored, event, once) =>
      runOnce(organisation, stored.inventory, once, () => {
        const { inventory, estimates } = found(organisation, stored.inventory)
        of(organisation).set(inventory.id, { inventory, estimates: [...estimates, copy(stored)] })
        write(event)
        return stored
      }),
    findEstimate: async (organisation, inventory, id) =>
      of(organisation)
        .get(inventory)
        ?.estimates.find((one) => one.id === id) ?? null,
    estimates: async (organisation, inventory, window) =>
      cut(
        of(organisation).get(inventory)?.estimates ?? [],
        ({ madeAt, id }) => ({ at: new Date(madeAt), id }),
        window,
      ),
  }
}

const fits = (
  { reference, visits, lastVisit }: InventorySummary,
  { reference: wanted = reference, followedUp, visitedFrom, visitedTo }: InventoryFilter,
) =>
  reference === wanted &&
  (followedUp === undefined || visits >= 2 === followedUp) &&
  (visitedFrom === undefined || (lastVisit !== null && lastVisit >= visitedFrom)) &&
  (visitedTo === undefined || (lastVisit !== null && lastVisit <= visitedTo))

const compare = (one: TimedPlace, other: TimedPlace) =>
  one.at.getTime() - other.at.getTime() || (one.id < other.id ? -1 : Number(one.id > other.id))

/** What a window shows of a list that is newest first. */
function cut<T>(
  items: readonly T[],
  placeOf: (item: T) => TimedPlace,
  { after, before, limit, keep }: Window<TimedPlace>,
): T[] {
  const between = items
    .toSorted((one, other) => compare(placeOf(other), placeOf(one)))
    .filter(
      (item) =>
        (!after || compare(placeOf(item), after) < 0) && (!before || compare(placeOf(item), before) > 0),
    )
  return keep === 'first' ? between.slice(0, limit) : between.slice(Math.max(between.length - limit, 0))
}
