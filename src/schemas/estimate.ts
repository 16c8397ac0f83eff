import { z } from 'zod'
import { KEEP_POWERED_REASONS, MODES } from '../core/catalogue/category.ts'
import { DEVICE_FLAGS, TOTAL_FLAGS } from '../core/estimate/estimate.ts'
import { layer, overlayRevisionUsed } from './layer.ts'
import { emissionFactorSchema } from './emissionFactor.ts'
import { supplySchema } from './household.ts'
import { tariffSchema } from './tariff.ts'
import { warningSchema } from './warning.ts'

export const intervalSchema = z
  .strictObject({ expected: z.number(), low: z.number(), high: z.number() })
  .meta({ id: 'Interval', description: 'Mean, and the ends of the symmetric-probability coverage interval' })

const amounts = z
  .strictObject({ expected: z.string(), low: z.string(), high: z.string() })
  .meta({ id: 'Amounts', description: 'Decimal text, rounded half-even to the minor unit of the currency' })

export const moneyIntervalSchema = intervalSchema
  .extend({ amounts })
  .meta({ id: 'MoneyInterval', description: 'An interval of money, and the same as amounts to show' })

export const cautionSchema = z
  .strictObject({ code: z.string(), message: z.string(), source: z.string() })
  .meta({ id: 'Caution' })

const flag = z.enum(DEVICE_FLAGS)

const modeEstimateSchema = z
  .strictObject({
    mode: z.enum(MODES),
    hoursPerYear: z.number().describe('Expected hours a year'),
    hoursFrom: z.enum(['request', 'catalogue']),
    confidence: flag,
    origin: z.strictObject({
      kind: z.enum(['reading', 'catalogue']),
      detail: z.string(),
      explanation: z.string(),
    }),
    powerW: intervalSchema,
    apparentPowerVa: intervalSchema.optional(),
    energyKwhPerYear: intervalSchema,
  })
  .meta({ id: 'ModeEstimate' })

const deviceEstimateSchema = z
  .strictObject({
    id: z.string(),
    label: z.string().nullable(),
    category: z.string(),
    categoryName: z.string(),
    catalogueLayer: layer.describe('Whose figures of the category went in'),
    quantity: z.int(),
    confidence: flag,
    sampleData: z.boolean(),
    keepPowered: z.strictObject({ reason: z.enum(KEEP_POWERED_REASONS), note: z.string() }).nullable(),
    powerW: intervalSchema,
    energyKwhPerYear: intervalSchema,
    costPerYear: moneyIntervalSchema,
    emissionsKgCo2ePerYear: intervalSchema,
    shareOfTotal: z.number(),
    modes: z.array(modeEstimateSchema),
    warnings: z.array(warningSchema),
  })
  .meta({ id: 'DeviceEstimate' })

const expectedWidthSchema = z
  .strictObject({
    readings: z.int().describe('1, 2 and 5; fewer where no more are worth taking'),
    at: z.array(z.strictObject({ deviceId: z.string(), mode: z.enum(MODES) })),
    widthKwhPerYear: z.number().describe('High less low'),
    widthShare: z.number().describe('That width by the present one'),
  })
  .meta({
    id: 'ExpectedWidth',
    description:
      'How wide the interval of the total energy would be after the best readings with one plug-in wattmeter, each chosen after those before it',
  })

export const estimateSchema = z
  .strictObject({
    catalogueRevision: z.int(),
    referenceRevision: z.int().describe('Revision of tariffs and emission factors that was used'),
    overlayRevision: overlayRevisionUsed,
    coverageProbability: z.number(),
    currency: z.string(),
    sampleData: z.boolean(),
    used: z.strictObject({
      supply: supplySchema,
      tariff: tariffSchema,
      tariffSource: z.string(),
      standbyPricePerKwh: z.number().describe('Mean cost of a kWh of standby, taxes included'),
      priceBasis: z.string().describe('How that price came about, and how devices share the total'),
      emissionFactor: emissionFactorSchema,
      emissionFactorSource: z.string(),
      weeksPerYear: z.number(),
      annualUseKwh: z.number().nullable(),
      monthlyUseKwh: z.array(z.number()).nullable(),
      methodVersion: z.string(),
    }),
    devices: z.array(deviceEstimateSchema),
    total: z.strictObject({
      powerW: intervalSchema,
      energyKwhPerYear: intervalSchema,
      costPerYear: moneyIntervalSchema,
      emissionsKgCo2ePerYear: intervalSchema,
      confidence: z.enum(TOTAL_FLAGS),
      confidenceShares: z.strictObject({
        measured: z.number(),
        'partly-measured': z.number(),
        declared: z.number(),
        assumed: z.number(),
      }),
    }),
    nextReadings: z.array(
      z.strictObject({ deviceId: z.string(), mode: z.enum(MODES), varianceShare: z.number() }),
    ),
    expectedWidths: z.array(expectedWidthSchema).optional().describe('Only where it was asked for'),
    warnings: z.array(warningSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'Estimate' })
