import { dateOf, DAY_SECONDS, type LocalClock, startOfDay } from './localClock.ts'
import { countOf, type Readings } from './readings.ts'

/** Hours of the local day, from 0 to 24, the first of them included and the last one not. */
export interface NightWindow {
  readonly fromHour: number
  readonly toHour: number
}

/** One local day: readings belong to the day in which they start. */
export interface LocalDay {
  readonly date: string
  /** Index of its first reading, and of the first one after it. */
  readonly from: number
  readonly to: number
  /** 23, 24 or 25 hours as a rule, s. */
  readonly lengthSeconds: number
  readonly coveredSeconds: number
  readonly meanW: number
  readonly leastW: number
  readonly mostW: number
  /** Mean over the readings that start in the night window; null where there are none. */
  readonly nightW: number | null
}

export interface LocalDays {
  readonly days: readonly LocalDay[]
  /** 1 for each reading that starts in the night window. */
  readonly night: Uint8Array
}

/** Sorts readings of one interval into local days; days of 23 and 25 hours come out right, since the sums are in UTC. */
export function localDays(readings: Readings, clock: LocalClock, window: NightWindow): LocalDays {
  const { startSeconds } = readings
  const night = new Uint8Array(countOf(readings))
  const days: LocalDay[] = []
  let [from, day] = [0, NaN]
  const close = (to: number) => to > from && days.push(dayFrom(readings, night, clock, day, from, to))
  for (let i = 0; i < night.length; i++) {
    const local = startSeconds[i]! + clock.offsetAt(startSeconds[i]!)
    const own = Math.floor(local / DAY_SECONDS)
    const hour = (local - own * DAY_SECONDS) / 3600
    night[i] = hour >= window.fromHour && hour < window.toHour ? 1 : 0
    if (own === day) continue
    close(i)
    ;[from, day] = [i, own]
  }
  close(night.length)
  return { days, night }
}

function dayFrom(
  { watts, durationSeconds }: Readings,
  night: Uint8Array,
  clock: LocalClock,
  day: number,
  from: number,
  to: number,
): LocalDay {
  let [covered, energy, least, most, nightSeconds, nightEnergy] = [0, 0, Infinity, -Infinity, 0, 0]
  for (let i = from; i < to; i++) {
    const [power, seconds] = [watts[i]!, durationSeconds[i]!]
    covered += seconds
    energy += power * seconds
    least = Math.min(least, power)
    most = Math.max(most, power)
    if (night[i] === 0) continue
    nightSeconds += seconds
    nightEnergy += power * seconds
  }
  return {
    date: dateOf(day),
    from,
    to,
    lengthSeconds: startOfDay(clock, day + 1) - startOfDay(clock, day),
    coveredSeconds: covered,
    meanW: energy / covered,
    leastW: least,
    mostW: most,
    nightW: nightSeconds > 0 ? nightEnergy / nightSeconds : null,
  }
}

/** Share of a day that must be covered for its least reading to count (the service's own rule). */
const LEAST_COVERAGE = 0.9

export const isComplete = ({ coveredSeconds, lengthSeconds }: LocalDay) =>
  coveredSeconds >= LEAST_COVERAGE * lengthSeconds
