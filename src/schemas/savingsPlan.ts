import { z } from 'zod'
import { KEEP_POWERED_REASONS, MODES } from '../core/catalogue/category.ts'
import { FACTOR_KINDS } from '../core/emissions/emissionFactor.ts'
import { MEASURE_KINDS } from '../core/savings/measure.ts'
import { REFUSAL_CODES } from '../core/savings/offered.ts'
import { PLAN_GOALS } from '../core/savings/savingsRequest.ts'
import { LIMITS, localId, numberOrRange, positive, shortText } from './common.ts'
import { emissionFactorSchema } from './emissionFactor.ts'
import { cautionSchema, estimateSchema, intervalSchema, moneyIntervalSchema } from './estimate.ts'
import { householdSchema } from './household.ts'
import { MEASURE_FIGURES, shareRangeSchema } from './savingsMeasure.ts'
import { warningSchema } from './warning.ts'

const { price, lifeYears, share, draw, ratedLoadW, ratedLoadA, outlets, hoursOffPerWeek } = MEASURE_FIGURES
const deviceIds = z.array(localId).min(1).max(LIMITS.devices)

const measureChoiceSchema = z
  .strictObject({
    code: localId.describe('Code of one of GET /v1/savings-measures'),
    price: price.optional().describe("Of one piece, in the tariff's currency"),
    lifeYears: lifeYears.optional(),
    persistence: numberOrRange(share)
      .optional()
      .describe('Share of what it could save that it saves over its life'),
    ownDrawW: numberOrRange(draw).optional().describe('What it draws itself, all hours of the year, W'),
    ratedLoadW: ratedLoadW.optional(),
    ratedLoadA: ratedLoadA.optional(),
    outlets: outlets.optional(),
    hoursOffPerWeek: hoursOffPerWeek.optional(),
    fromMode: z.enum(MODES).optional(),
    toMode: z.enum(MODES).optional(),
    newDrawW: numberOrRange(draw)
      .optional()
      .describe('What the new device draws in the modes of the old one, W'),
    devices: deviceIds.optional().describe('Ids of the devices that it is for; all that it suits by default'),
  })
  .meta({ id: 'MeasureChoice', description: 'A measure that is available, with figures of the household' })

export const planOptionsSchema = z
  .strictObject({
    budget: price
      .optional()
      .describe("What may be spent, in the tariff's currency; no bound where it is not given"),
    goal: z
      .enum(PLAN_GOALS)
      .optional()
      .describe(
        'most-energy: what saves most energy within the budget, the default with one. most-money-after-cost: what saves ' +
          'most money less the price of each measure spread over its life, the default without',
      ),
    measures: z
      .array(measureChoiceSchema)
      .min(1)
      .max(50)
      .optional()
      .describe('What is available; all that the service has by default'),
    devices: z
      .array(
        z
          .strictObject({
            deviceId: localId,
            ratedWatts: positive(LIMITS.watts).describe('What its label says that it takes at most, W'),
          })
          .meta({ id: 'PlanDevice' }),
      )
      .max(LIMITS.devices)
      .optional()
      .describe('Rated loads, to be added up for strips'),
    outletsWithStrip: z
      .array(shortText)
      .max(LIMITS.devices)
      .optional()
      .describe('Outlets that have a power strip already'),
    marginalFactor: emissionFactorSchema
      .optional()
      .describe('Emissions of the power stations that would generate less'),
    marginalFactorCode: localId.optional().describe('The same, by the code of a marginal emission factor'),
  })
  .meta({ id: 'SavingsPlanOptions' })

/** Body of POST /v1/savings-plans and input of the GraphQL query `savingsPlan`. */
export const savingsRequestSchema = z
  .strictObject({ ...householdSchema.shape, plan: planOptionsSchema.optional() })
  .meta({ id: 'SavingsPlanRequest' })

const years = z.number().nullable()
const paybackSchema = z
  .strictObject({
    expected: years.describe('The price over the mean saving a year'),
    low: years,
    high: years,
  })
  .meta({ id: 'Payback', description: 'Years; null is never' })

const figures = z
  .strictObject({
    price: z.number().describe('Of all pieces'),
    priceAmount: z.string().describe('The same as decimal text'),
    savedKwhPerYear: intervalSchema,
    savedMoneyPerYear: moneyIntervalSchema.describe('The bill as it is less the bill without what is saved'),
    savedEmissionsKgCo2ePerYear: intervalSchema.describe('By savingsFactor'),
    simplePaybackYears: paybackSchema,
    probabilityOfPayback: z.number().describe('That the money saved over the life is at least the price'),
    lifeYears: z.number().describe('Of a set: the shortest of those that cost something'),
  })
  .meta({ id: 'SavingFigures', description: 'What a measure, or a set of them, saves and costs' })

const offeredSchema = z
  .strictObject({
    id: z.string(),
    measureCode: z.string(),
    name: z.string(),
    kind: z.enum(MEASURE_KINDS),
    deviceIds: z.array(z.string()),
    outlet: z.string().nullable(),
    count: z.int().describe('Pieces, or devices'),
    needsHabit: z.boolean().describe('Whether somebody has to remember it'),
    persistence: shareRangeSchema,
    chosen: z.boolean().describe('Whether it is in the plan'),
    sampleData: z.boolean(),
    source: z.string(),
    notes: z.array(warningSchema),
    figures,
  })
  .meta({ id: 'OfferedMeasure', description: 'A measure at one place, as if it were the only one' })

export const savingsPlanSchema = z
  .strictObject({
    catalogueRevision: estimateSchema.shape.catalogueRevision,
    overlayRevision: estimateSchema.shape.overlayRevision,
    referenceRevision: estimateSchema.shape.referenceRevision,
    coverageProbability: z.number(),
    currency: z.string(),
    sampleData: z.boolean(),
    methodVersion: z.string(),
    goal: z.enum(PLAN_GOALS),
    budget: z.number().nullable(),
    standbyPricePerKwh: z.number(),
    priceBasis: z.string(),
    savingsFactor: z
      .strictObject({
        factor: emissionFactorSchema,
        kind: z.enum(FACTOR_KINDS).nullable().describe('null where the request did not say'),
        source: z.string(),
      })
      .meta({ id: 'SavingsFactor', description: 'What a kWh less keeps out of the air' }),
    total: estimateSchema.shape.total.describe('Of the household before anything is done'),
    measures: z.array(offeredSchema),
    plan: z
      .strictObject({ measureIds: z.array(z.string()), figures })
      .meta({
        id: 'ChosenSet',
        description: 'The household before less after: no sum of single measures, since they overlap',
      })
      .nullable()
      .describe('null where nothing is worth doing'),
    notOffered: z.array(
      z
        .strictObject({
          measureCode: z.string(),
          deviceIds: z.array(z.string()),
          outlet: z.string().nullable(),
          code: z.enum(REFUSAL_CODES),
          message: z.string(),
        })
        .meta({ id: 'MeasureNotOffered' }),
    ),
    keptPowered: z.array(
      z
        .strictObject({
          deviceId: z.string(),
          label: z.string().nullable(),
          category: z.string(),
          categoryName: z.string(),
          reason: z.enum(KEEP_POWERED_REASONS),
          note: z.string(),
        })
        .meta({ id: 'KeptPowered', description: 'A device that no measure may touch' }),
    ),
    warnings: z.array(warningSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'SavingsPlan' })
