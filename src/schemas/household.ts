import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { LIMITS, localId, nonNegative, numberOrRange, positive, shortText } from './common.ts'

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

export const meterSchema = z.strictObject({ id: localId, ...accuracy }).meta({ id: 'Meter' })
const metered = { meterId: localId.optional(), accuracy: z.strictObject(accuracy).optional() }
const powerFactor = numberOrRange(z.number().gt(0).max(1)).optional()

export const readingSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('power'), watts: nonNegative(LIMITS.watts), ...metered }),
    z.strictObject({
      kind: z.literal('energy'),
      wattHours: nonNegative(LIMITS.kwh),
      durationHours: positive(100_000),
      ...metered,
    }),
    z.strictObject({
      kind: z.literal('current'),
      amperes: nonNegative(LIMITS.amperes),
      loops: z
        .int()
        .min(1)
        .max(100)
        .optional()
        .describe("How often the conductor passes the clamp; a splitter's x10 window is 10"),
      volts: positive(LIMITS.volts).optional(),
      powerFactor,
      ...metered,
    }),
    z.strictObject({
      kind: z.literal('apparent-power'),
      voltAmperes: nonNegative(LIMITS.watts),
      powerFactor,
      ...metered,
    }),
    z.strictObject({ kind: z.literal('declared'), watts: nonNegative(LIMITS.watts) }),
  ])
  .meta({ id: 'Reading', description: 'What somebody measured or read off a label, before any conversion' })

export const deviceModeSchema = z
  .strictObject({
    mode: z.enum(MODES),
    hoursPerWeek: numberOrRange(nonNegative(168)).optional(),
    reading: readingSchema.optional(),
  })
  .meta({ id: 'DeviceMode' })

export const deviceSchema = z
  .strictObject({
    id: localId.optional(),
    label: shortText.optional(),
    category: shortText.describe('Code, name or alias of a category'),
    quantity: z.int().min(1).max(LIMITS.quantity).optional(),
    year: z.int().min(LIMITS.yearFrom).max(LIMITS.yearTo).optional().describe('Year of manufacture'),
    outlet: shortText.optional(),
    modes: z.array(deviceModeSchema).min(1).max(MODES.length).optional(),
  })
  .meta({ id: 'Device' })

export const supplySchema = z
  .strictObject({
    volts: z.number().min(90).max(260).describe('Nominal voltage, V'),
    tolerancePercent: nonNegative(20),
    hertz: z.literal([50, 60]),
  })
  .meta({ id: 'Supply' })

const relativeUncertainty = z.number().min(0).max(0.95).optional()

export const tariffSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('flat'),
      currency: z
        .string()
        .regex(/^[A-Z]{3}$/, 'must be an ISO 4217 code of three capital letters, such as EUR'),
      pricePerKwh: nonNegative(1_000_000),
      relativeUncertainty,
    }),
  ])
  .meta({ id: 'Tariff', description: 'Price structure of energy' })

export const emissionFactorSchema = z
  .strictObject({
    kgCo2ePerKwh: nonNegative(10),
    gridLoss: z.number().min(0).max(0.5).optional(),
    relativeUncertainty,
  })
  .meta({ id: 'EmissionFactor', description: 'kg CO2e per kWh generated, and the share lost on the way' })

/** Body of POST /v1/estimates and input of the GraphQL query `estimate`. */
export const householdSchema = z
  .strictObject({
    supply: supplySchema.optional(),
    tariff: tariffSchema.optional(),
    tariffCode: localId.optional(),
    emissionFactor: emissionFactorSchema.optional(),
    emissionFactorCode: localId.optional(),
    annualUseKwh: nonNegative(LIMITS.kwh).optional(),
    weeksPerYear: z.number().gt(0).max(53).optional(),
    coverageProbability: z.number().min(0.5).max(0.99).optional(),
    catalogueRevision: z.int().positive().optional(),
    meters: z.array(meterSchema).max(LIMITS.metersPerHousehold).optional(),
    devices: z.array(deviceSchema).min(1).max(LIMITS.devices),
  })
  .meta({ id: 'EstimateRequest' })
