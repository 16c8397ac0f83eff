import { isComplete, type LocalDay, type LocalDays } from './localDays.ts'
import type { DayFigure } from './dayFigure.ts'
import { meanOverDays, percentileOverDays } from './meanOverDays.ts'
import { countOf, only, type Readings } from './readings.ts'

/** Ways to read a base load off interval data. All are in use, and no standard names one of them (M). */
export const ESTIMATORS = [
  'minimum-hour',
  'mean-of-daily-minima',
  'percentile-5',
  'percentile-10',
  'night-window-mean',
] as const
export type Estimator = (typeof ESTIMATORS)[number]

/** Those that rest on many days, and so have an interval and can be chosen. */
export const CHOOSABLE = [
  'mean-of-daily-minima',
  'percentile-5',
  'percentile-10',
  'night-window-mean',
] as const
export type Choosable = (typeof CHOOSABLE)[number]

/** Fewer days than this tell no base load: a week holds each day of the week once (the service's own rule). */
export const LEAST_DAYS = 7

export interface DayFigures {
  /** Least mean over a clock hour, W; null where no hour is covered. One moment, so no interval. */
  readonly minimumHourW: number | null
  readonly figures: Readonly<Record<Choosable, DayFigure | null>>
}

/** What each estimator reads off the readings; null where it rests on fewer than two days. */
export function estimatorsOf(readings: Readings, { days, night }: LocalDays, interval: number): DayFigures {
  const sorted = readings.watts.slice().sort()
  const shares = (watts: number) => days.map((day) => shareBelow(readings, day, watts))
  const percentileAt = (share: number) => (days.length < 2 ? null : percentileOverDays(sorted, share, shares))
  return {
    minimumHourW: minimumHour(readings, interval),
    figures: {
      'mean-of-daily-minima': overDays(days.filter(isComplete).map(({ leastW }) => leastW)),
      'percentile-5': percentileAt(0.05),
      'percentile-10': percentileAt(0.1),
      'night-window-mean': nightMean(readings, days, night),
    },
  }
}

const overDays = (values: readonly number[]) => (values.length < 2 ? null : meanOverDays(values))

/** The mean of all readings of the window; its scatter is that of the nights. */
export function nightMean(
  readings: Readings,
  days: readonly LocalDay[],
  night: Uint8Array,
): DayFigure | null {
  const nights = overDays(days.flatMap(({ nightW }) => nightW ?? []))
  if (!nights) return null
  const { watts } = only(readings, (i) => night[i] === 1)
  const mean = watts.reduce((sum, power) => sum + power, 0) / watts.length
  const shift = mean - nights.watts
  return { ...nights, watts: mean, quantile: (p) => Math.max(0, nights.quantile(p) + shift) }
}

function shareBelow({ watts }: Readings, { from, to }: LocalDay, limit: number): number {
  let below = 0
  for (let i = from; i < to; i++) if (watts[i]! <= limit) below++
  return below / (to - from)
}

/** Intervals shorter than an hour are put together by clock hours (of UTC); hours with a gap are passed over. */
function minimumHour(readings: Readings, interval: number): number | null {
  const { startSeconds, watts } = readings
  const perHour = 3600 / interval
  if (perHour <= 1) return least(watts)
  if (!Number.isInteger(perHour)) return null
  const hours: number[] = []
  let [hour, sum, parts] = [NaN, 0, 0]
  for (let i = 0; i < countOf(readings); i++) {
    const own = Math.floor(startSeconds[i]! / 3600)
    if (own !== hour) [hour, sum, parts] = [own, 0, 0]
    sum += watts[i]!
    if (++parts === perHour) hours.push(sum / perHour)
  }
  return least(hours)
}

/** A loop, since Math.min takes its values as arguments, and there is no room for a million of them. */
export function least(values: Iterable<number>): number | null {
  let lowest = Infinity
  for (const value of values) if (value < lowest) lowest = value
  return lowest === Infinity ? null : lowest
}
