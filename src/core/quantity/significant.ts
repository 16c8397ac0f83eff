import type { Interval } from './intervalOfSum.ts'

/**
 * Six significant digits: far finer than any interval here, and coarse enough that the last bits of a processor's
 * logarithm do not show, so that the same request gives the same bytes everywhere.
 */
export const significant = (value: number): number => Number(value.toPrecision(6))

export const significantInterval = ({ expected, low, high }: Interval): Interval => ({
  expected: significant(expected),
  low: significant(low),
  high: significant(high),
})
