import { z } from 'zod'
import { KEEP_POWERED_REASONS, MODES } from '../core/catalogue/category.ts'
import { UNCERTAINTY_ORIGINS } from '../core/population/stock.ts'
import { layer, overlayRevisionUsed } from './layer.ts'
import { LIMITS, localId, nonNegative, numberOrRange, shortText } from './common.ts'
import { emissionFactorSchema } from './emissionFactor.ts'
import { cautionSchema, intervalSchema } from './estimate.ts'
import { householdSchema } from './household.ts'
import { surveyEstimateSchema, surveySchema } from './survey.ts'
import { warningSchema } from './warning.ts'

/** More homes than there are people. */
const MOST_HOMES = 10_000_000_000
export const MOST_ITEMS = 40
export const MOST_RUNGS = 10

const { weeksPerYear, coverageProbability, catalogueRevision, overlayRevision, referenceRevision } =
  householdSchema.shape
const watts = nonNegative(LIMITS.watts)

const drawRange = z
  .strictObject({ low: watts, typical: watts, high: watts })
  .superRefine(({ low, typical, high }, context) => {
    const fault = (field: string, message: string) =>
      context.addIssue({ code: 'custom', path: [field], message, params: { code: 'range-out-of-order' } })
    if (low > typical) fault('low', `low (${low} W) must not be above typical (${typical} W)`)
    if (typical > high) fault('high', `high (${high} W) must not be below typical (${typical} W)`)
  })

const stockItemSchema = z
  .strictObject({
    category: shortText
      .optional()
      .describe('Code, name or alias of a category, or else name, drawW and hoursPerWeek'),
    year: z.int().min(LIMITS.yearFrom).max(LIMITS.yearTo).optional().describe('Year of manufacture'),
    modes: z
      .array(z.strictObject({ mode: z.enum(MODES), hoursPerWeek: nonNegative(168).optional() }))
      .min(1)
      .max(MODES.length)
      .optional()
      .describe('All modes of the category with their default hours where left out'),
    name: shortText.optional(),
    drawW: drawRange.optional().describe('5th, 50th and 95th percentile over devices in use, W'),
    hoursPerWeek: nonNegative(168).optional(),
    ownership: numberOrRange(nonNegative(1)).describe(
      'Share of homes that have at least one; a range is triangular, and the same for all homes',
    ),
    countPerOwner: z
      .number()
      .min(1)
      .max(LIMITS.quantity)
      .optional()
      .describe("Mean number in a home that has any; the category's default quantity, or 1, where left out"),
    meanDrawUncertainty: nonNegative(0.95)
      .optional()
      .describe(
        'Half-width of what is not known of the mean draw, relative to it; by provenance where left out',
      ),
  })
  .meta({ id: 'StockItem', description: 'One kind of device in the homes' })

const meanPriceSchema = z
  .strictObject({
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, 'must be an ISO 4217 code of three capital letters, such as EUR'),
    pricePerKwh: nonNegative(1_000_000),
    relativeUncertainty: nonNegative(0.95).optional(),
  })
  .meta({ id: 'MeanPrice', description: 'What a kWh costs the homes on average, all in' })

/** Stock model of POST /v1/population-estimates, and input of the GraphQL query `populationOfStock`. */
export const stockSchema = z
  .strictObject({
    method: z.literal('stock'),
    items: z.array(stockItemSchema).min(1).max(MOST_ITEMS),
    ladder: z
      .array(z.strictObject({ name: shortText, homes: z.int().min(1).max(MOST_HOMES) }))
      .min(1)
      .max(MOST_RUNGS)
      .describe('From one home to a country'),
    cutShare: z.number().gt(0).max(1).optional().describe('Share of the energy that is cut, such as 0.3'),
    price: meanPriceSchema.optional(),
    emissionFactor: emissionFactorSchema.optional(),
    emissionFactorCode: localId.optional(),
    weeksPerYear,
    coverageProbability,
    catalogueRevision,
    referenceRevision,
    overlayRevision,
  })
  .meta({ id: 'StockRequest', description: 'Devices by ownership, count, draw and hours' })

/** Body of POST /v1/population-estimates. */
export const populationRequestSchema = z.discriminatedUnion('method', [surveySchema, stockSchema])

const figures = {
  powerW: intervalSchema.describe('Average over the whole year'),
  powerMw: intervalSchema,
  energyKwhPerYear: intervalSchema,
  energyGwhPerYear: intervalSchema,
  costPerYear: intervalSchema.describe("In the price's currency"),
  emissionsKgCo2ePerYear: intervalSchema,
  emissionsTonnesCo2ePerYear: intervalSchema,
}
const figuresSchema = z.strictObject(figures).meta({ id: 'StockFigures' })

const rungSchema = z
  .strictObject({
    name: z.string(),
    homes: z.int(),
    ...figures,
    perHome: z.strictObject({ powerW: intervalSchema, energyKwhPerYear: intervalSchema }),
    sharedVarianceShare: z
      .number()
      .describe('Share of the variance that is common to all homes, and does not shrink with their number'),
    cut: figuresSchema.nullable().describe('What cutting cutShare is worth; null where none was asked for'),
  })
  .meta({ id: 'StockRung' })

export const stockEstimateSchema = z
  .strictObject({
    method: z.literal('stock'),
    methodVersion: z.string(),
    catalogueRevision: z.int(),
    referenceRevision: z.int().describe('Revision of tariffs and emission factors that was used'),
    overlayRevision: overlayRevisionUsed,
    coverageProbability: z.number(),
    sampleData: z.boolean(),
    used: z.strictObject({
      price: meanPriceSchema,
      priceSource: z.string(),
      emissionFactor: emissionFactorSchema,
      emissionFactorSource: z.string(),
      weeksPerYear: z.number(),
    }),
    items: z.array(
      z.strictObject({
        name: z.string(),
        category: z.string().nullable(),
        catalogueLayer: layer.nullable(),
        keepPowered: z.enum(KEEP_POWERED_REASONS).nullable(),
        ownership: z.strictObject({ low: z.number(), typical: z.number(), high: z.number() }),
        countPerOwner: z.number(),
        meanDrawUncertainty: z.number(),
        meanDrawUncertaintyFrom: z
          .enum(UNCERTAINTY_ORIGINS)
          .describe("The request, or the service's own assumption by where the draw is from"),
        energyKwhPerYearPerHome: z.number(),
        shareOfTotal: z.number(),
      }),
    ),
    switchableShare: z.number().describe('Share of the energy of devices that need not stay powered'),
    cutShare: z.number().nullable(),
    ladder: z.array(rungSchema),
    assumptions: z.array(z.string()),
    formulas: z.array(z.string()),
    warnings: z.array(warningSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'StockEstimate' })

export const populationEstimateSchema = z.discriminatedUnion('method', [
  surveyEstimateSchema,
  stockEstimateSchema,
])
