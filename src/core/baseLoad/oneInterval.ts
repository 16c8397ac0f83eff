import { countOf, only, type Readings } from './readings.ts'

export interface OneInterval {
  readonly readings: Readings
  readonly intervalSeconds: number
  /** Readings that were put together into longer ones. */
  readonly joined: number
  /** Readings longer than the interval, or shorter ones that do not fill it; left out. */
  readonly leftOut: number
}

/** A length of interval that covers less of the time than this is an exception, not what the meter does. */
const LEAST_SHARE = 0.05

/**
 * Readings of different lengths as readings of one length, so that the least and the low percentiles mean one thing:
 * the longest length that covers at least 5 % of the time (the service's own rule). Shorter readings are put
 * together where they fill such an interval without a gap.
 * @param tidy in order of time and without overlaps, at least one
 */
export function toOneInterval(tidy: Readings): OneInterval {
  const intervalSeconds = commonInterval(tidy)
  const { durationSeconds } = tidy
  if (durationSeconds.every((duration) => duration === intervalSeconds))
    return { readings: tidy, intervalSeconds, joined: 0, leftOut: 0 }
  const short = only(tidy, (i) => durationSeconds[i]! < intervalSeconds)
  const whole = only(tidy, (i) => durationSeconds[i] === intervalSeconds)
  const phase = whole.startSeconds[0]! % intervalSeconds
  const { built, joined } = joinShort(short, intervalSeconds, phase)
  const readings = merged(whole, built)
  return { readings, intervalSeconds, joined, leftOut: countOf(tidy) - countOf(whole) - joined }
}

function commonInterval({ durationSeconds }: Readings): number {
  const covered = new Map<number, number>()
  let all = 0
  for (const duration of durationSeconds) {
    covered.set(duration, (covered.get(duration) ?? 0) + duration)
    all += duration
  }
  return Math.max(...[...covered].filter(([, time]) => time >= LEAST_SHARE * all).map(([length]) => length))
}

function joinShort(short: Readings, interval: number, phase: number) {
  const rows: [start: number, watts: number, place: number][] = []
  let [bin, filled, energy, parts, joined] = [NaN, 0, 0, 0, 0]
  for (let i = 0; i < countOf(short); i++) {
    const [start, duration] = [short.startSeconds[i]!, short.durationSeconds[i]!]
    const own = Math.floor((start - phase) / interval) * interval + phase
    if (own !== bin) [bin, filled, energy, parts] = [own, 0, 0, 0]
    filled += duration
    energy += short.watts[i]! * duration
    parts++
    if (filled !== interval || start + duration !== bin + interval) continue
    rows.push([bin, energy / interval, short.places[i]!])
    joined += parts
  }
  const built: Readings = {
    startSeconds: Float64Array.from(rows, ([start]) => start),
    durationSeconds: new Float64Array(rows.length).fill(interval),
    watts: Float64Array.from(rows, ([, watts]) => watts),
    places: Uint32Array.from(rows, ([, , place]) => place),
  }
  return { built, joined }
}

function merged(a: Readings, b: Readings): Readings {
  const order = [
    ...Array.from(a.startSeconds, (start, i) => [start, a, i] as const),
    ...Array.from(b.startSeconds, (start, i) => [start, b, i] as const),
  ].sort(([one], [other]) => one - other)
  return {
    startSeconds: Float64Array.from(order, ([start]) => start),
    durationSeconds: Float64Array.from(order, ([, from, i]) => from.durationSeconds[i]!),
    watts: Float64Array.from(order, ([, from, i]) => from.watts[i]!),
    places: Uint32Array.from(order, ([, from, i]) => from.places[i]!),
  }
}
