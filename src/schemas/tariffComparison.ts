import { z } from 'zod'
import { overlayRevisionUsed } from './layer.ts'
import { localId } from './common.ts'
import { intervalSchema, moneyIntervalSchema } from './estimate.ts'
import { householdSchema } from './household.ts'
import { tariffSchema } from './tariff.ts'
import { warningSchema } from './warning.ts'

/** Body of POST /v1/tariff-comparisons and input of the GraphQL query `compareTariffs`. */
export const tariffComparisonRequestSchema = z
  .strictObject({
    ...householdSchema.omit({ tariff: true, tariffCode: true }).shape,
    tariffs: z
      .array(z.union([localId, tariffSchema]))
      .min(2)
      .max(20)
      .describe('Codes of tariffs that the service knows, or tariffs; the others are held against the first'),
  })
  .meta({ id: 'TariffComparisonRequest' })

const comparedTariffSchema = z
  .strictObject({
    tariffCode: z.string().nullable().describe('Null where the request gave the tariff itself'),
    name: z.string().nullable(),
    source: z.string(),
    sampleData: z.boolean(),
    standbyPricePerKwh: z.number().describe('Mean cost of a kWh of standby, taxes included'),
    priceBasis: z.string(),
    costPerYear: moneyIntervalSchema.describe('Standby of all devices'),
    differencePerYear: moneyIntervalSchema.describe('Less that of the first, for the same energy'),
    annualBill: z
      .string()
      .nullable()
      .describe("All bills of the household's year, decimal text; null where its use is not known"),
    warnings: z.array(warningSchema),
  })
  .meta({ id: 'ComparedTariff' })

export const tariffComparisonSchema = z
  .strictObject({
    catalogueRevision: z.int(),
    referenceRevision: z.int().describe('Revision of tariffs and emission factors that was used'),
    overlayRevision: overlayRevisionUsed,
    coverageProbability: z.number(),
    currency: z.string(),
    sampleData: z.boolean(),
    annualUseKwh: z.number().nullable(),
    methodVersion: z.string(),
    energyKwhPerYear: intervalSchema,
    tariffs: z.array(comparedTariffSchema).describe('In the order sent'),
  })
  .meta({ id: 'TariffComparison' })
