import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { SOURCE_MARKS } from '../core/emissions/emissionFactor.ts'
import { JURISDICTIONS, LIMIT_CONDITIONS, LIMIT_PURPOSES, SUPPLY_TYPES } from '../core/limits/limit.ts'
import { LIMITS, localId, nonNegative, positive, shortText } from './common.ts'
import { pageOf, pageQuery } from './paging.ts'

const date = z.iso.date()
const source = z.string().trim().min(1).max(500)
const watts = positive(LIMITS.watts)

/** One published limit, as it is kept and as it is answered. */
export const limitSchema = z
  .strictObject({
    code: localId,
    jurisdiction: z.enum(JURISDICTIONS),
    purpose: z.enum(LIMIT_PURPOSES),
    regulation: shortText,
    annex: shortText.nullable(),
    point: shortText.nullable(),
    appliesFrom: date.nullable().describe('First day; null is open'),
    appliesUntil: date.nullable().describe('Last day; null is open'),
    mode: z.enum(MODES),
    condition: z
      .enum(LIMIT_CONDITIONS)
      .describe('What the device does in the mode; a simple indicator light is no status display'),
    supplyType: z.enum(SUPPLY_TYPES).nullable().describe('Kind of external power supply; for no-load only'),
    outputAboveW: nonNegative(LIMITS.watts).nullable(),
    outputUpToW: watts.nullable().describe('Rated output of the supplies that it is for, W'),
    limitW: watts,
    toleranceW: watts.nullable().describe('How far above it a test by an authority may come out, W'),
    tolerancePercent: positive(100).nullable().describe('The same in percent of the limit'),
    toleranceSource: source.nullable(),
    toleranceMark: z.enum(SOURCE_MARKS).nullable(),
    source,
    mark: z
      .enum(SOURCE_MARKS)
      .describe('V read in the source, V2 read in a transcript of it, C computed, M from memory'),
  })
  .superRefine((limit, context) => {
    const fault = (field: string, code: string, message: string) =>
      context.addIssue({ code: 'custom', path: [field], message, params: { code } })
    const { appliesFrom: from, appliesUntil: until } = limit
    if (from !== null && until !== null && until < from)
      fault(
        'appliesUntil',
        'range-out-of-order',
        `appliesUntil (${until}) must not be before appliesFrom (${from})`,
      )
    const hasTolerance = limit.toleranceW !== null || limit.tolerancePercent !== null
    if (hasTolerance && (limit.toleranceSource === null || limit.toleranceMark === null))
      fault('toleranceSource', 'required', 'a tolerance needs its source and its mark')
    if (limit.supplyType !== null && limit.mode !== 'no-load')
      fault(
        'supplyType',
        'supply-without-no-load',
        'only a limit on no-load is for a kind of external supply',
      )
  })
  .meta({ id: 'Limit', description: 'A published limit on the power of one mode' })

export const limitQuerySchema = z.strictObject({
  jurisdiction: z.enum(JURISDICTIONS).optional(),
  purpose: z.enum(LIMIT_PURPOSES).optional(),
  mode: z.enum(MODES).optional(),
  placedOnMarket: date
    .optional()
    .describe('Only limits that apply to a device placed on the market on this day'),
  ...pageQuery,
})

export const limitListSchema = pageOf(limitSchema).meta({ id: 'LimitList' })
