import { z } from 'zod'
import { FACTOR_KINDS, GASES_COUNTED, SOURCE_MARKS } from '../core/emissions/emissionFactor.ts'
import { LIMITS, localId, nonNegative, plainText, shortText } from './common.ts'
import { referenceListQuery } from './referenceQuery.ts'
import { warningSchema } from './warning.ts'

const year = z.int().min(LIMITS.yearFrom).max(LIMITS.yearTo)

export const emissionFactorSchema = z
  .strictObject({
    kgCo2ePerKwh: nonNegative(10),
    gridLoss: z.number().min(0).max(0.5).optional(),
    relativeUncertainty: z.number().min(0).max(0.95).optional(),
  })
  .meta({ id: 'EmissionFactor', description: 'kg CO2e per kWh generated, and the share lost on the way' })

export const emissionFactorChoiceSchema = z
  .strictObject({
    region: localId.describe('Region code, such as us-camx'),
    year: year
      .optional()
      .describe('The newest by default; a year without a factor gives the nearest, and says so'),
    kind: z.enum(FACTOR_KINDS).optional().describe('average by default'),
  })
  .meta({ id: 'EmissionFactorChoice', description: 'A published factor by region and year' })

export const namedEmissionFactorSchema = z
  .strictObject({
    code: localId,
    retired: z.boolean().describe('Out of lists and of the choice by region, but still found by its code'),
    regionCode: localId.describe('The grid; the same in all years and for both kinds'),
    region: shortText,
    kind: z.enum(FACTOR_KINDS).describe('average for what is used, marginal for what is saved'),
    year,
    factor: emissionFactorSchema,
    gases: z.enum(GASES_COUNTED),
    source: plainText(500).min(1).describe('Citation: who published it, in what, and when'),
    mark: z
      .enum(SOURCE_MARKS)
      .describe('V read in the source, V2 in a transcript of it, C computed from such, M from memory'),
  })
  .meta({ id: 'NamedEmissionFactor', description: 'A published emission factor' })

export const emissionFactorListSchema = z
  .strictObject({
    items: z.array(namedEmissionFactorSchema),
    nextCursor: z.string().nullable(),
    referenceRevision: z.int(),
    warnings: z.array(warningSchema).describe('What was answered in place of what was asked for'),
  })
  .meta({ id: 'EmissionFactorList' })

export const emissionFactorQuerySchema = z.strictObject({
  region: localId.optional().describe('Region code'),
  year: z.coerce
    .number()
    .int()
    .min(LIMITS.yearFrom)
    .max(LIMITS.yearTo)
    .optional()
    .describe('Of each region the factors of this year, or of the nearest'),
  kind: z.enum(FACTOR_KINDS).optional(),
  ...referenceListQuery,
  limit: z.coerce.number().int().min(1).max(200).default(50),
  cursor: z.string().max(500).optional(),
})
