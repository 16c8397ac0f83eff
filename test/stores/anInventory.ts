import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import type { Inventory, InventoryContent } from '../../src/core/inventory/inventory.ts'
import type { StoredEstimate } from '../../src/core/inventory/storedEstimate.ts'
import type { AuditStore } from '../../src/stores/auditStore.ts'
import type { InventoryStore } from '../../src/stores/inventoryStore.ts'
import type { KeyStore } from '../../src/stores/keyStore.ts'
import type { Once } from '../../src/stores/once.ts'

export interface OpenedInventoryStore {
  readonly store: InventoryStore
  /** A second store over the same data, as another process of the service has one. */
  readonly second: InventoryStore
  readonly keys: KeyStore
  /** The trail that both write into. */
  readonly audit: AuditStore
  close(): Promise<void>
}

export const EVERYTHING = { limit: 1_000, keep: 'first' } as const
const START = Date.parse('2026-01-31T12:00:00.000Z')
export const later = (minutes: number) => new Date(START + minutes * 60_000)

export const anInventory = (
  name: string,
  content: Partial<InventoryContent> = {},
  minutes = 0,
): Inventory => ({
  id: name.padEnd(16, 'a'),
  version: 1,
  createdAt: later(minutes).toISOString(),
  updatedAt: later(minutes).toISOString(),
  content: { reference: name, visits: [], ...content },
})
export const aVisit = (date: string) => ({ date, devices: [{ category: 'television' }] })
export const anEstimate = (inventory: Inventory, name: string, minutes = 0): StoredEstimate =>
  ({
    id: name.padEnd(16, 'b'),
    inventory: inventory.id,
    visit: '2026-01-15',
    madeAt: later(minutes).toISOString(),
    catalogueRevision: 1,
    methodVersion: '1',
    household: { devices: [{ category: 'television' }] },
    basis: {},
    // Fields in an order that only a store that keeps it gives back.
    result: { zebra: 1, ant: 0.1 + 0.2 },
  }) as unknown as StoredEstimate
export const anEvent = (subjectId: string): NewAuditEvent => ({
  at: later(0),
  origin: null,
  concerns: 'one',
  action: 'inventory.change',
  subjectKind: 'inventory',
  subjectId,
  before: null,
  after: null,
})
export const once = (key: string, asked: string, minutes = 0): Once => ({
  key,
  digest: new Uint8Array(32).fill(asked.charCodeAt(0)),
  at: later(minutes),
})
