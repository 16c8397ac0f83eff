import type { Range } from '../catalogue/category.ts'
import type { Distribution } from './distribution.ts'
import { exact } from './exact.ts'
import { triangular } from './triangular.ts'

/**
 * The share of apparent power that is not active, W = sqrt(1 - X^2), for a power factor X that is known as a range
 * (triangular on its bounds). It is what sin(phi) is where current and voltage are sine waves.
 *
 *   F(w) = P(X >= sqrt(1 - w^2)),   E[W; W <= w] = integral of sqrt(1 - x^2) f(x) from sqrt(1 - w^2) to the upper bound
 *
 * in closed form, from the integrals of sqrt(1 - x^2) and x sqrt(1 - x^2).
 * @param range low, typical and high within 0 to 1
 */
export function nonActiveFactor(range: Range): Distribution {
  const { low: a, typical: c, high: b } = range
  if (a === b) return exact(shareAt(a))
  // So narrow a range is straight to 1e-8, and the closed form would lose its digits.
  if (b - a < NARROW) return triangular({ low: shareAt(b), typical: shareAt(c), high: shareAt(a) })
  const x = triangular(range)
  const mean = partialMean(range, a)
  const [min, max] = [shareAt(b), shareAt(a)]
  return {
    mean,
    meanSquare: 1 - x.meanSquare,
    min,
    max,
    cdf: (w) => (w < min ? 0 : w >= max ? 1 : 1 - x.cdf(shareAt(w))),
    cdfIntegral(w) {
      if (w <= min) return 0
      if (w >= max) return w - mean
      const from = shareAt(w)
      return Math.max(0, w * (1 - x.cdf(from)) - partialMean(range, from))
    },
    quantile: (p) => shareAt(x.quantile(1 - p)),
  }
}

const NARROW = 1e-4

/** sqrt(1 - x^2), which is its own inverse. */
const shareAt = (x: number) => Math.sqrt(Math.max(0, (1 - x) * (1 + x)))

/** Integral of sqrt(1 - x^2) f(x) from `from` to the upper bound, f the triangular density. */
function partialMean({ low: a, typical: c, high: b }: Range, from: number): number {
  const width = b - a
  const falling = c < b ? (2 / (width * (b - c))) * rise(Math.max(from, c), b, b) : 0
  const rising = from < c ? (-2 / (width * (c - a))) * rise(from, c, a) : 0
  return falling + rising
}

/** Integral of sqrt(1 - x^2) (zero - x) from x1 to x2. */
function rise(x1: number, x2: number, zero: number): number {
  const [s1, s2] = [shareAt(x1), shareAt(x2)]
  const ofShare = (x2 * s2 + Math.asin(x2) - x1 * s1 - Math.asin(x1)) / 2
  const ofShareTimesX = (s1 ** 3 - s2 ** 3) / 3
  return zero * ofShare - ofShareTimesX
}
