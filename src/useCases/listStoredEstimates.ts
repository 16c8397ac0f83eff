import type { Catalogue } from '../core/catalogue/catalogue.ts'
import { compareWithToday, type Standing } from '../core/inventory/compareWithToday.ts'
import { householdAt, type Inventory } from '../core/inventory/inventory.ts'
import type { StoredEstimate } from '../core/inventory/storedEstimate.ts'
import type { TimedPlace } from '../stores/inventoryStore.ts'
import type { Window } from '../stores/window.ts'
import { authorize, type Sender } from './authorize.ts'
import { callersCatalogue } from './callersCatalogue.ts'
import type { Deps } from './deps.ts'
import { type Part, partOf } from './part.ts'
import { readInventory } from './readInventory.ts'
import { settingsNow } from './settingsAt.ts'

/** A stored estimate, and how it stands to what would be estimated today. */
export interface EstimateWithStanding {
  readonly stored: StoredEstimate
  readonly standing: Standing
}

/**
 * The estimates kept of an inventory, newest first. Every one is made anew as of today to tell whether it is out of date, which
 * touches no database and takes less than a millisecond each.
 * @throws DomainError key-required, scope-missing, unknown-inventory
 */
export async function listStoredEstimates(
  deps: Deps,
  sender: Sender,
  id: string,
  window: Window<TimedPlace>,
): Promise<Part<EstimateWithStanding>> {
  const inventory = await readInventory(deps, sender, id)
  const { organisation } = authorize(sender, 'intake').caller
  const catalogue = await callersCatalogue(deps, sender, null)
  const part = await partOf(window, (wider) => deps.inventoryStore.estimates(organisation, id, wider))
  return {
    ...part,
    items: part.items.map((stored) => ({ stored, standing: standingOf(deps, catalogue, inventory, stored) })),
  }
}

/** @param catalogue of today, as the organisation sees it */
export function standingOf(
  deps: Deps,
  catalogue: Catalogue,
  { content }: Inventory,
  stored: StoredEstimate,
): Standing {
  const visit = content.visits.find(({ date }) => date === stored.visit)
  return compareWithToday(stored, {
    household: visit ? householdAt(content, visit) : null,
    catalogue,
    settings: settingsNow(deps),
  })
}
