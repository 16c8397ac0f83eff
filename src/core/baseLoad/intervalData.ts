import type { Warning } from '../estimate/estimate.ts'
import type { LocalClock } from './localClock.ts'
import type { Readings } from './readings.ts'

export const FORMS = ['espi', 'csv', 'json'] as const

/** Interval data as a reader of one of the forms hands it over: in watts, not yet put in order. */
export interface IntervalData {
  readonly form: (typeof FORMS)[number]
  readonly readings: Readings
  readonly clock: LocalClock
  /** True where something was fed into the grid: by a channel or a column for it. */
  readonly exported: boolean
  /** Readings that the file itself marks as estimated or questionable. */
  readonly estimated: number
  /** What the reader had to leave out or to assume. */
  readonly notes: readonly Warning[]
}
