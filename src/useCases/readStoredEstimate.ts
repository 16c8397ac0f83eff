import { DomainError } from '../core/fault.ts'
import { authorize, type Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { type EstimateWithStanding, standingOf } from './listStoredEstimates.ts'
import { readInventory } from './readInventory.ts'

/**
 * One estimate kept of an inventory.
 * @throws DomainError key-required, scope-missing, unknown-inventory, unknown-estimate
 */
export async function readStoredEstimate(
  deps: Deps,
  sender: Sender,
  inventoryId: string,
  id: string,
): Promise<EstimateWithStanding> {
  const inventory = await readInventory(deps, sender, inventoryId)
  const { organisation } = authorize(sender, 'intake').caller
  const stored = await deps.inventoryStore.findEstimate(organisation, inventoryId, id)
  if (stored === null)
    throw new DomainError(
      'unknown-estimate',
      `There is no estimate with the id "${id.slice(0, 100)}" of this inventory.`,
    )
  const catalogue = await callersCatalogue(deps, sender, null)
  return { stored, standing: standingOf(deps, catalogue, inventory, stored) }
}
