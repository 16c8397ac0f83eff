import type { AuditEvent } from '../core/access/auditEvent.ts'
import type { Inventory } from '../core/inventory/inventory.ts'
import type { StoredEstimate } from '../core/inventory/storedEstimate.ts'
import type { TimedPlace } from '../stores/inventoryStore.ts'
import type { Window } from '../stores/window.ts'
import { authorize, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { readInventory } from './readInventory.ts'

/** All that is held about one household. */
export interface InventoryExport {
  readonly inventory: Inventory
  readonly estimates: readonly StoredEstimate[]
  readonly auditEvents: readonly AuditEvent[]
}

const PAGE = 200

/**
 * Everything that is kept about one household of the caller's organisation: what a household may ask for.
 * @throws DomainError key-required, scope-missing, unknown-inventory
 */
export async function exportInventory(deps: Deps, sender: Sender, id: string): Promise<InventoryExport> {
  const { organisation } = authorize(sender, 'intake').caller
  const inventory = await readInventory(deps, sender, id)
  const { inventoryStore, auditStore } = deps
  const about = { organisation, subjectKind: 'inventory', subjectId: id }
  const [estimates, auditEvents] = await Promise.all([
    all<StoredEstimate, TimedPlace>(
      (window) => inventoryStore.estimates(organisation, id, window),
      (last) => ({ at: new Date(last.madeAt), id: last.id }),
    ),
    all<AuditEvent, string>(
      (window) => auditStore.list(about, window),
      (last) => last.id,
    ),
  ])
  return { inventory, estimates, auditEvents }
}

/** A whole list, page by page. */
async function all<T, Place>(
  list: (window: Window<Place>) => Promise<readonly T[]>,
  placeOf: (item: T) => Place,
): Promise<readonly T[]> {
  const items: T[] = []
  for (;;) {
    const last = items.at(-1)
    const page = await list({ after: last && placeOf(last), limit: PAGE, keep: 'first' })
    items.push(...page)
    if (page.length < PAGE) return items
  }
}
