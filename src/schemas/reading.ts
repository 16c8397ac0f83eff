import { z } from 'zod'
import { METER_PRESETS } from '../core/readings/meterPreset.ts'
import { ORIENTATIONS } from '../core/readings/reading.ts'
import { LIMITS, localId, nonNegative, numberOrRange, positive } from './common.ts'

/** Longest series of samples in one request, all readings together: 100,000 s are more than a day. */
export const MOST_SAMPLES = 100_000

const accuracy = {
  percentOfReading: nonNegative(100).describe(
    'Percent part of the stated limit of error, shared by all readings of one meter',
  ),
  counts: nonNegative(10_000).describe(
    'Count part of the stated limit of error, independent for each reading',
  ),
  resolution: nonNegative(LIMITS.watts).describe(
    "Size of one count, in the reading's own unit (W, Wh, A or VA)",
  ),
}
const preset = z
  .enum(METER_PRESETS)
  .describe("Class of meter, for whoever does not have the manual; common practice, the operator's to edit")

/** A meter's limits of error as its manual states them. */
export const meterAccuracySchema = z.strictObject(accuracy)

export const meterSchema = z
  .union([z.strictObject({ id: localId, ...accuracy }), z.strictObject({ id: localId, preset })])
  .meta({
    id: 'Meter',
    description: 'A meter with its stated limits of error, or with the class that it is of',
  })

const metered = {
  meterId: localId.optional(),
  accuracy: z
    .union([meterAccuracySchema, z.strictObject({ preset })])
    .optional()
    .describe('Where no meter is named: its stated limits of error, or its class'),
}
const powerFactor = numberOrRange(z.number().gt(0).max(1)).optional()

const samplesSchema = z.strictObject({
  kind: z.literal('samples'),
  watts: z
    .array(nonNegative(LIMITS.watts))
    .min(2)
    .max(MOST_SAMPLES)
    .describe('Real power, one sample after the other, while nobody touches the device'),
  intervalSeconds: positive(3_600).describe('Time from one sample to the next'),
  ...metered,
})

const currentSchema = z.strictObject({
  kind: z.literal('current'),
  amperes: nonNegative(LIMITS.amperes).describe('As the meter showed it, not divided by loops'),
  loops: z
    .int()
    .min(1)
    .max(100)
    .optional()
    .describe("How often the conductor passes the clamp; a splitter's x10 window is 10"),
  volts: positive(LIMITS.volts).optional(),
  powerFactor,
  ...metered,
})

const thermalSchema = z
  .strictObject({
    kind: z.literal('thermal'),
    surfaceTemperatureC: z.number().min(-20).max(250).describe('Must be above ambientTemperatureC'),
    ambientTemperatureC: z.number().min(-30).max(60).describe('Of the air and of what is around'),
    areaM2: z.number().min(0.0001).max(10).describe('Area of the warm surface'),
    heightM: z
      .number()
      .min(0.005)
      .max(5)
      .optional()
      .describe('Height of a vertical surface, one side of a horizontal one; a square by default'),
    orientation: z.enum(ORIENTATIONS),
    emissivity: z.number().min(0.02).max(1).optional().describe('0.9, that of plastic and paint, by default'),
  })
  .superRefine(({ surfaceTemperatureC, ambientTemperatureC }, context) => {
    if (surfaceTemperatureC > ambientTemperatureC) return
    context.addIssue({
      code: 'custom',
      path: ['surfaceTemperatureC'],
      message: `must be above ambientTemperatureC (${ambientTemperatureC} °C): a surface that is no warmer than the room gives off no heat, so correct the temperatures or read the device with a plug-in wattmeter`,
      params: { code: 'surface-not-warmer' },
    })
  })

export const readingSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('power'), watts: nonNegative(LIMITS.watts), ...metered }),
    z.strictObject({
      kind: z.literal('energy'),
      wattHours: nonNegative(LIMITS.kwh),
      durationHours: positive(100_000),
      ...metered,
    }),
    samplesSchema,
    currentSchema,
    z.strictObject({
      kind: z.literal('apparent-power'),
      voltAmperes: nonNegative(LIMITS.watts),
      powerFactor,
      ...metered,
    }),
    z.strictObject({ kind: z.literal('declared'), watts: nonNegative(LIMITS.watts) }),
    thermalSchema,
  ])
  .meta({ id: 'Reading', description: 'What somebody measured or read off a label, before any conversion' })
