import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { isCurrency } from '../core/money/minorUnit.ts'
import { MEASURE_KINDS } from '../core/savings/measure.ts'
import { LIMITS, localId, nonNegative, positive, shortText } from './common.ts'

/** Bounds of a measure's figures, for those that the service keeps and those that a household gives. */
export const MEASURE_FIGURES = {
  price: nonNegative(1_000_000).describe('Of one piece'),
  lifeYears: positive(100),
  share: nonNegative(1),
  draw: nonNegative(1_000),
  ratedLoadW: positive(LIMITS.watts).describe('Of a strip: the load that it may carry, W'),
  ratedLoadA: positive(LIMITS.amperes).describe('The same in A'),
  outlets: z.int().min(1).max(100).describe('Of a strip: plugs that it takes'),
  hoursOffPerWeek: positive(168).describe('Of a timer: hours a week that it keeps the device off, h'),
} as const

const rangeOf = (value: z.ZodNumber) => z.strictObject({ low: value, typical: value, high: value })
export const shareRangeSchema = rangeOf(MEASURE_FIGURES.share)

const measureSchema = z
  .strictObject({
    code: localId,
    name: shortText,
    kind: z.enum(MEASURE_KINDS),
    price: MEASURE_FIGURES.price,
    currency: z
      .string()
      .refine(isCurrency, 'must be an ISO 4217 code')
      .nullable()
      .describe('Null where it costs nothing'),
    lifeYears: MEASURE_FIGURES.lifeYears,
    persistence: shareRangeSchema.describe('Share of what it could save that it saves over its life'),
    ownDrawW: rangeOf(MEASURE_FIGURES.draw).describe('What it draws itself, all hours of the year, W'),
    ratedLoadW: MEASURE_FIGURES.ratedLoadW.nullable(),
    ratedLoadA: MEASURE_FIGURES.ratedLoadA.nullable(),
    outlets: MEASURE_FIGURES.outlets.nullable(),
    hoursOffPerWeek: MEASURE_FIGURES.hoursOffPerWeek.nullable(),
    fromMode: z.enum(MODES).nullable().describe('Of a setting: the mode that hours leave'),
    toMode: z.enum(MODES).nullable().describe('Of a setting: the mode that they go to'),
    newDrawW: rangeOf(MEASURE_FIGURES.draw)
      .nullable()
      .describe('Of a replacement: what the new device draws in the modes of the old one, W'),
    categories: z.array(localId).describe('Codes of the categories that it suits; all where none is named'),
    source: z.string().trim().min(1).max(500),
    sampleData: z.boolean(),
  })
  .meta({ id: 'SavingsMeasure', description: 'Something that a household can do about standby' })

export const measureListSchema = z
  .strictObject({ items: z.array(measureSchema) })
  .meta({ id: 'SavingsMeasureList' })

export const measureQuerySchema = z.strictObject({ kind: z.enum(MEASURE_KINDS).optional() })
