import { clockOfSteps, instantsOf, type LocalClock, type OffsetStep } from '../core/baseLoad/localClock.ts'
import { clockOfZone } from '../core/baseLoad/zoneClock.ts'
import type { Timestamp } from './baseLoadTime.ts'

export type TimeProblem = 'no-time-zone' | 'time-left-out' | null

/**
 * Turns timestamps into instants, one after the other, and learns the local clock on the way: from the time zone that
 * was named, or else from the offsets that the timestamps carry.
 */
export class TimeReader {
  #zone: LocalClock | null
  #steps: OffsetStep[] = []
  #last = NaN
  #downwards = false

  constructor(timeZone: string | undefined) {
    this.#zone = timeZone === undefined ? null : clockOfZone(timeZone)
  }

  /** The instant, s since 1970 UTC; or why there is none. */
  read({ local, offset, zulu }: Timestamp): number | Exclude<TimeProblem, null> {
    if (offset === null) return this.#zone ? this.#fromWall(this.#zone, local) : 'no-time-zone'
    if (!this.#zone && zulu) return 'no-time-zone'
    if (this.#steps.at(-1)?.offset !== offset) this.#steps.push({ from: local - offset, offset })
    return this.#keep(local - offset)
  }

  clock(): LocalClock {
    return this.#zone ?? clockOfSteps('offsets of the timestamps', this.#steps)
  }

  /**
   * The hour that autumn repeats comes twice in a file: the one that follows the line before is meant. In a file that
   * runs backwards the later one comes first.
   */
  #fromWall(zone: LocalClock, local: number): number | 'time-left-out' {
    const instants = instantsOf(zone, local)
    const [first, second] = this.#downwards ? instants.reverse() : instants
    if (first === undefined) return 'time-left-out'
    const follows = this.#downwards ? first < this.#last : first > this.#last
    return this.#keep(second !== undefined && !follows && !Number.isNaN(this.#last) ? second : first)
  }

  #keep(instant: number): number {
    if (!Number.isNaN(this.#last)) this.#downwards = instant < this.#last
    this.#last = instant
    return instant
  }
}
