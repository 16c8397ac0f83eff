import { blockMeans, meanOf } from './blockMeans.ts'

/** What the scatter of a series says of its mean. */
export interface MeanUncertainty {
  /** Standard uncertainty of the mean, type A, in the unit of the values. */
  readonly standard: number
  /** How many independent values would give as sure a mean. */
  readonly effective: number
  readonly degrees: number
}

/** A series is gathered into at most this many blocks, so that a long one costs no more than a second-long sum. */
const BLOCKS = 2_048

/**
 * Standard uncertainty of the mean of a series whose values are not independent of their neighbours.
 *
 *   n_eff = n / tau,   tau = 1 + 2 sum over k of (1 - k/n) r_k,   u^2 = c / (n_eff - 1),   degrees = n_eff - 1
 *
 * c is the variance about the mean (divided by n), r_k the correlation at lag k. The sum ends where a pair of neighbouring
 * correlations first adds up to nothing, since what follows is noise. Correlation never counts in favour: tau >= 1.
 * With independent values u is the usual s/sqrt(n).
 * Source: Bayley and Hammersley, J. Roy. Stat. Soc. Suppl. 8 (1946) 184-197, for n_eff; Geyer, Statistical Science 7
 * (1992) 473-483, for where the sum ends (initial positive sequence); JCGM 100:2008 4.2.7 asks for such a method
 * (all from memory).
 * @param values at least two
 */
export function uncertaintyOfMean(values: readonly number[]): MeanUncertainty {
  const variance = varianceOf(values)
  if (variance === 0) return { standard: 0, effective: values.length, degrees: values.length - 1 }
  const { means } = blockMeans(values, BLOCKS)
  const degrees = Math.max(2, means.length / correlationTime(means)) - 1
  const square = Math.max(varianceOf(means) / degrees, variance / (values.length - 1))
  return { standard: Math.sqrt(square), effective: variance / square + 1, degrees }
}

/** Mean square distance from the mean; differences that are only rounding count as none. */
function varianceOf(values: readonly number[]): number {
  const mean = meanOf(values)
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length
  return square <= (1e-12 * mean) ** 2 ? 0 : square
}

/** tau of uncertaintyOfMean; the divisor n at every lag brings in the factor 1 - k/n. */
function correlationTime(values: readonly number[]): number {
  const mean = meanOf(values)
  const apart = values.map((value) => value - mean)
  const whole = productAt(apart, 0)
  if (whole === 0) return 1
  let tau = -1
  for (let lag = 0; lag + 1 < apart.length; lag += 2) {
    const pair = (productAt(apart, lag) + productAt(apart, lag + 1)) / whole
    if (pair <= 0) break
    tau += 2 * pair
  }
  return Math.max(1, tau)
}

function productAt(values: readonly number[], lag: number): number {
  let sum = 0
  for (let i = lag; i < values.length; i++) sum += values[i]! * values[i - lag]!
  return sum
}
