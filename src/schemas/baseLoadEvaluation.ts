import { z } from 'zod'
import { CHOOSABLE, ESTIMATORS } from '../core/baseLoad/estimators.ts'
import { FORMS } from '../core/baseLoad/intervalData.ts'
import { overlayRevisionUsed } from './layer.ts'
import { cautionSchema, intervalSchema } from './estimate.ts'
import { warningSchema } from './warning.ts'

const dateSpan = z.strictObject({ from: z.string(), to: z.string() }).describe('Local dates, both included')
const timeSpan = z.strictObject({ from: z.string(), to: z.string() }).describe('Instants in UTC')

const dataSchema = z
  .strictObject({
    form: z.enum(FORMS),
    timeZone: z.string(),
    from: z.string(),
    to: z.string(),
    intervalSeconds: z.number(),
    readings: z.int().describe('Readings that count, after all that is told below'),
    days: z.int(),
    completeDays: z.int().describe('Days of which at least 90 % is covered'),
    clockChanges: z
      .array(z.strictObject({ date: z.string(), hours: z.number() }))
      .describe('Days that are not 24 hours long'),
    coveredShare: z.number(),
    gaps: z.int(),
    longestGapHours: z.number(),
    duplicates: z.int().describe('Readings that repeated another, and count once'),
    conflicts: z.int().describe('Intervals that came with two values; left out'),
    overlaps: z.int().describe('Readings that overlapped others in part; left out'),
    joined: z.int().describe('Shorter readings that were put together'),
    estimated: z.int().describe('Readings that the data marks as estimated, edited or questionable'),
    energyKwh: z.number(),
    meanW: z.number(),
    leastReadingW: z.number(),
  })
  .meta({ id: 'IntervalDataSummary' })

const estimatorSchema = z
  .strictObject({
    estimator: z.enum(ESTIMATORS),
    definition: z.string(),
    powerW: z.number().nullable(),
    low: z.number().nullable().describe('Lower end of its coverage interval, W'),
    high: z.number().nullable().describe('Upper end, W'),
    days: z.int().describe('Days it rests on'),
    reason: z.string().nullable().describe('Why there is no figure'),
  })
  .meta({ id: 'BaseLoadEstimator' })

const chosenSchema = z
  .strictObject({
    estimator: z.enum(CHOOSABLE),
    powerW: intervalSchema,
    energyKwhPerYear: intervalSchema,
    shareOfUse: z.number().nullable().describe('Of the mean power of all readings; null with generation'),
    days: z.int(),
    effectiveDays: z.number().describe('Independent days that would give as sure a figure'),
    degreesOfFreedom: z.number(),
    explanation: z.string(),
    formula: z.string(),
    source: z.string(),
  })
  .meta({ id: 'ChosenBaseLoad' })

const explainedSchema = z
  .strictObject({
    from: z.enum(['inventory', 'request']),
    devices: z.int().nullable(),
    sampleData: z.boolean(),
    powerW: intervalSchema.describe('What the inventory draws in its low-power modes, W'),
    explainedShare: intervalSchema.describe('Inventory over base load; expected is the ratio of the means'),
    restW: intervalSchema.describe('Base load less inventory, W; below 0 where the inventory is more'),
    correlation: z.string(),
    couldBe: z
      .array(
        z.strictObject({
          code: z.string(),
          isStandby: z.boolean(),
          message: z.string(),
          source: z.string(),
        }),
      )
      .describe('What the rest could be; isStandby is false for what runs by itself'),
  })
  .meta({ id: 'ExplainedBaseLoad' })

/** Answer of POST /v1/base-load/evaluate. */
export const baseLoadEvaluationSchema = z
  .strictObject({
    methodVersion: z.string(),
    catalogueRevision: z.int(),
    overlayRevision: overlayRevisionUsed,
    coverageProbability: z.number(),
    night: z.strictObject({ fromHour: z.number(), toHour: z.number() }),
    data: dataSchema,
    estimators: z.array(estimatorSchema),
    chosen: chosenSchema,
    daysAway: z.strictObject({
      named: z.array(dateSpan),
      suspected: z.array(dateSpan).describe('Found in the data; they count until they are named'),
      meanW: z.number().nullable().describe('Mean power of the days that were named'),
    }),
    outages: z.array(timeSpan).describe('Runs of zero readings for an hour or longer; left out'),
    generation: z.boolean().describe('Whether something behind the meter generates; then only nights count'),
    inventory: explainedSchema.nullable(),
    warnings: z.array(warningSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'BaseLoadEvaluation' })
