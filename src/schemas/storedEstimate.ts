import { z } from 'zod'
import { CHANGE_CAUSES, type Standing } from '../core/inventory/compareWithToday.ts'
import type { StoredEstimate } from '../core/inventory/storedEstimate.ts'
import { estimateSchema } from './estimate.ts'
import { householdSchema } from './household.ts'
import { pageOf, pageQuery } from './paging.ts'

/** Body of POST /v1/inventories/{id}/estimates; an empty object asks for the last visit. */
export const estimateWantedSchema = z
  .strictObject({
    visit: z.iso.date().optional().describe('Date of the visit; the last one by default'),
    coverageProbability: householdSchema.shape.coverageProbability,
    catalogueRevision: householdSchema.shape.catalogueRevision,
    referenceRevision: householdSchema.shape.referenceRevision,
    overlayRevision: householdSchema.shape.overlayRevision,
  })
  .meta({ id: 'StoredEstimateRequest' })

const standingSchema = z
  .strictObject({
    outOfDate: z.boolean().describe('Whether the same estimate would come out otherwise today'),
    because: z
      .array(z.enum(CHANGE_CAUSES))
      .describe('What moved on since, as far as it changes the estimate'),
    change: z
      .strictObject({
        energyKwhPerYear: z.number(),
        costPerYear: z.number().nullable().describe('Null where the currency is another one'),
        emissionsKgCo2ePerYear: z.number(),
      })
      .nullable()
      .describe(
        "Today's expected total less the stored one; null where nothing changed or there can be none today",
      ),
  })
  .meta({ id: 'EstimateStanding' })

const summarySchema = z
  .strictObject({
    id: z.string(),
    inventoryId: z.string(),
    visit: z.iso.date(),
    madeAt: z.iso.datetime(),
    catalogueRevision: z.int(),
    methodVersion: z.string(),
    currency: z.string(),
    sampleData: z.boolean(),
    total: estimateSchema.shape.total,
    standing: standingSchema,
  })
  .meta({ id: 'StoredEstimateSummary' })

export const storedEstimateListSchema = pageOf(summarySchema).meta({ id: 'StoredEstimateList' })
export const storedEstimateQuerySchema = z.strictObject(pageQuery)

export const storedEstimateSchema = summarySchema
  .omit({ total: true, currency: true, sampleData: true })
  .extend({
    household: householdSchema.describe('The household as it was estimated'),
    estimate: estimateSchema,
  })
  .meta({ id: 'StoredEstimate', description: 'An estimate that is kept with all that it was made from' })

export const remadeEstimateSchema = z
  .strictObject({
    same: z.boolean().describe('Whether it is the stored estimate to the last byte'),
    storedMethodVersion: z
      .string()
      .describe('Method of the stored estimate; where today’s is another, figures may differ'),
    estimate: estimateSchema,
  })
  .meta({ id: 'RemadeEstimate' })

interface WithStanding {
  readonly stored: StoredEstimate
  readonly standing: Standing
}

const said = ({ stored, standing }: WithStanding) => ({
  id: stored.id,
  inventoryId: stored.inventory,
  visit: stored.visit,
  madeAt: stored.madeAt,
  catalogueRevision: stored.catalogueRevision,
  methodVersion: stored.methodVersion,
  standing,
})

export const summariseStoredEstimate = (item: WithStanding) => {
  const { currency, sampleData, total } = item.stored.result
  return { ...said(item), currency, sampleData, total }
}

export const showStoredEstimate = (item: WithStanding) => ({
  ...said(item),
  household: item.stored.household,
  estimate: item.stored.result,
})
