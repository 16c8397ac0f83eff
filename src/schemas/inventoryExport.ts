import { z } from 'zod'
import type { AuditEvent } from '../core/access/auditEvent.ts'
import type { EstimateBasis } from '../core/estimate/basis.ts'
import type { Inventory } from '../core/inventory/inventory.ts'
import type { StoredEstimate } from '../core/inventory/storedEstimate.ts'
import { without } from '../core/without.ts'
import { auditEventAnswerSchema, showEvent } from './auditEvent.ts'
import { estimateSchema } from './estimate.ts'
import { householdSchema } from './household.ts'
import { inventorySchema, showInventory } from './inventory.ts'

export const inventoryExportSchema = z
  .strictObject({
    inventory: inventorySchema,
    estimates: z.array(
      z.strictObject({
        id: z.string(),
        visit: z.iso.date(),
        madeAt: z.iso.datetime(),
        catalogueRevision: z.int(),
        methodVersion: z.string(),
        household: householdSchema,
        basis: z
          .custom<EstimateBasis>()
          .describe('Settings, tariff and emission factors that it was made with'),
        estimate: estimateSchema,
      }),
    ),
    auditEvents: z.array(auditEventAnswerSchema),
  })
  .meta({ id: 'InventoryExport', description: 'All that is held about one household' })

interface Exported {
  readonly inventory: Inventory
  readonly estimates: readonly StoredEstimate[]
  readonly auditEvents: readonly AuditEvent[]
}

export const showExport = ({ inventory, estimates, auditEvents }: Exported) => ({
  inventory: showInventory(inventory),
  estimates: estimates.map(({ result, ...stored }) => ({
    ...without(stored, 'inventory'),
    estimate: result,
  })),
  auditEvents: auditEvents.map(showEvent),
})
