import type { Interval } from '../../quantity/intervalOfSum.ts'
import type { PowerOfReading, ReadingContext } from '../powerModel.ts'
import { shown } from '../shown.ts'

/** One step from what a meter showed to watts, so that a reader can follow it with a pocket calculator. */
export interface Step {
  /** What is done and why, in plain words. */
  readonly what: string
  readonly formula: string
  readonly result: string
}

/** What a reading came to: what the steps lead to. */
export interface Evaluated {
  readonly read: PowerOfReading
  readonly context: ReadingContext
  /** Of one reading, not yet times the devices behind it. */
  readonly powerW: Interval
  readonly apparentPowerVa: Interval | null
  readonly reactivePowerVar: Interval | null
}

export const step = (what: string, formula: string, result: string): Step => ({ what, formula, result })

/** `6.21 W (4.1 to 8.6)`, or the figure alone where it has no interval. */
export const span = ({ expected, low, high }: Interval, unit: string): string =>
  low === high ? `${shown(expected)} ${unit}` : `${shown(expected)} ${unit} (${shown(low)} to ${shown(high)})`
