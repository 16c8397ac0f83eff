import { type InventorySummary, summaryOf } from '../core/inventory/inventory.ts'
import type { InventoryFilter, TimedPlace } from '../stores/inventoryStore.ts'
import type { Window } from '../stores/window.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type Part, partOf } from './part.ts'
import { readInventory } from './readInventory.ts'

export type { InventorySummary } from '../core/inventory/inventory.ts'
export type { InventoryFilter, TimedPlace } from '../stores/inventoryStore.ts'

/**
 * Households of the caller's organisation, newest first.
 * @throws DomainError key-required, scope-missing
 */
export async function listInventories(
  { inventoryStore }: Deps,
  sender: Sender,
  filter: InventoryFilter,
  window: Window<TimedPlace>,
): Promise<Part<InventorySummary>> {
  const { organisation } = authorize(sender, 'intake').caller
  return partOf(window, (wider) => inventoryStore.list(organisation, filter, wider))
}

/** How many households there are in such a list. @throws DomainError key-required, scope-missing */
export async function countInventories(
  { inventoryStore }: Deps,
  sender: Sender,
  filter: InventoryFilter,
): Promise<number> {
  return inventoryStore.count(authorize(sender, 'intake').caller.organisation, filter)
}

/** A single household as such a list shows it. @throws DomainError key-required, scope-missing, unknown-inventory */
export async function summariseInventory(deps: Deps, sender: Sender, id: string): Promise<InventorySummary> {
  return summaryOf(await readInventory(deps, sender, id))
}
