import type { Interval } from './interval.ts'

const DIGITS = 6
const POWERS_OF_TEN = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`))

/**
 * Six significant digits: far finer than any interval here, and coarse enough that the last bits of a processor's
 * logarithm do not show, so that the same request gives the same bytes everywhere.
 *
 * A whole number divided by an exact power of ten is the double nearest to the decimal, so what is printed has no
 * stray digits; beyond the exact powers of ten (1e22) the slower way through text is taken.
 */
export function significant(value: number): number {
  if (value === 0) return 0
  const places = DIGITS - 1 - Math.floor(Math.log10(Math.abs(value)))
  if (places > 22 || places < -22) return Number(value.toPrecision(DIGITS))
  if (places >= 0) return Math.round(value * POWERS_OF_TEN[places]!) / POWERS_OF_TEN[places]!
  return Math.round(value / POWERS_OF_TEN[-places]!) * POWERS_OF_TEN[-places]!
}

export const significantInterval = ({ expected, low, high }: Interval): Interval => ({
  expected: significant(expected),
  low: significant(low),
  high: significant(high),
})
