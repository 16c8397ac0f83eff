import { z } from 'zod'
import { isCurrency } from '../core/money/minorUnit.ts'
import { DAY_KINDS, LINE_ROUNDINGS, TARIFF_PERIODS, WEEKDAYS } from '../core/money/tariff.ts'
import { hoursFaults, tariffFaults } from '../core/money/tariffFaults.ts'
import { referenceListQuery } from './referenceQuery.ts'
import { LIMITS, localId, nonNegative, plainText, shortText } from './common.ts'

const price = nonNegative(1_000_000).describe('Price of one kWh, in units of the currency')
const per = z.enum(TARIFF_PERIODS)
export const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a date as YYYY-MM-DD')
const monthDay = z.string().regex(/^\d{2}-\d{2}$/, 'must be a day of the year as MM-DD')
const clock = z
  .string()
  .regex(
    /^(([01]\d|2[0-3]):(00|15|30|45)|24:00)$/,
    'must be a whole quarter of an hour as HH:MM, 24:00 at most',
  )
const season = { from: monthDay, to: monthDay }

const hoursOfDay = z.strictObject({ from: clock, to: clock }).meta({
  id: 'HoursOfDay',
  description: 'A part of one day on the clock of the place; `to` is the first that is out',
})

export const scheduleSchema = z
  .array(
    z
      .strictObject({ days: z.array(z.enum(WEEKDAYS)).min(1).max(7).optional(), from: clock, to: clock })
      .superRefine((hours, context) => addFaults(hoursFaults(hours, []), context))
      .meta({
        id: 'HoursOfWeek',
        description: 'A part of some days of the week; of all where none is named',
      }),
  )
  .min(1)
  .max(28)

const blocks = z
  .array(z.strictObject({ upToKwh: z.number().positive().max(LIMITS.kwh).optional(), pricePerKwh: price }))
  .min(1)
  .max(20)

const flat = { kind: z.literal('flat'), pricePerKwh: price }
const block = {
  kind: z.literal('block'),
  per,
  blocks: blocks.describe('In order; each ends at upToKwh of the period, the last has no end'),
  seasons: z
    .array(z.strictObject({ ...season, blocks }))
    .min(1)
    .max(12)
    .optional()
    .describe('Other blocks for a part of the year; both ends are in it'),
}
const timeOfUse = {
  kind: z.literal('time-of-use'),
  timeZone: z.string().min(1).max(64).describe('IANA name, such as Europe/Berlin'),
  bands: z
    .array(
      z.strictObject({
        name: shortText,
        pricePerKwh: price,
        seasons: z.array(z.strictObject(season)).min(1).max(12).optional(),
        days: z.array(z.enum(DAY_KINDS)).min(1).max(8).optional(),
        hours: z.array(hoursOfDay).min(1).max(24).optional(),
      }),
    )
    .min(1)
    .max(24)
    .describe('The first that fits holds; a holiday is no weekday'),
  otherwisePricePerKwh: price.describe('Price where no band fits'),
  holidays: z.array(date).max(500).optional(),
}

const terms = {
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, {
      error: 'must be an ISO 4217 code of three capital letters, such as EUR',
      abort: true,
    })
    .refine(isCurrency, {
      error: ({ input }) =>
        `"${String(input)}" is not a currency of ISO 4217; give its three-letter code, such as EUR`,
      params: { code: 'unknown-currency' },
    }),
  relativeUncertainty: z.number().min(0).max(0.95).optional(),
  validFrom: date.optional(),
  validTo: date.optional(),
  fixedCharges: z
    .array(z.strictObject({ name: shortText, amount: nonNegative(1e9), per }))
    .min(1)
    .max(20)
    .optional(),
  taxes: z
    .array(
      z.strictObject({
        name: shortText,
        percent: nonNegative(1_000),
        on: z.array(shortText).min(1).max(30).optional().describe('Lines of the bill; all where not given'),
      }),
    )
    .min(1)
    .max(20)
    .optional(),
  minimumCharge: z
    .strictObject({ amount: nonNegative(1e9), per })
    .optional()
    .describe('What the lines of energy come to at least'),
  rounding: z
    .enum(LINE_ROUNDINGS)
    .optional()
    .describe('Of each line of a bill to the minor unit; none by default. The margin is not rounded'),
  referenceYear: z
    .int()
    .min(2000)
    .max(LIMITS.yearTo)
    .optional()
    .describe('Year whose days and hours are counted; 2025 by default'),
}

const componentSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ name: shortText, ...flat }),
    z.strictObject({ name: shortText, ...block }),
    z.strictObject({ name: shortText, ...timeOfUse }),
  ])
  .meta({ id: 'EnergyComponent', description: 'One of several prices that are added up for every kWh' })

/** What every edge and every file takes as a tariff; rules between its fields are in core/money/tariffFaults.ts. */
export const tariffSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ ...flat, ...terms }),
    z.strictObject({ ...block, ...terms }),
    z.strictObject({ ...timeOfUse, ...terms }),
    z.strictObject({
      kind: z.literal('two-part'),
      components: z.array(componentSchema).min(2).max(10).describe('Added up for every kWh'),
      ...terms,
    }),
  ])
  .superRefine((tariff, context) => addFaults(tariffFaults(tariff), context))
  .meta({
    id: 'Tariff',
    description:
      'Price structure of energy taken from the grid. Feed-in prices and demand charges are out: standby changes neither',
  })

function addFaults(faults: ReturnType<typeof tariffFaults>, context: z.RefinementCtx): void {
  for (const { path, code, message } of faults)
    context.addIssue({
      code: 'custom',
      path: [...path],
      message: message.replace(/\.$/, ''),
      params: { code },
    })
}

export const namedTariffSchema = z
  .strictObject({
    code: localId,
    name: shortText,
    retired: z.boolean().describe('Out of lists, but still found by its code'),
    tariff: tariffSchema,
    source: plainText(500).min(1).describe('Where the price is from; "invented sample" makes it sample data'),
    sampleData: z.boolean(),
  })
  .meta({ id: 'NamedTariff', description: 'A tariff that the operator keeps under a code' })

export const tariffListSchema = z
  .strictObject({
    items: z.array(namedTariffSchema),
    nextCursor: z.string().nullable(),
    referenceRevision: z.int(),
  })
  .meta({ id: 'TariffList' })

export const tariffQuerySchema = z.strictObject({
  currency: z.string().max(3).optional().describe('ISO 4217 code'),
  validOn: date.optional().describe('Only tariffs that hold on this day'),
  ...referenceListQuery,
  limit: z.coerce.number().int().min(1).max(200).default(50),
  cursor: z.string().max(500).optional(),
})
