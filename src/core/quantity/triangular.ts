import type { Range } from '../catalogue/category.ts'
import type { Distribution } from './distribution.ts'
import { exact } from './exact.ts'

/**
 * A quantity known by its bounds and its most likely value.
 *
 *   E[X] = (a + c + b)/3     E[X^2] = (a^2 + b^2 + c^2 + ab + ac + bc)/6     with a = low, c = typical, b = high
 *
 * Source: JCGM 100:2008 (GUM) 4.3.9 for the use; the moments are the textbook ones.
 */
export function triangular({ low: a, typical: c, high: b }: Range): Distribution {
  if (a === b) return exact(a)
  const width = b - a
  const mean = (a + b + c) / 3
  const atMode = (c - a) / width
  return {
    mean,
    meanSquare: (a * a + b * b + c * c + a * b + a * c + b * c) / 6,
    min: a,
    max: b,
    cdf(x) {
      if (x <= a) return 0
      if (x >= b) return 1
      return x < c ? ((x - a) * (x - a)) / (width * (c - a)) : 1 - ((b - x) * (b - x)) / (width * (b - c))
    },
    cdfIntegral(x) {
      if (x <= a) return 0
      if (x >= b) return x - mean
      const [fromLow, toHigh] = [x - a, b - x]
      if (x < c) return (fromLow * fromLow * fromLow) / (3 * width * (c - a))
      return x - mean + (toHigh * toHigh * toHigh) / (3 * width * (b - c))
    },
    quantile: (p) =>
      p < atMode ? a + Math.sqrt(p * width * (c - a)) : b - Math.sqrt((1 - p) * width * (b - c)),
  }
}
