import { z } from 'zod'
import { MODES } from '../core/catalogue/category.ts'
import { hoursOfSchedule as hoursOf } from '../core/money/meanPrice.ts'
import type { HoursOfWeek } from '../core/money/tariff.ts'
import { askedOverlayRevision } from './layer.ts'
import { LIMITS, localId, nonNegative, numberOrRange, shortText } from './common.ts'
import { emissionFactorChoiceSchema, emissionFactorSchema } from './emissionFactor.ts'
import { meterSchema, MOST_SAMPLES, readingSchema } from './reading.ts'
import { date, scheduleSchema, tariffSchema } from './tariff.ts'

/** Hours that are stated must be long enough for the hours of the mode. */
function fitSchedule(
  {
    hoursPerWeek,
    schedule,
  }: { hoursPerWeek?: number | { high: number } | undefined; schedule?: HoursOfWeek[] | undefined },
  context: z.RefinementCtx,
): void {
  if (schedule === undefined || hoursPerWeek === undefined) return
  const [most, stated] = [
    typeof hoursPerWeek === 'number' ? hoursPerWeek : hoursPerWeek.high,
    hoursOf(schedule),
  ]
  if (most <= stated + 1e-9) return
  context.addIssue({
    code: 'custom',
    path: ['schedule'],
    message: `the schedule holds ${stated} hours a week, fewer than the ${most} of hoursPerWeek`,
    params: { code: 'hours-exceed-schedule' },
  })
}

export const deviceModeSchema = z
  .strictObject({
    mode: z.enum(MODES),
    hoursPerWeek: numberOrRange(nonNegative(168)).optional(),
    schedule: scheduleSchema
      .optional()
      .describe('When in the week the hours fall, for prices by time; over the whole week by default'),
    reading: readingSchema.optional(),
  })
  .superRefine(fitSchedule)
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

/** Each series is bounded by itself; many together would be an unbounded sum, too. */
export function limitSamples(
  devices: readonly z.output<typeof deviceSchema>[],
  context: z.RefinementCtx,
): void {
  const lengths = devices.flatMap(({ modes = [] }) =>
    modes.map(({ reading }) => (reading?.kind === 'samples' ? reading.watts.length : 0)),
  )
  const samples = lengths.reduce((sum, length) => sum + length, 0)
  if (samples <= MOST_SAMPLES) return
  context.addIssue({
    code: 'custom',
    message: `must hold at most ${MOST_SAMPLES} samples in all readings together, not ${samples}`,
    params: { code: 'too-many-samples' },
  })
}

/** One household, as every request has it that asks for its figures. */
export const householdSchema = z
  .strictObject({
    supply: supplySchema.optional(),
    tariff: tariffSchema.optional(),
    tariffCode: localId.optional(),
    emissionFactor: emissionFactorSchema.optional(),
    emissionFactorCode: localId.optional(),
    emissionFactorFor: emissionFactorChoiceSchema.optional(),
    annualUseKwh: nonNegative(LIMITS.kwh).optional(),
    monthlyUseKwh: z
      .array(nonNegative(LIMITS.kwh))
      .length(12)
      .optional()
      .describe('Use of the whole household by month, January first, in place of annualUseKwh'),
    weeksPerYear: z.number().gt(0).max(53).optional(),
    coverageProbability: z.number().min(0.5).max(0.99).optional(),
    catalogueRevision: z.int().positive().optional(),
    referenceRevision: z
      .int()
      .positive()
      .max(2_147_483_647)
      .optional()
      .describe('Revision of tariffs and emission factors to use; the newest by default'),
    tariffDate: date
      .optional()
      .describe('Day that the tariff should hold on; where it does not, a warning says so'),
    overlayRevision: askedOverlayRevision.optional(),
    meters: z.array(meterSchema).max(LIMITS.metersPerHousehold).optional(),
    devices: z.array(deviceSchema).min(1).max(LIMITS.devices).superRefine(limitSamples),
  })
  .meta({ id: 'Household' })
