import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { DEVICE_FLAGS } from '../core/estimate/estimate.ts'
import { READING_KINDS } from '../core/readings/reading.ts'
import { VERDICTS } from '../core/readings/series/analyseSeries.ts'
import { layer, overlayRevisionUsed } from './layer.ts'
import { LIMITS, positive, shortText } from './common.ts'
import { cautionSchema, intervalSchema } from './estimate.ts'
import { deviceSchema, householdSchema, supplySchema } from './household.ts'
import { readingSchema } from './reading.ts'
import { warningSchema } from './warning.ts'

const { meters, coverageProbability, catalogueRevision, overlayRevision } = householdSchema.shape

/** Body of POST /v1/readings/evaluate and input of the GraphQL query `evaluateReading`. */
export const readingToEvaluateSchema = z
  .strictObject({
    reading: readingSchema,
    supply: supplySchema.optional(),
    meters,
    category: shortText
      .optional()
      .describe('Code, name or alias of a category, for its power factor and its usual draw'),
    mode: z.enum(MODES).optional().describe('Narrows the usual draw; all modes by default'),
    year: deviceSchema.shape.year,
    quantity: z
      .int()
      .min(1)
      .max(LIMITS.quantity)
      .optional()
      .describe('Devices that draw as much as the one that was read; 1 by default'),
    coverageProbability,
    maximumCurrentRatio: positive(10_000)
      .optional()
      .describe('Crest factor of the current over the power factor, as a power analyser shows them'),
    catalogueRevision,
    overlayRevision,
  })
  .meta({ id: 'ReadingEvaluationRequest' })

const seriesSchema = z
  .strictObject({
    verdict: z.enum(VERDICTS).describe('By the stability rule of IEC 62301:2011 5.3.2 (from memory)'),
    cycle: z
      .strictObject({ periodSeconds: z.number(), cycles: z.int().describe('Whole cycles in what counts') })
      .nullable()
      .describe('The cycle that the power repeats; null where none was found'),
    samples: z.int(),
    durationSeconds: z.number(),
    used: z
      .int()
      .describe('Samples that the mean is taken over: the last two thirds, or whole cycles of them'),
    meanW: z.number(),
    slopeWPerHour: z.number(),
    slopeLimitWPerHour: z.number().describe('Largest slope that counts as stable'),
    standardUncertaintyW: z.number().describe('Of the mean, from the scatter alone (type A)'),
    effectiveSamples: z
      .number()
      .describe('Independent samples, or whole cycles, that would give as sure a mean'),
    degreesOfFreedom: z.number(),
  })
  .meta({ id: 'SeriesAnalysis' })

const uncertaintyRuleSchema = z
  .strictObject({
    edition: z.string().describe('The standard, with edition and clause'),
    mark: z.enum(['V', 'M']).describe('V read in a copy of the source, M from memory'),
    limitW: z.number(),
    expandedUncertaintyW: z.number().describe('Half-width of the 95 % coverage interval'),
    goodEnough: z.boolean(),
  })
  .meta({ id: 'UncertaintyRule' })

export const readingEvaluationSchema = z
  .strictObject({
    catalogueRevision: z.int(),
    overlayRevision: overlayRevisionUsed,
    methodVersion: z.string(),
    coverageProbability: z.number(),
    kind: z.enum(READING_KINDS),
    supply: supplySchema,
    quantity: z.int(),
    category: z.string().nullable(),
    categoryName: z.string().nullable(),
    catalogueLayer: layer.nullable().describe('Whose figures of the category went in'),
    sampleData: z.boolean(),
    confidence: z.enum(DEVICE_FLAGS),
    powerW: intervalSchema.describe('Real power, all of the quantity together'),
    apparentPowerVa: intervalSchema.optional().describe('Where current or apparent power was read'),
    reactivePowerVar: intervalSchema.optional().describe('Non-active power, sqrt(S^2 - P^2)'),
    powerFactor: z
      .strictObject({ low: z.number(), typical: z.number(), high: z.number() })
      .optional()
      .describe('What turned VA into W; all three the same where it was read'),
    series: seriesSchema.optional(),
    uncertaintyRules: z
      .array(uncertaintyRuleSchema)
      .describe("IEC 62301's; empty where no meter was read, or its accuracy is not known"),
    assumptions: z.array(z.string()),
    steps: z.array(z.strictObject({ what: z.string(), formula: z.string(), result: z.string() })),
    warnings: z.array(warningSchema),
    guidance: z.array(cautionSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'ReadingEvaluation' })
