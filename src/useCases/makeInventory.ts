import { base32 } from '../core/access/base32.ts'
import type { Submitted } from '../core/fault.ts'
import type { Inventory, InventoryContent } from '../core/inventory/inventory.ts'
import type { OnceResult } from '../stores/once.ts'
import { authorize, type Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import { checkedInventory } from './checkedInventory.ts'
import type { Deps } from './deps.ts'
import { inventoryEvent } from './inventoryEvent.ts'
import { onceOf } from './onceOf.ts'

/** 80 bits: nobody guesses an id, and it still fits on a label. */
export const ID_BYTES = 10

/**
 * Keeps a household of the caller's organisation.
 * @param key Idempotency-Key; null where the caller sent none
 * @throws DomainError key-required, scope-missing, inventory-exists, idempotency-key-malformed and what Once says; FaultyInput
 */
export async function makeInventory(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<InventoryContent>,
  key: string | null,
): Promise<OnceResult<Inventory>> {
  const origin = authorize(sender, 'intake')
  const catalogue = await callersCatalogue(deps, sender, null)
  const once = onceOf(deps, key, 'make-inventory', submitted.raw)
  const content = checkedInventory(deps, catalogue, submitted)
  const now = deps.clock()
  const inventory: Inventory = {
    id: base32(deps.random(ID_BYTES)),
    version: 1,
    createdAt: now.toISOString(),
    updatedAt: now.toISOString(),
    content,
  }
  const event = inventoryEvent('inventory.create', inventory.id, { before: null, after: 1 }, now, origin)
  return deps.inventoryStore.add(origin.caller.organisation, inventory, event, once)
}
