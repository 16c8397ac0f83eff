import { meanOf } from './blockMeans.ts'

/**
 * Slope of the straight line that fits evenly spaced values best (least squares), by step.
 *
 *   b = sum (i - i_mean)(y_i - y_mean) / sum (i - i_mean)^2,   the divisor being n (n^2 - 1)/12
 *
 * @param values at least two
 */
export function slopeOf(values: readonly number[]): number {
  const n = values.length
  const mean = meanOf(values)
  const middle = (n - 1) / 2
  let sum = 0
  for (let i = 0; i < n; i++) sum += (i - middle) * (values[i]! - mean)
  return (12 * sum) / (n * (n * n - 1))
}

/** The values less their straight line. */
export function withoutTrend(values: readonly number[]): number[] {
  const slope = slopeOf(values)
  const mean = meanOf(values)
  const middle = (values.length - 1) / 2
  return values.map((value, i) => value - mean - slope * (i - middle))
}
