import { dayOf } from './localClock.ts'
import type { LocalDay } from './localDays.ts'
import { median } from './percentile.ts'

/** Local dates, both included, as YYYY-MM-DD. */
export interface DateSpan {
  readonly from: string
  readonly to: string
}

export const isIn = (date: string, spans: readonly DateSpan[]) =>
  spans.some(({ from, to }) => date >= from && date <= to)

/** Days on either side that a day is compared with. */
const AROUND = 28
/** Compared with the middle one of these days, a day away has less than this share of its mean and of its peak. */
const SHARE = 0.6
const LEAST_RUN = 2

/**
 * Spans of two days or more on which the household seems to have been away: mean and peak of each day are both below
 * 60 % of those of the middle day among the 28 before and after it. The rule is the service's own; it finds no absence
 * longer than about four weeks. Common practice, no source.
 */
export function suspectDaysAway(days: readonly LocalDay[]): DateSpan[] {
  const quiet = days.map((day, i) => {
    const around = days.slice(Math.max(0, i - AROUND), i + AROUND + 1)
    return (
      day.meanW < SHARE * median(around.map(({ meanW }) => meanW)) &&
      day.mostW < SHARE * median(around.map(({ mostW }) => mostW))
    )
  })
  const spans: DateSpan[] = []
  for (let i = 0; i < days.length; i++) {
    if (quiet[i] !== true) continue
    const first = i
    while (quiet[i + 1] === true && follows(days[i]!, days[i + 1]!)) i++
    if (i - first + 1 >= LEAST_RUN) spans.push({ from: days[first]!.date, to: days[i]!.date })
  }
  return spans
}

const follows = (day: LocalDay, next: LocalDay) => dayOf(next.date) - dayOf(day.date) === 1
