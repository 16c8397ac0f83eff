import type { Origin } from '../core/access/caller.ts'
import { mergePatch } from '../core/catalogue/mergePatch.ts'
import { DomainError, type Submitted } from '../core/fault.ts'
import type { Inventory, InventoryContent } from '../core/inventory/inventory.ts'
import type { InventoryChange } from '../stores/inventoryStore.ts'
import { authorize, type Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import { checkedInventory } from './checkedInventory.ts'
import type { Deps } from './deps.ts'
import { inventoryEvent } from './inventoryEvent.ts'

/**
 * Changes the fields of an inventory that a merge patch (RFC 7396) names; visits are replaced as a whole. The pointers of
 * faults are those of the content as it would become.
 * @param readContent checks the shape of what the patch makes of the content
 * @param basedOn versions that the caller knows, one of which must be the present one; null where it named none
 * @throws DomainError key-required, scope-missing, unknown-inventory, precondition-required, stale-inventory,
 *   inventory-exists; FaultyInput
 */
export async function changeInventory(
  deps: Deps,
  sender: Sender,
  id: string,
  patch: unknown,
  readContent: (merged: unknown) => Submitted<InventoryContent>,
  basedOn: readonly number[] | null,
): Promise<Inventory> {
  const origin = authorize(sender, 'intake')
  const catalogue = await callersCatalogue(deps, sender, null)
  const organisation = origin.caller.organisation
  const { result } = await deps.inventoryStore.change(
    organisation,
    id,
    (before) => {
      requireVersion(before, basedOn)
      const content = checkedInventory(deps, catalogue, readContent(mergePatch(before.content, patch)))
      return nextVersion(deps, origin, before, content)
    },
    null,
  )
  return result
}

/** @throws DomainError precondition-required, stale-inventory */
export function requireVersion({ id, version }: Inventory, basedOn: readonly number[] | null): void {
  if (basedOn?.includes(version)) return
  if (basedOn === null)
    throw new DomainError(
      'precondition-required',
      `Name the version of the inventory ${id} that this is based on, so that nobody's change is overwritten unseen.`,
    )
  throw new DomainError(
    'stale-inventory',
    `The inventory is at version ${version} now. Read it again, and change what is there now.`,
    { version },
  )
}

/** An inventory's next version, with the audit event that speaks of it. */
export function nextVersion(
  { clock }: Deps,
  origin: Origin,
  before: Inventory,
  content: InventoryContent,
): InventoryChange {
  const now = clock()
  const after = { ...before, version: before.version + 1, updatedAt: now.toISOString(), content }
  const versions = { before: before.version, after: after.version }
  return { after, event: inventoryEvent('inventory.change', before.id, versions, now, origin) }
}
