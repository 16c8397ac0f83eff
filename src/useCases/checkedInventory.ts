import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkInventory } from '../core/inventory/checkInventory.ts'
import type { InventoryContent } from '../core/inventory/inventory.ts'
import { allFaults } from './allFaults.ts'
import type { Deps } from './deps.ts'
import { settingsNow } from './settingsAt.ts'

/**
 * The content of an inventory that keeps all rules, looked at the catalogue as its organisation sees it.
 * @throws FaultyInput naming every fault of shape and of the trade at once
 */
export function checkedInventory(
  deps: Deps,
  catalogue: Catalogue,
  submitted: Submitted<InventoryContent>,
): InventoryContent {
  const faults = allFaults(submitted, checkInventory(submitted.raw, catalogue, settingsNow(deps)))
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return submitted.value
}
