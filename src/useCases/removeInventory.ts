import { authorize, type Sender } from './authorize.ts'
import { requireVersion } from './changeInventory.ts'
import type { Deps } from './deps.ts'
import { inventoryEvent } from './inventoryEvent.ts'

/**
 * Takes an inventory away with everything that hangs on it: visits, stored estimates, kept results of requests. What stays
 * is that it was there, in the audit trail, without its reference and without content.
 * @param basedOn see changeInventory
 * @throws DomainError key-required, scope-missing, unknown-inventory, precondition-required, stale-inventory
 */
export async function removeInventory(
  deps: Deps,
  sender: Sender,
  id: string,
  basedOn: readonly number[] | null,
): Promise<void> {
  const origin = authorize(sender, 'intake')
  await deps.inventoryStore.remove(origin.caller.organisation, id, (before) => {
    requireVersion(before, basedOn)
    const versions = { before: before.version, after: null }
    return inventoryEvent('inventory.delete', id, versions, deps.clock(), origin)
  })
}
