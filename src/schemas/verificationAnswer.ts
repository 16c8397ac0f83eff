import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { SOURCE_MARKS } from '../core/emissions/emissionFactor.ts'
import { DEVICE_FLAGS } from '../core/estimate/estimate.ts'
import {
  CHANGE_CODES,
  DEVICE_STATUSES,
  IPMVP_OPTIONS,
  MEASURE_STATUSES,
} from '../core/verification/verification.ts'
import { cautionSchema, estimateSchema, intervalSchema, moneyIntervalSchema } from './estimate.ts'
import { warningSchema } from './warning.ts'

const flag = z.enum(DEVICE_FLAGS)
const relative = z.number().nullable()

const savingSchema = z
  .strictObject({
    powerW: intervalSchema.describe(
      'Of a device its average over the hours counted at each visit, of a total its average over the whole year',
    ),
    energyKwhPerYear: intervalSchema,
    costPerYear: moneyIntervalSchema,
    emissionsKgCo2ePerYear: intervalSchema,
    largerThanNoise: z.boolean().describe('Whether the interval of the energy leaves out zero'),
    fractionalSavingsUncertainty: relative.describe(
      "Half of the width of the energy's interval over its mean; null where nothing was saved on average",
    ),
    at68Percent: z.strictObject({
      fractionalSavingsUncertainty: relative.describe('The same at a coverage of 0.68'),
      below50Percent: z.boolean().nullable().describe('What ASHRAE Guideline 14 asks of a saving'),
    }),
  })
  .meta({ id: 'Saving', description: 'Before less after: above zero is saved' })

const partsSchema = z
  .strictObject({
    powerEffect: intervalSchema.describe('Change of power at the hours before, kWh a year'),
    hoursEffect: intervalSchema.describe('Change of hours at the power after, kWh a year'),
  })
  .meta({ id: 'SavingParts', description: 'What a saving of energy consists of; the two add up to it' })

const deviceAtVisitSchema = z
  .strictObject({
    quantity: z.int(),
    confidence: flag,
    powerW: intervalSchema,
    energyKwhPerYear: intervalSchema,
  })
  .meta({ id: 'DeviceAtVisit', description: 'As an estimate of the visit gives it' })

const deviceSchema = z
  .strictObject({
    id: z.string(),
    label: z.string().nullable(),
    category: z.string(),
    categoryName: z.string(),
    status: z.enum(DEVICE_STATUSES),
    changes: z.array(
      z.strictObject({
        code: z.enum(CHANGE_CODES),
        mode: z.enum(MODES).nullable(),
        message: z.string(),
      }),
    ),
    before: deviceAtVisitSchema.nullable(),
    after: deviceAtVisitSchema.nullable(),
    saving: savingSchema,
    parts: partsSchema.nullable().describe('Null for a device that was found at one visit only'),
    ipmvp: z.strictObject({
      option: z
        .enum(IPMVP_OPTIONS)
        .nullable()
        .describe('Option of retrofit isolation that the saving follows'),
      reason: z.string(),
    }),
    warnings: z.array(warningSchema),
  })
  .meta({ id: 'DeviceVerification' })

const betterKnownSchema = z
  .strictObject({
    deviceId: z.string(),
    mode: z.enum(MODES),
    from: flag,
    to: flag,
    rebasedVisit: z.enum(['before', 'after']).describe('The visit whose figure was replaced'),
    estimatedKwhPerYear: intervalSchema.describe('As an estimate of that visit gives it'),
    rebasedKwhPerYear: intervalSchema.describe('As it counts here, with the power that is better known'),
    differenceKwhPerYear: intervalSchema.describe(
      'What this takes out of the difference of the two estimates',
    ),
  })
  .meta({
    id: 'BetterKnown',
    description: 'A figure that one visit knew better; what that moves is no saving',
  })

const planProgressSchema = z
  .strictObject({
    measures: z.array(
      z
        .strictObject({
          name: z.string(),
          deviceIds: z.array(z.string()),
          expectedKwhPerYear: z.number(),
          status: z.enum(MEASURE_STATUSES),
          reason: z.string(),
          savedKwhPerYear: intervalSchema,
          realisation: intervalSchema.describe('Saved over expected'),
        })
        .meta({ id: 'MeasureProgress' }),
    ),
    expectedKwhPerYear: z.number(),
    savedKwhPerYear: intervalSchema,
    realisation: intervalSchema.describe('Saved over expected'),
    carriedOutShare: z
      .number()
      .describe('Share of the expected energy that belongs to measures that were carried out'),
    savedOutsidePlanKwhPerYear: intervalSchema.describe('Of devices that no measure names'),
  })
  .meta({ id: 'PlanProgress' })

export const verificationSchema = z
  .strictObject({
    ...estimateSchema.pick({
      catalogueRevision: true,
      overlayRevision: true,
      referenceRevision: true,
      coverageProbability: true,
      currency: true,
      sampleData: true,
      used: true,
    }).shape,
    devices: z
      .array(deviceSchema)
      .describe('Those of the first visit in its order, then those that only the second found'),
    total: z.strictObject({
      beforeKwhPerYear: intervalSchema,
      afterKwhPerYear: intervalSchema,
      all: savingSchema,
      kept: savingSchema.describe('Of devices that were found at both visits'),
      keptParts: partsSchema,
      removed: savingSchema,
      added: savingSchema,
    }),
    betterKnown: z.strictObject({
      items: z.array(betterKnownSchema),
      differenceKwhPerYear: intervalSchema,
    }),
    plan: planProgressSchema.nullable(),
    sources: z
      .array(
        z.strictObject({
          document: z.string(),
          year: z.int(),
          says: z.string(),
          mark: z
            .enum(SOURCE_MARKS)
            .describe('V confirmed, V2 confirmed second-hand, C computed, M from memory'),
        }),
      )
      .describe('What the verification follows'),
    warnings: z.array(warningSchema),
    cautions: z.array(cautionSchema),
  })
  .meta({ id: 'Verification' })
