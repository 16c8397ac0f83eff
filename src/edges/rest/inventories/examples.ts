import type { z } from 'zod'
import type { inventoryExportSchema } from '../../../schemas/inventoryExport.ts'
import type { inventoryListSchema, inventorySchema } from '../../../schemas/inventory.ts'
import type {
  remadeEstimateSchema,
  storedEstimateListSchema,
  storedEstimateSchema,
} from '../../../schemas/storedEstimate.ts'
import { exampleEstimate } from '../examples.ts'
import { exampleContent, firstVisit } from './requestExamples.ts'

/** The examples of the API description for answers; all of it is invented. */
const id = 'mfrggzdfmztwq2lk'
const estimateId = 'onswg4tfoqqgc3te'
const createdAt = '2026-01-16T09:00:00.000Z'

export const exampleInventory = {
  id,
  version: 1,
  createdAt,
  updatedAt: createdAt,
  ...exampleContent,
  visits: [{ ...firstVisit, kind: 'first' }],
} satisfies z.input<typeof inventorySchema>

export const exampleInventoryList = {
  items: [
    {
      id,
      version: 1,
      createdAt,
      updatedAt: createdAt,
      reference: exampleContent.reference,
      visits: 1,
      lastVisit: firstVisit.date,
    },
  ],
  nextCursor: null,
} satisfies z.input<typeof inventoryListSchema>

const household = { annualUseKwh: exampleContent.annualUseKwh, devices: firstVisit.devices }
const made = {
  id: estimateId,
  visit: firstVisit.date,
  madeAt: createdAt,
  catalogueRevision: exampleEstimate.catalogueRevision,
  methodVersion: exampleEstimate.used.methodVersion,
}
const upToDate = { outOfDate: false, because: [], change: null }

export const exampleStoredEstimate = {
  ...made,
  inventoryId: id,
  standing: upToDate,
  household,
  estimate: exampleEstimate,
} satisfies z.input<typeof storedEstimateSchema>

const { currency, sampleData, total } = exampleEstimate
export const exampleStoredEstimateList = {
  items: [
    {
      ...made,
      inventoryId: id,
      currency,
      sampleData,
      total,
      standing: {
        outOfDate: true,
        because: ['catalogue'],
        change: { energyKwhPerYear: 1.3, costPerYear: 0.39, emissionsKgCo2ePerYear: 0.62 },
      },
    },
  ],
  nextCursor: null,
} satisfies z.input<typeof storedEstimateListSchema>

export const exampleRemadeEstimate = {
  same: true,
  storedMethodVersion: exampleEstimate.used.methodVersion,
  estimate: exampleEstimate,
} satisfies z.input<typeof remadeEstimateSchema>

export const exampleExport = {
  inventory: exampleInventory,
  estimates: [],
  auditEvents: [],
} satisfies z.input<typeof inventoryExportSchema>
