import { z } from 'zod'
import { LIMITS, localId, positive, shortText } from './common.ts'
import { deviceSchema, householdSchema, limitSamples } from './household.ts'

/** A difference takes a dozen sums where an estimate takes one, so that visits are shorter than households may be. */
export const MOST_DEVICES = 200

const visitSchema = z
  .strictObject({
    meters: householdSchema.shape.meters,
    devices: z
      .array(deviceSchema.required({ id: true }))
      .min(1)
      .max(MOST_DEVICES)
      .superRefine(limitSamples)
      .describe('As in an estimate; devices of one id are one device at both visits'),
  })
  .meta({ id: 'VerificationVisit' })

const plannedMeasureSchema = z
  .strictObject({
    name: shortText.describe('What was meant to be done'),
    deviceIds: z
      .array(localId)
      .min(1)
      .max(2 * MOST_DEVICES),
    expectedKwhPerYear: positive(LIMITS.kwh).describe('What it was expected to save'),
  })
  .meta({ id: 'PlannedMeasure' })

export const plannedMeasuresSchema = z
  .array(plannedMeasureSchema)
  .min(1)
  .max(100)
  .describe('Measures that were meant to be carried out in between; a device stands in one of them')

/** Body of POST /v1/verifications and input of the GraphQL query `verifySavings`. */
export const verificationRequestSchema = z
  .strictObject({
    ...householdSchema.omit({ devices: true, meters: true }).shape,
    before: visitSchema.describe('What was found at the first visit'),
    after: visitSchema.describe('What was found at the second visit'),
    plan: plannedMeasuresSchema.optional(),
  })
  .meta({ id: 'VerificationRequest' })
