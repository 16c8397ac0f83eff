import type { Contrast } from '../quantity/contrast.ts'
import { type Interval, scaleInterval } from '../quantity/interval.ts'
import { intervalOfDifference } from '../quantity/intervalOfDifference.ts'
import { significant, significantInterval } from '../quantity/significant.ts'
import { isLargerThanNoise } from './savingOf.ts'
import type { MeasureProgress, MeasureStatus, PlannedMeasure, PlanProgress } from './verification.ts'

/** What is known of a device when a plan is held against it. */
export interface VerifiedDevice {
  readonly id: string
  readonly isChanged: boolean
  /** kWh/yr */
  readonly energy: readonly Contrast[]
}

/** What part of a plan was carried out: what the devices of each measure saved, beside what it was expected to save. */
export function planProgress(
  plan: readonly PlannedMeasure[],
  devices: readonly VerifiedDevice[],
  coverage: number,
): PlanProgress {
  const planned = new Set(plan.flatMap(({ deviceIds }) => deviceIds))
  const saved = (some: readonly VerifiedDevice[]) =>
    intervalOfDifference(
      some.flatMap(({ energy }) => energy),
      coverage,
    )
  const measures = plan.map((measure) => {
    const own = devices.filter(({ id }) => measure.deviceIds.includes(id))
    return progressOf(
      measure,
      saved(own),
      own.some(({ isChanged }) => isChanged),
    )
  })
  const expected = plan.reduce((sum, { expectedKwhPerYear }) => sum + expectedKwhPerYear, 0)
  const carriedOut = measures
    .filter(({ status }) => status === 'carried-out')
    .reduce((sum, { expectedKwhPerYear }) => sum + expectedKwhPerYear, 0)
  const inPlan = saved(devices.filter(({ id }) => planned.has(id)))
  return {
    measures,
    expectedKwhPerYear: significant(expected),
    savedKwhPerYear: significantInterval(inPlan),
    realisation: significantInterval(scaleInterval(inPlan, 1 / expected)),
    carriedOutShare: significant(carriedOut / expected),
    savedOutsidePlanKwhPerYear: significantInterval(saved(devices.filter(({ id }) => !planned.has(id)))),
  }
}

function progressOf(measure: PlannedMeasure, saved: Interval, isChanged: boolean): MeasureProgress {
  const status = statusOf(saved, measure.expectedKwhPerYear, isChanged)
  return {
    ...measure,
    status,
    reason: isChanged ? REASONS[status] : UNCHANGED,
    savedKwhPerYear: significantInterval(saved),
    realisation: significantInterval(scaleInterval(saved, 1 / measure.expectedKwhPerYear)),
  }
}

function statusOf(saved: Interval, expected: number, isChanged: boolean): MeasureStatus {
  if (!isChanged || saved.high < 0) return 'not-carried-out'
  if (!isLargerThanNoise(saved)) return 'cannot-be-told'
  return saved.high >= expected ? 'carried-out' : 'partly'
}

const UNCHANGED = 'Nothing about its devices is different from the first visit but how well they are known.'
const REASONS: Readonly<Record<MeasureStatus, string>> = {
  'carried-out': 'Its devices save energy, and what was expected is within the interval or below it.',
  partly: 'Its devices save energy, but less than was expected: the whole interval lies below.',
  'not-carried-out': 'Its devices use more energy than before.',
  'cannot-be-told':
    'Something is different, but the interval of the saving holds zero. Read its devices with a plug-in wattmeter at both visits.',
}
