import { significant } from '../quantity/significant.ts'
import type { DataSummary } from './baseLoadEvaluation.ts'
import { least } from './estimators.ts'
import type { IntervalData } from './intervalData.ts'
import { DAY_SECONDS, instantText } from './localClock.ts'
import { isComplete, type LocalDays } from './localDays.ts'
import { countOf } from './readings.ts'
import { gapsOf } from './tidyReadings.ts'
import type { UsableReadings } from './usableReadings.ts'

/** What the data is and what was done to it before anything was read off it. */
export function summariseData(data: IntervalData, usable: UsableReadings, { days }: LocalDays): DataSummary {
  const { readings, intervalSeconds, duplicates, conflicts, overlaps, joined } = usable
  const { startSeconds, watts } = readings
  const count = countOf(readings)
  const [from, to] = [startSeconds[0]!, startSeconds[count - 1]! + intervalSeconds]
  const gaps = gapsOf(readings)
  const sum = watts.reduce((total, power) => total + power, 0)
  return {
    form: data.form,
    timeZone: data.clock.name,
    from: instantText(from),
    to: instantText(to),
    intervalSeconds,
    readings: count,
    days: days.length,
    completeDays: days.filter(isComplete).length,
    clockChanges: days
      .filter(({ lengthSeconds }) => lengthSeconds !== DAY_SECONDS)
      .map(({ date, lengthSeconds }) => ({ date, hours: lengthSeconds / 3600 })),
    coveredShare: significant((count * intervalSeconds) / (to - from)),
    gaps: gaps.length,
    longestGapHours: significant(
      gaps.reduce((longest, gap) => Math.max(longest, gap.to - gap.from), 0) / 3600,
    ),
    duplicates,
    conflicts: conflicts.length,
    overlaps: overlaps.length,
    joined,
    estimated: data.estimated,
    energyKwh: significant((sum * intervalSeconds) / 3_600_000),
    meanW: significant(sum / count),
    leastReadingW: significant(least(watts)!),
  }
}
