import { type Fault, FaultyInput } from '../fault.ts'
import type { Choosable, DayFigures } from './estimators.ts'
import { nightMean } from './estimators.ts'
import type { LocalDays } from './localDays.ts'
import type { Readings } from './readings.ts'

/** More of the night than this without a draw: a battery or a wind turbine covers it. */
const MOST_COVERED = 0.05

/**
 * With generation behind the meter: what the meter shows by day is use less generation, even where it is not negative,
 * so only the night window tells use.
 * @throws FaultyInput where the night is covered, too, or where another estimator was asked for
 */
export function onlyNights(readings: Readings, { days, night }: LocalDays, asked?: Choosable): DayFigures {
  let [count, covered] = [0, 0]
  for (let i = 0; i < night.length; i++) {
    if (night[i] === 0) continue
    count++
    if (readings.watts[i]! <= 0) covered++
  }
  const faults: Fault[] = []
  if (covered > MOST_COVERED * count)
    faults.push({
      pointer: '',
      code: 'generation-covers-night',
      message: `${covered} of ${count} readings in the night window show no draw or a feed-in: a battery or generation covers the night, and the meter can't tell what the home draws. Send the readings of a meter of the consumption alone.`,
    })
  if (asked !== undefined && asked !== 'night-window-mean')
    faults.push({
      pointer: '/estimator',
      code: 'estimator-hidden-by-generation',
      message: `With generation behind the meter only "night-window-mean" tells what the home draws, not "${asked}".`,
    })
  if (faults.length > 0) throw new FaultyInput(faults)
  return {
    minimumHourW: null,
    figures: {
      'mean-of-daily-minima': null,
      'percentile-5': null,
      'percentile-10': null,
      'night-window-mean': nightMean(readings, days, night),
    },
  }
}
