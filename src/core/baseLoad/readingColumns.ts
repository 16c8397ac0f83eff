import { MOST_READINGS, type Readings } from './readings.ts'

/** Turns what a meter reported for one interval into mean power, W; null where the reading does not count. */
export type ToWatts = (value: number, durationSeconds: number, channel: number) => number | null

/**
 * Raw values as they come in, before it is known what they mean: units and multipliers may stand at the end of a
 * file. Grows by doubling.
 */
export class ReadingColumns {
  length = 0
  #starts = new Float64Array(1_024)
  #durations = new Float64Array(1_024)
  #values = new Float64Array(1_024)
  #places = new Uint32Array(1_024)
  #channels = new Uint32Array(1_024)

  /** @returns false where there is no room for another: MOST_READINGS are held */
  push(
    startSeconds: number,
    durationSeconds: number,
    value: number,
    place: number,
    channel: number,
  ): boolean {
    if (this.length === MOST_READINGS) return false
    if (this.length === this.#starts.length) this.#grow()
    this.#starts[this.length] = startSeconds
    this.#durations[this.length] = durationSeconds
    this.#values[this.length] = value
    this.#places[this.length] = place
    this.#channels[this.length] = channel
    this.length++
    return true
  }

  /** The channels that have values. */
  channels(): ReadonlySet<number> {
    return new Set(this.#channels.subarray(0, this.length))
  }

  /** True where any value of a channel is above 0. */
  anyAboveZero(ofChannel: (channel: number) => boolean): boolean {
    for (let i = 0; i < this.length; i++)
      if (this.#values[i]! > 0 && ofChannel(this.#channels[i]!)) return true
    return false
  }

  /**
   * The step between successive starts that occurs most often in the first 10,000, s; null where there is none. The
   * interval of a file that names only one end of each.
   */
  usualStep(): number | null {
    const counts = new Map<number, number>()
    for (let i = 1; i < Math.min(this.length, 10_000); i++) {
      const step = Math.abs(this.#starts[i]! - this.#starts[i - 1]!)
      if (step > 0) counts.set(step, (counts.get(step) ?? 0) + 1)
    }
    const [most] = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])
    return most?.[0] ?? null
  }

  /**
   * @param fallbackSeconds length of the readings that came without one
   * @param startsAreEnds true where the end of each interval was given in place of its start
   */
  toReadings(
    toWatts: ToWatts,
    fallbackSeconds: (channel: number) => number,
    startsAreEnds = false,
  ): Readings {
    const startSeconds = new Float64Array(this.length)
    const durationSeconds = new Float64Array(this.length)
    const watts = new Float64Array(this.length)
    const places = new Uint32Array(this.length)
    let kept = 0
    for (let i = 0; i < this.length; i++) {
      const channel = this.#channels[i]!
      const duration = this.#durations[i]! || fallbackSeconds(channel)
      const power = toWatts(this.#values[i]!, duration, channel)
      if (power === null) continue
      startSeconds[kept] = this.#starts[i]! - (startsAreEnds ? duration : 0)
      durationSeconds[kept] = duration
      watts[kept] = power
      places[kept++] = this.#places[i]!
    }
    return {
      startSeconds: startSeconds.subarray(0, kept),
      durationSeconds: durationSeconds.subarray(0, kept),
      watts: watts.subarray(0, kept),
      places: places.subarray(0, kept),
    }
  }

  #grow(): void {
    const size = Math.min(MOST_READINGS, 2 * this.length)
    this.#starts = grown(this.#starts, new Float64Array(size))
    this.#durations = grown(this.#durations, new Float64Array(size))
    this.#values = grown(this.#values, new Float64Array(size))
    this.#places = grown(this.#places, new Uint32Array(size))
    this.#channels = grown(this.#channels, new Uint32Array(size))
  }
}

function grown<T extends Float64Array | Uint32Array>(from: T, to: T): T {
  to.set(from)
  return to
}

/**
 * Energy of an interval as mean power: P = E 3600 / t, E in Wh, t in s. 273 Wh in 900 s are 1,092 W, not 273 W.
 */
export const wattsOfEnergy = (wattHours: number, durationSeconds: number) =>
  (wattHours * 3600) / durationSeconds
