import { z } from 'zod'
import { DEVICE_FLAGS } from '../core/estimate/estimate.ts'
import { estimateSchema, intervalSchema, moneyIntervalSchema } from './estimate.ts'
import { householdSchema } from './household.ts'
import { labelFields, stayOnFields } from './quiz.ts'
import { overlayRevisionUsed } from './layer.ts'

const named = {
  deviceId: z.string().describe('Id of the device in household and estimate; answer-1 is the first answer'),
  category: z.string(),
  ...labelFields,
}

const worthDoingSchema = z
  .strictObject({
    ...named,
    advice: z.string(),
    confidence: z.enum(DEVICE_FLAGS),
    energyKwhPerYear: intervalSchema,
    costPerYear: moneyIntervalSchema,
    shareOfTotal: z.number(),
  })
  .meta({ id: 'WorthDoing' })

const mustStayOnSchema = z.strictObject({ ...named, ...stayOnFields }).meta({ id: 'MustStayOn' })

/** Answer of POST /v1/quiz/answers. */
export const quizResultSchema = z
  .strictObject({
    language: z.string().describe('Of labels, advice and reasons; sentences within estimate are in English'),
    catalogueRevision: z.int(),
    overlayRevision: overlayRevisionUsed,
    sampleData: z.boolean(),
    sampleDataNotice: z.string().nullable().describe('To be shown wherever figures are'),
    household: householdSchema.describe('What the answers were turned into: a body of POST /v1/estimates'),
    estimate: estimateSchema,
    worthDoing: z
      .array(worthDoingSchema)
      .max(3)
      .describe('Largest energy first; never what must stay powered'),
    mustStayOn: z.array(mustStayOnSchema),
    beforeSwitchingOff: z.string(),
  })
  .meta({ id: 'QuizResult' })
