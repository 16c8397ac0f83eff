import type { Distribution } from '../quantity/distribution.ts'
import { exact } from '../quantity/exact.ts'
import { lognormalOf } from '../quantity/twoPieceLognormal.ts'
import type { Cumulants } from './cumulants.ts'

/** A smaller skewness does not show in an interval, and would lose digits. */
const LEAST_SKEWNESS = 0.02

/**
 * A quantity of which three moments are known, such as the sum over many homes: a shifted log-normal, mirrored where the
 * skewness is negative.
 *
 *   X = c + L,  ln L normal with spread s:   y^3 + 3 y = skewness,  s^2 = ln(1 + y^2),  E[L] = sd/y,  c = mean - sd/y
 *
 * The moments are exact; below zero, which sums of draws hardly reach, it is cut off. Wrong choice for a quantity with
 * humps, such as the draw of one home that has a device or not.
 * Source: the moments of the log-normal distribution are the textbook ones; the use is common practice, no source.
 */
export function matchedLognormal({ mean, variance, third }: Cumulants): Distribution {
  if (variance <= 0) return exact(mean)
  const deviation = Math.sqrt(variance)
  const skewness = third / (variance * deviation)
  const size = Math.max(Math.abs(skewness), LEAST_SKEWNESS)
  const y = 2 * Math.sinh(Math.asinh(size / 2) / 3)
  const spread = Math.sqrt(Math.log1p(y * y))
  const center = deviation / y
  const shape = lognormalOf(center * Math.exp((-spread * spread) / 2), spread, spread)
  const meanSquare = variance + mean ** 2
  return skewness < 0
    ? { mean, meanSquare, ...mirrored(shape, mean + center, mean) }
    : { mean, meanSquare, ...shifted(shape, mean - center) }
}

type Shape = Omit<Distribution, 'mean' | 'meanSquare'>

const shifted = (x: Distribution, by: number): Shape => ({
  min: Math.max(0, x.min + by),
  max: x.max + by,
  cdf: (value) => (value < 0 ? 0 : x.cdf(value - by)),
  cdfIntegral: (value) => (value <= 0 ? 0 : x.cdfIntegral(value - by)),
  quantile: (p) => Math.max(0, x.quantile(p) + by),
})

/** from - L; E[max(0, v - X)] = v - E[X] + E[max(0, from - v - L)]. */
const mirrored = (x: Distribution, from: number, mean: number): Shape => ({
  min: Math.max(0, from - x.max),
  max: from - x.min,
  cdf: (value) => (value < 0 ? 0 : 1 - x.cdf(from - value)),
  cdfIntegral: (value) => (value <= 0 ? 0 : Math.max(0, value - mean + x.cdfIntegral(from - value))),
  quantile: (p) => Math.max(0, from - x.quantile(1 - p)),
})
