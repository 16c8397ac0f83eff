import { type Fault, FaultyInput, type Submitted } from '../core/fault.ts'
import type { Inventory, InventoryContent } from '../core/inventory/inventory.ts'
import type { OnceResult } from '../stores/once.ts'
import { authorize, type Sender } from './authorize.ts'
import { nextVersion } from './changeInventory.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import { checkedInventory } from './checkedInventory.ts'
import type { Deps } from './deps.ts'
import { onceOf } from './onceOf.ts'

/**
 * Adds a visit to an inventory. It overwrites nothing, so no version has to be named; another visit on the same day is a fault.
 * @param visit as it was sent
 * @param key Idempotency-Key; null where the caller sent none
 * @param readContent checks the shape of what becomes of the content
 * @throws DomainError key-required, scope-missing, unknown-inventory, idempotency-key-malformed and what Once
 *   says; FaultyInput
 */
export async function addVisit(
  deps: Deps,
  sender: Sender,
  id: string,
  visit: unknown,
  readContent: (whole: unknown) => Submitted<InventoryContent>,
  key: string | null,
): Promise<OnceResult<Inventory>> {
  const origin = authorize(sender, 'intake')
  const catalogue = await callersCatalogue(deps, sender, null)
  const once = onceOf(deps, key, 'add-visit', id, visit)
  const { organisation } = origin.caller
  const decide = (before: Inventory) => {
    const { visits } = before.content
    const whole = readContent({ ...before.content, visits: [...visits, visit] })
    try {
      return nextVersion(deps, origin, before, checkedInventory(deps, catalogue, whole))
    } catch (error) {
      if (!(error instanceof FaultyInput)) throw error
      // What was sent is one visit, and not the inventory that it would stand in.
      throw new FaultyInput(error.faults.map((fault) => withinVisit(fault, visits.length)))
    }
  }
  return deps.inventoryStore.change(organisation, id, decide, once)
}

const withinVisit = (fault: Fault, place: number): Fault => {
  const prefix = `/visits/${place}`
  return fault.pointer.startsWith(prefix) ? { ...fault, pointer: fault.pointer.slice(prefix.length) } : fault
}
