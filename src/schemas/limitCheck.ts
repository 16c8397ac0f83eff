import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { DEVICE_FLAGS } from '../core/estimate/estimate.ts'
import { JURISDICTIONS, SUPPLY_TYPES } from '../core/limits/limit.ts'
import { LIMIT_REASONS, LIMIT_VERDICTS } from '../core/limits/limitCheck.ts'
import { overlayRevisionUsed } from './layer.ts'
import { LIMITS, localId, nonNegative, positive, shortText } from './common.ts'
import { cautionSchema, intervalSchema } from './estimate.ts'
import { householdSchema, supplySchema } from './household.ts'
import { limitSchema } from './limit.ts'
import { readingSchema } from './reading.ts'
import { warningSchema } from './warning.ts'

const { meters, coverageProbability, catalogueRevision, overlayRevision } = householdSchema.shape
const watts = nonNegative(LIMITS.watts)

/** Body of POST /v1/limits/check and input of the GraphQL query `checkAgainstLimit`. */
export const limitQuestionSchema = z
  .strictObject({
    reading: readingSchema.optional(),
    meters,
    supply: supplySchema.optional(),
    category: shortText.optional().describe('For the power factor of a reading of current or apparent power'),
    powerW: z
      .strictObject({ expected: watts, low: watts, high: watts })
      .optional()
      .describe('In place of a reading'),
    limitCode: localId.optional().describe('One limit; else those that fit jurisdiction, mode and date'),
    jurisdiction: z.enum(JURISDICTIONS).optional(),
    mode: z.enum(MODES).optional(),
    placedOnMarket: z
      .string()
      .regex(
        /^(19|20)\d\d(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?$/,
        'must be a year, YYYY-MM or YYYY-MM-DD',
      )
      .optional()
      .describe('When the device was first sold: a year, a month or a day'),
    showsStatus: z
      .boolean()
      .optional()
      .describe('In standby: shows information or status, more than an indicator light'),
    highNetworkAvailability: z
      .boolean()
      .optional()
      .describe('In networked standby: its main job is to pass on network traffic'),
    supplyType: z.enum(SUPPLY_TYPES).optional(),
    ratedOutputW: positive(LIMITS.watts).optional().describe('Of an external power supply'),
    coverageProbability,
    catalogueRevision,
    overlayRevision,
  })
  .meta({ id: 'LimitCheckRequest' })

const reason = z.strictObject({ code: z.enum(LIMIT_REASONS), message: z.string() })

export const limitAnswerSchema = z
  .strictObject({
    methodVersion: z.string(),
    catalogueRevision: z.int(),
    overlayRevision: overlayRevisionUsed,
    coverageProbability: z.number(),
    verdict: z.enum(LIMIT_VERDICTS),
    reason,
    notice: z.string().describe('That this is no compliance test, and why'),
    powerW: intervalSchema,
    confidence: z.enum(DEVICE_FLAGS).nullable().describe('null where the request gave the power'),
    compared: z.array(
      z
        .strictObject({
          limit: limitSchema,
          aboveFromW: z.number().describe("The limit and the tolerance that an authority's test allows, W"),
          verdict: z.enum(LIMIT_VERDICTS),
          reason,
        })
        .meta({ id: 'ComparedLimit' }),
    ),
    warnings: z.array(warningSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'LimitCheck' })
