import { FaultyInput, type Submitted } from '../core/fault.ts'
import { checkInventory } from '../core/inventory/checkInventory.ts'
import type { InventoryContent } from '../core/inventory/inventory.ts'
import type { Deps } from './deps.ts'

/**
 * The content of an inventory that keeps all rules, looked at the newest catalogue.
 * @throws FaultyInput naming every fault of shape and of the trade at once
 */
export function checkedInventory(deps: Deps, submitted: Submitted<InventoryContent>): InventoryContent {
  const rules = checkInventory(submitted.raw, deps.catalogueMemory.current(), deps.settings)
  // A field that is unknown because it would hold a name is told why.
  const told = new Set(rules.filter(({ code }) => code === 'personal-data').map(({ pointer }) => pointer))
  const shape = submitted.faults.filter(({ code, pointer }) => code !== 'unknown-field' || !told.has(pointer))
  const faults = [...shape, ...rules]
  if (submitted.value === null || faults.length > 0) throw new FaultyInput(faults)
  return submitted.value
}
