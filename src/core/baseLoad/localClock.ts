/** What the clock on the wall shows beside UTC. */
export interface LocalClock {
  /** IANA name, or where the offsets came from. */
  readonly name: string
  /** Local time less UTC at an instant, s. Instants are in s since 1970-01-01T00:00:00Z. */
  offsetAt(instant: number): number
}

/** From this instant on, the offset, s. */
export interface OffsetStep {
  readonly from: number
  readonly offset: number
}

export const DAY_SECONDS = 86_400

/**
 * A clock of the offsets that hold in each calendar year (UTC). The steps of a year start at or before the year's
 * beginning and are in order; they are asked for once.
 */
export function clockOfYears(name: string, stepsOf: (year: number) => readonly OffsetStep[]): LocalClock {
  const known = new Map<number, readonly OffsetStep[]>()
  // Readings come in order of time, so the piece that held the last instant nearly always holds the next one.
  let [from, to, offset] = [Infinity, -Infinity, 0]
  return {
    name,
    offsetAt(instant) {
      if (instant >= from && instant < to) return offset
      const year = new Date(instant * 1000).getUTCFullYear()
      const steps = known.get(year) ?? stepsOf(year)
      known.set(year, steps)
      const place = steps.findLastIndex((step) => step.from <= instant)
      ;({ offset, from } = steps[Math.max(0, place)]!)
      to = Math.min(steps[place + 1]?.from ?? Infinity, Date.UTC(year + 1, 0, 1) / 1000)
      return offset
    },
  }
}

/** A clock that was seen to be at certain offsets from certain instants on, in any order. */
export function clockOfSteps(name: string, steps: readonly OffsetStep[]): LocalClock {
  const inOrder = [...steps].sort((a, b) => a.from - b.from)
  return {
    name,
    offsetAt: (instant) => (inOrder.findLast((step) => step.from <= instant) ?? inOrder[0]!).offset,
  }
}

/**
 * The instants at which the clock shows a local time (given as s since 1970 on the wall): one on most days, two in
 * the hour that autumn repeats, none in the hour that spring leaves out.
 */
export function instantsOf(clock: LocalClock, local: number): number[] {
  const before = clock.offsetAt(local - DAY_SECONDS)
  const after = clock.offsetAt(local + DAY_SECONDS)
  const offsets = before === after ? [before] : [Math.max(before, after), Math.min(before, after)]
  return offsets.filter((offset) => clock.offsetAt(local - offset) === offset).map((offset) => local - offset)
}

/** The first instant of a local day (counted from 1970-01-01); where midnight is left out, the instant after it. */
export function startOfDay(clock: LocalClock, day: number): number {
  const midnight = day * DAY_SECONDS
  return instantsOf(clock, midnight)[0] ?? midnight - clock.offsetAt(midnight - DAY_SECONDS)
}

/** A day counted from 1970-01-01 as YYYY-MM-DD, and back. */
export const dateOf = (day: number) => new Date(day * DAY_SECONDS * 1000).toISOString().slice(0, 10)
export const dayOf = (date: string) => Math.round(Date.parse(`${date}T00:00:00Z`) / 1000 / DAY_SECONDS)

/** An instant in UTC, to the second. */
export const instantText = (instant: number) => new Date(instant * 1000).toISOString().replace(/\.\d+Z$/, 'Z')
