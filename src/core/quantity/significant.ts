import type { Interval } from './interval.ts'

const DIGITS = 6
/** From here on counting places is exact; beyond, few figures lie. */
const [LEAST, MOST] = [1e-12, 1e6]
const LEAST_OF_SIX_DIGITS = 1e5
const POWERS_OF_TEN = Array.from({ length: 18 }, (_, exponent) => Number(`1e${exponent}`))

/**
 * Six significant digits: far finer than any interval here, and coarse enough that the last bits of a processor's
 * logarithm do not show, so that the same request gives the same bytes everywhere.
 *
 * A whole number divided by an exact power of ten is the double nearest to the decimal, so what is printed has no
 * stray digits; very large and very small figures take the slower way through text.
 */
export function significant(value: number): number {
  if (value === 0) return 0
  const size = Math.abs(value)
  // Counting is several times faster than a logarithm, and most figures have few places.
  if (size >= LEAST && size < MOST) {
    let places = 0
    while (size * POWERS_OF_TEN[places]! < LEAST_OF_SIX_DIGITS) places++
    return Math.round(value * POWERS_OF_TEN[places]!) / POWERS_OF_TEN[places]!
  }
  return Number(value.toPrecision(DIGITS))
}

export const significantInterval = ({ expected, low, high }: Interval): Interval => ({
  expected: significant(expected),
  low: significant(low),
  high: significant(high),
})
