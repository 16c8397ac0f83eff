import type { Fault } from '../fault.ts'
import { significant } from '../quantity/significant.ts'
import { instantText } from './localClock.ts'
import type { Readings } from './readings.ts'

/** 2100-01-01; meters that lost their clock show years far from now. */
const LATEST = 4_102_444_800
const LONGEST_SECONDS = 366 * 86_400
/** More than the connection of a house carries, as everywhere in this service. */
const MOST_WATTS = 100_000
const MOST_NAMED = 100

/**
 * Readings that no home's meter gives: before 1970 or after 2099, of no length or longer than a year, or above 100 kW.
 * Such a power is nearly always a wrong unit or multiplier. The first hundred are named.
 * @param placeWord what a reading's place is called: line or value
 */
export function implausibleReadings(readings: Readings, placeWord: string): Fault[] {
  const { startSeconds, durationSeconds, watts, places } = readings
  const faults: Fault[] = []
  for (let i = 0; i < watts.length && faults.length < MOST_NAMED; i++) {
    const [start, seconds, power] = [startSeconds[i]!, durationSeconds[i]!, watts[i]!]
    const named = (code: string, message: string) =>
      faults.push({
        pointer: placeWord === 'line' ? `/lines/${places[i]!}` : '/blocks',
        code,
        message: `At ${placeWord} ${places[i]!}: ${message}`,
      })
    if (!(start >= 0 && start < LATEST))
      named('time-out-of-range', `the reading starts ${whenOf(start)}; times from 1970 to 2099 are read.`)
    else if (!(seconds > 0 && seconds <= LONGEST_SECONDS))
      named('invalid-duration', `the reading is ${seconds} s long; it must be above 0 s and at most a year.`)
    else if (!(Math.abs(power) <= MOST_WATTS))
      named(
        'power-too-large',
        `the reading comes to ${significant(power)} W, more than the ${MOST_WATTS} W of a house’s connection; check the unit and its multiplier.`,
      )
  }
  return faults
}

const whenOf = (start: number) =>
  Math.abs(start) < 8e12 ? `at ${instantText(start)}` : `${start} s after 1970`
