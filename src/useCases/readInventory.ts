import type { Inventory } from '../core/inventory/inventory.ts'
import { unknownInventory } from '../core/inventory/unknownInventory.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'

/**
 * One household of the caller's organisation.
 * @throws DomainError key-required, scope-missing, unknown-inventory
 */
export async function readInventory(
  { inventoryStore }: Deps,
  sender: Sender,
  id: string,
): Promise<Inventory> {
  const { organisation } = authorize(sender, 'intake').caller
  const inventory = await inventoryStore.find(organisation, id)
  if (inventory === null) throw unknownInventory(id)
  return inventory
}
