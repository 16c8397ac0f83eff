import type { Estimate } from '../core/estimate/estimate.ts'
import { remake } from '../core/inventory/remake.ts'
import type { Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { readStoredEstimate } from './readStoredEstimate.ts'

export interface RemadeEstimate {
  readonly estimate: Estimate
  /** Whether it is the stored one to the last byte. */
  readonly same: boolean
  /** The method that the stored one was made with. */
  readonly storedMethodVersion: string
}

/**
 * A stored estimate made again from what is stored with it and the revisions of that time.
 * @throws DomainError key-required, scope-missing, unknown-inventory, unknown-estimate
 */
export async function remakeEstimate(
  deps: Deps,
  sender: Sender,
  inventoryId: string,
  id: string,
): Promise<RemadeEstimate> {
  const { stored } = await readStoredEstimate(deps, sender, inventoryId, id)
  const { catalogueRevision, overlayRevision } = stored.result
  const catalogue = await callersCatalogue(deps, sender, { catalogueRevision, overlayRevision })
  const estimate = remake(stored, catalogue)
  return {
    estimate,
    same: JSON.stringify(estimate) === JSON.stringify(stored.result),
    storedMethodVersion: stored.methodVersion,
  }
}
