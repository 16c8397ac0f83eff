import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkInventory } from '../core/inventory/checkInventory.ts'
import type { InventoryContent } from '../core/inventory/inventory.ts'
import { allFaults } from './allFaults.ts'
import type { Deps } from './deps.ts'
import { settingsNow } from './settingsAt.ts'

/**
 * The content of an inventory that keeps all rules, looked at the newest catalogue.
 * @throws FaultyInput naming every fault of shape and of the trade at once
 */
export function checkedInventory(deps: Deps, submitted: Submitted<InventoryContent>): InventoryContent {
  const rules = checkInventory(submitted.raw, deps.catalogueMemory.current(), settingsNow(deps))
  const faults = allFaults(submitted, rules)
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return submitted.value
}
