import { type Fault, FaultyInput } from '../fault.ts'
import { significant } from '../quantity/significant.ts'
import { implausibleReadings } from './implausibleReadings.ts'
import type { IntervalData } from './intervalData.ts'
import { type OneInterval, toOneInterval } from './oneInterval.ts'
import { shareOfZeros, type ZeroRun, zeroRuns, MOST_ZEROS } from './outages.ts'
import { countOf, only } from './readings.ts'
import { type Conflict, tidyReadings } from './tidyReadings.ts'

export interface UsableReadings extends OneInterval {
  readonly duplicates: number
  readonly conflicts: readonly Conflict[]
  readonly overlaps: readonly number[]
  readonly generation: boolean
  readonly outages: readonly ZeroRun[]
  readonly shareOfZeros: number
}

/** Readings longer than an hour hide the quiet moments that a base load is read off. */
const LONGEST_SECONDS = 3600
/** More conflicts than this are no slips, but two files in one. */
const MOST_CONFLICTS = 0.01
const MOST_NAMED = 100

/** What a reading's place is called in messages. */
export const placeWordOf = ({ form }: IntervalData) => (form === 'json' ? 'value' : 'line')

/**
 * Readings that can be counted: in order, each moment once, of one length, without what looks like an outage.
 * @throws FaultyInput where there are none, where some can't be a home's, where they contradict each other, or are too long to show a base load
 */
export function usableReadings(data: IntervalData, generationNamed: boolean): UsableReadings {
  const implausible = implausibleReadings(data.readings, placeWordOf(data))
  if (implausible.length > 0) throw new FaultyInput(implausible)
  const tidy = tidyReadings(data.readings)
  const conflicts = conflictFaults(tidy.conflicts, data)
  if (conflicts.length > 0) throw new FaultyInput(conflicts)
  if (countOf(tidy.readings) === 0) throw new FaultyInput([noReadings])
  const one = toOneInterval(tidy.readings)
  if (one.intervalSeconds > LONGEST_SECONDS) throw new FaultyInput([tooLong(one.intervalSeconds)])
  const generation = generationNamed || data.exported || one.readings.watts.some((power) => power < 0)
  const zeros = shareOfZeros(one.readings)
  if (zeros === 1) throw new FaultyInput([allZero])
  const outages = generation || zeros > MOST_ZEROS ? [] : zeroRuns(one.readings)
  return {
    ...tidy,
    ...one,
    readings: withoutRuns(one.readings, outages),
    generation,
    outages,
    shareOfZeros: zeros,
  }
}

function withoutRuns(readings: OneInterval['readings'], runs: readonly ZeroRun[]): OneInterval['readings'] {
  let run = 0
  return only(readings, (i) => {
    while (run < runs.length && i >= runs[run]!.end) run++
    return run === runs.length || i < runs[run]!.first
  })
}

function conflictFaults(conflicts: readonly Conflict[], data: IntervalData): Fault[] {
  if (conflicts.length <= MOST_CONFLICTS * countOf(data.readings)) return []
  return conflicts.slice(0, MOST_NAMED).map(({ place, otherPlace, watts, otherWatts }) => ({
    pointer: '',
    code: 'conflicting-readings',
    message: `The same interval has ${significant(watts)} W at ${placeWordOf(data)} ${place} and ${significant(otherWatts)} W at ${placeWordOf(data)} ${otherPlace}; send the right one only.`,
  }))
}

const noReadings: Fault = {
  pointer: '',
  code: 'no-readings',
  message: 'The data has no reading that can be used; send at least seven days of hourly or finer readings.',
}

const tooLong = (seconds: number): Fault => ({
  pointer: '',
  code: 'interval-too-long',
  message: `The readings are ${seconds} s long. A base load shows in intervals of an hour (3600 s) or less; ask the utility for hourly or quarter-hourly data.`,
})

const allZero: Fault = {
  pointer: '',
  code: 'no-use',
  message: 'Every reading is zero; check which channel was exported.',
}
