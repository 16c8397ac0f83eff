import { z } from 'zod'
import { householdSchema } from './household.ts'
import { planOptionsSchema } from './savingsPlan.ts'
import { plannedMeasuresSchema } from './verification.ts'

const { coverageProbability, catalogueRevision, overlayRevision, referenceRevision } = householdSchema.shape
const asked = { coverageProbability, catalogueRevision, overlayRevision, referenceRevision }

/** Body of POST /v1/inventories/{id}/savings-plan; an empty object asks for the last visit and all measures. */
export const planWantedSchema = z
  .strictObject({
    visit: z.iso.date().optional().describe('Date of the visit; the last one by default'),
    ...asked,
    plan: planOptionsSchema.optional(),
  })
  .meta({ id: 'InventoryPlanRequest' })

/** Body of POST /v1/inventories/{id}/verification; an empty object asks for the first visit and the last. */
export const verificationWantedSchema = z
  .strictObject({
    before: z.iso.date().optional().describe('Date of the visit before; the first one by default'),
    after: z.iso.date().optional().describe('Date of the visit after; the last one by default'),
    ...asked,
    plan: plannedMeasuresSchema.optional(),
  })
  .meta({ id: 'InventoryVerificationRequest' })
