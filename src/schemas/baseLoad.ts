import { z } from 'zod'
import { CHOOSABLE } from '../core/baseLoad/estimators.ts'
import { isTimeZone } from '../core/baseLoad/zoneClock.ts'
import { shown } from './baseLoadFaults.ts'
import { daysOf, readTimestamp } from './baseLoadTime.ts'
import { LIMITS, nonNegative } from './common.ts'
import { householdSchema } from './household.ts'

/** Values of one JSON request; a year of quarter hours is 35,040. Longer data comes as CSV or ESPI, which are streamed. */
const MOST_VALUES = 600_000

/** What a rule of our own says: a code, and what is allowed beside what was given. */
const must = (code: string, words: string) => ({
  error: ({ input }: { readonly input?: unknown }) => `must be ${words}, but it is ${shown(String(input))}`,
  params: { code },
})

const timeZone = z
  .string()
  .max(64)
  .refine(
    isTimeZone,
    must('unknown-time-zone', 'the name of a time zone of the IANA database, such as Europe/Berlin'),
  )
  .describe('IANA name of the home’s time zone, which says when it is night')
const isDate = (text: string) => {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? []
  return day !== undefined && daysOf(Number(year), Number(month), Number(day)) !== null
}
const localDate = z.string().refine(isDate, must('invalid-date', 'a date of the calendar as YYYY-MM-DD'))
const hour = z.int().min(0).max(24)
const watts = z.number().min(-LIMITS.watts).max(LIMITS.watts)

const daysAway = z
  .array(z.strictObject({ from: localDate, to: localDate }).meta({ id: 'DateSpan' }))
  .max(100)
  .describe('Local dates on which nobody was at home, both ends included; they are left out')
const inventoryPowerW = z
  .strictObject({
    expected: nonNegative(LIMITS.watts),
    low: nonNegative(LIMITS.watts),
    high: nonNegative(LIMITS.watts),
  })
  .describe('In place of an inventory: what its devices draw in their low-power modes, W')

/** What may be said beside the data, in whichever form that comes. */
const optionsShape = {
  timeZone: timeZone.optional(),
  estimator: z.enum(CHOOSABLE).optional().describe('Which estimator to build on'),
  nightFromHour: hour.optional().describe('Beginning of the night window, local hour; 1 by default'),
  nightToHour: hour.optional().describe('End of the night window, local hour; 5 by default'),
  coverageProbability: householdSchema.shape.coverageProbability,
  daysAway: daysAway.optional(),
  generation: z
    .boolean()
    .optional()
    .describe('True where there are solar panels or other generation behind the meter'),
  inventoryPowerW: inventoryPowerW.optional(),
}

const start = z
  .string()
  .refine(
    (text) => {
      const timestamp = readTimestamp(text)
      return timestamp !== null && timestamp.offset !== null
    },
    must('invalid-time', 'a time with its offset from UTC, such as 2025-03-30T00:00:00+01:00'),
  )
  .describe('Start of the first interval (RFC 3339)')

const values = (value: z.ZodNumber) => z.array(value.nullable()).min(1).max(MOST_VALUES)

const blockSchema = z
  .strictObject({
    start,
    intervalSeconds: z.number().positive().max(86_400),
    wattHours: values(watts).optional().describe('Energy of each interval, Wh; null for a gap'),
    watts: values(watts).optional().describe('Mean power of each interval, W; null for a gap'),
  })
  .refine((block) => (block.wattHours === undefined) !== (block.watts === undefined), {
    error: 'must have either wattHours or watts',
    params: { code: 'either-or' },
  })
  .meta({ id: 'IntervalBlock', description: 'Intervals that follow each other without a break' })
export type BlockInput = z.output<typeof blockSchema>

/** JSON body of POST /v1/base-load/evaluate and input of the GraphQL query `evaluateBaseLoad`. */
export const baseLoadRequestSchema = z
  .strictObject({
    ...optionsShape,
    blocks: z.array(blockSchema).min(1).max(100_000).superRefine(limitValues),
    inventory: householdSchema.optional().describe('The devices of the home, as in POST /v1/estimates'),
  })
  .meta({ id: 'BaseLoadRequest' })
export type BaseLoadRequest = z.output<typeof baseLoadRequestSchema>

function limitValues(blocks: readonly BlockInput[], context: z.RefinementCtx): void {
  const count = blocks.reduce(
    (sum, { wattHours, watts: power }) => sum + (wattHours ?? power ?? []).length,
    0,
  )
  if (count <= MOST_VALUES) return
  context.addIssue({
    code: 'custom',
    message: `must hold at most ${MOST_VALUES} values in all blocks together, not ${count}; send longer data as CSV or ESPI`,
    params: { code: 'too-many-readings' },
  })
}

const numberText = z
  .string()
  .regex(/^\d{1,9}(\.\d{1,9})?$/, 'must be a number')
  .transform(Number)
const SPAN = /^([^/,]+)\/([^/,]+)$/

/** The query of POST /v1/base-load/evaluate, for data that comes as CSV or ESPI and has no room for anything beside it. */
export const baseLoadQuerySchema = z.strictObject({
  timeZone: optionsShape.timeZone,
  estimator: optionsShape.estimator,
  nightFromHour: numberText
    .pipe(hour)
    .optional()
    .describe('Beginning of the night window, local hour; 1 by default'),
  nightToHour: numberText.pipe(hour).optional().describe('End of the night window, local hour; 5 by default'),
  coverageProbability: numberText.pipe(z.number().min(0.5).max(0.99)).optional(),
  daysAway: z
    .string()
    .max(2_400)
    .transform((text) => text.split(',').map((span) => SPAN.exec(span.trim()) ?? [span, span, span]))
    .transform((spans) => spans.map(([, from, to]) => ({ from, to })))
    .pipe(daysAway)
    .optional()
    .describe('Local dates on which nobody was at home: 2025-07-05/2025-07-19,2025-12-24/2025-12-27'),
  generation: z
    .enum(['true', 'false'])
    .transform((text) => text === 'true')
    .optional(),
  inventoryExpectedW: numberText.pipe(nonNegative(LIMITS.watts)).optional(),
  inventoryLowW: numberText.pipe(nonNegative(LIMITS.watts)).optional(),
  inventoryHighW: numberText.pipe(nonNegative(LIMITS.watts)).optional(),
})
export type BaseLoadQuery = z.output<typeof baseLoadQuerySchema>
