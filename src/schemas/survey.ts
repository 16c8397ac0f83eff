import { z } from 'zod'
import { STANDARD_ERROR_FORMS } from '../core/population/survey.ts'
import { nonNegative, shortText } from './common.ts'
import { cautionSchema } from './estimate.ts'
import { warningSchema } from './warning.ts'

const MOST_STRATA = 1_000
export const MOST_SURVEYED = 100_000
const MOST_HOMES = 10_000_000_000
/** Wide enough for any unit, and far from where squares overflow. */
const MOST = 1e15

const figure = z.number().min(-MOST).max(MOST)
const count = z.int().min(0).max(MOST_HOMES)
const population = z.int().min(1).max(MOST_HOMES)

const summarySchema = z
  .strictObject({
    homes: count.describe('Sampled homes'),
    mean: figure,
    variance: nonNegative(1e30).describe('With divisor n - 1'),
    auxiliary: z
      .strictObject({
        mean: figure,
        variance: nonNegative(1e30),
        covariance: z.number().min(-1e30).max(1e30).describe('With the value'),
      })
      .optional(),
  })
  .meta({ id: 'StratumSummary' })

/** Survey of POST /v1/population-estimates, and input of the GraphQL query `populationOfSurvey`. */
export const surveySchema = z
  .strictObject({
    method: z.literal('survey'),
    unit: shortText.optional().describe('Unit of the values, such as kWh/yr; repeated in the answer'),
    strata: z
      .array(
        z
          .strictObject({
            name: shortText,
            homes: population.optional().describe('Homes of the whole stratum, sampled or not'),
            clusters: population
              .optional()
              .describe('Clusters of the whole stratum, where whole clusters were drawn'),
            sample: summarySchema.optional().describe('In place of single homes'),
          })
          .meta({ id: 'SurveyStratum' }),
      )
      .min(1)
      .max(MOST_STRATA),
    homes: z
      .array(
        z
          .strictObject({
            stratum: shortText.optional().describe('May be left out where there is only one'),
            cluster: shortText.optional(),
            value: figure,
            auxiliary: figure.optional().describe('A quantity whose total over all homes is known'),
            domain: shortText.optional().describe('A group to have figures of its own'),
          })
          .meta({ id: 'SurveyedHome' }),
      )
      .max(MOST_SURVEYED)
      .optional(),
    ratio: z
      .strictObject({
        auxiliaryTotal: z.number().positive().max(MOST),
        standardErrorForm: z
          .enum(STANDARD_ERROR_FORMS)
          .optional()
          .describe(
            'with-mean-factor by default: times known over estimated total of the auxiliary quantity',
          ),
      })
      .optional(),
    finitePopulationCorrection: z.boolean().optional().describe('true by default'),
    coverageProbability: z.number().min(0.5).max(0.99).optional(),
  })
  .meta({ id: 'SurveyRequest', description: 'Surveyed homes, drawn by strata, singly or in whole clusters' })

const figureSchema = z
  .strictObject({
    expected: z.number(),
    standardError: z.number(),
    low: z.number(),
    high: z.number(),
  })
  .meta({ id: 'SurveyFigure', description: 'An estimate with its standard error and t-interval' })

export const surveyEstimateSchema = z
  .strictObject({
    method: z.literal('survey'),
    methodVersion: z.string(),
    unit: z.string().nullable(),
    coverageProbability: z.number(),
    sampledHomes: z.int(),
    degreesOfFreedom: z.int().describe('Sampled homes, or clusters, less strata'),
    tQuantile: z.number(),
    finitePopulationCorrection: z.boolean(),
    populationHomes: z.number().describe('Estimated where clusters were drawn and strata do not give them'),
    total: figureSchema,
    mean: figureSchema,
    designEffect: z
      .number()
      .nullable()
      .describe('Variance of the total over that of a simple random sample of as many homes'),
    strata: z.array(
      z.strictObject({
        name: z.string(),
        sampledHomes: z.int(),
        sampledUnits: z.int(),
        populationUnits: z.int(),
        total: figureSchema,
      }),
    ),
    domains: z.array(
      z.strictObject({
        name: z.string(),
        sampledHomes: z.int(),
        homes: figureSchema,
        total: figureSchema,
        mean: figureSchema,
      }),
    ),
    ratio: z
      .strictObject({
        ratio: z.number(),
        auxiliaryTotal: z.number(),
        standardErrorForm: z.enum(STANDARD_ERROR_FORMS),
        total: figureSchema,
      })
      .nullable(),
    assumptions: z.array(z.string()),
    warnings: z.array(warningSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'SurveyEstimate' })
