/** A figure that rests on a number of days, and the distribution that the scatter between days gives it. */
export interface DayFigure {
  readonly watts: number
  readonly days: number
  /** How many independent days would give as sure a figure. */
  readonly effectiveDays: number
  readonly degreesOfFreedom: number
  /** Inverse of its distribution function, p in 0..1. */
  quantile(p: number): number
}
