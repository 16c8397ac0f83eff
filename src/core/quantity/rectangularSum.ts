import type { Distribution } from './distribution.ts'
import { exact } from './exact.ts'
import { searchQuantile } from './searchQuantile.ts'

const power = (x: number, k: number) => (x <= 0 ? 0 : x ** k)
const FACTORIAL = [1, 1, 2, 6, 24]

/**
 * A value with one or two independent rectangular errors, such as a meter's percent part and its counts part;
 * what would fall below zero counts as zero.
 *
 *   X = max(0, value + E1 + E2),   Ei rectangular on +-halfWidth_i
 *
 * All in the unit of `value`. The distribution function is a difference of truncated powers (the B-spline of two
 * boxes); a half-width below a millionth of the other is merged into it, to keep the differences accurate.
 * Source: JCGM 100:2008 (GUM) 4.3.7 for the rectangular limit of error.
 */
export function rectangularSum(value: number, halfWidth1: number, halfWidth2 = 0): Distribution {
  const [a, b] = widths(halfWidth1, halfWidth2)
  if (a === 0) return exact(Math.max(0, value))
  /** k-th integral of the density of the unclipped sum: k = 1 distribution function, 2 its integral, and so on. */
  const integral = (x: number, k: number) => {
    const y = x - value
    if (b === 0) return (power(y + a, k) - power(y - a, k)) / (2 * a * FACTORIAL[k]!)
    const corners =
      power(y + a + b, k + 1) - power(y + a - b, k + 1) - power(y - a + b, k + 1) + power(y - a - b, k + 1)
    return corners / (4 * a * b * FACTORIAL[k + 1]!)
  }
  const min = Math.max(0, value - a - b)
  const max = Math.max(0, value + a + b)
  const clipped = value - a - b < 0
  const lost = clipped ? integral(0, 2) : 0
  const cdf = (x: number) => (x < min ? 0 : x >= max ? 1 : Math.min(1, integral(x, 1)))
  return {
    mean: value + lost,
    meanSquare: value * value + (a * a + b * b) / 3 - (clipped ? 2 * integral(0, 3) : 0),
    min,
    max,
    cdf,
    cdfIntegral: (x) => (x <= min ? 0 : x >= max ? x - value - lost : integral(x, 2) - lost),
    quantile: (p) => (b === 0 ? Math.max(0, value + a * (2 * p - 1)) : searchQuantile(cdf, min, max, p)),
  }
}

function widths(halfWidth1: number, halfWidth2: number): [number, number] {
  const [a, b] = halfWidth1 >= halfWidth2 ? [halfWidth1, halfWidth2] : [halfWidth2, halfWidth1]
  return b < a * 1e-6 ? [Math.hypot(a, b), 0] : [a, b]
}
