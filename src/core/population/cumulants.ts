import type { Range } from '../catalogue/category.ts'
import { normalCdf, normalQuantile } from '../quantity/normal.ts'
import { SMALLEST_W } from '../quantity/twoPieceLognormal.ts'

/** Mean, variance and third central moment: what adds up over independent quantities. */
export interface Cumulants {
  readonly mean: number
  readonly variance: number
  readonly third: number
}

export const timesCumulants = ({ mean, variance, third }: Cumulants, by: number): Cumulants => ({
  mean: mean * by,
  variance: variance * by,
  third: third * by,
})

/** Of the quantity itself times a constant. */
export const scaledCumulants = ({ mean, variance, third }: Cumulants, by: number): Cumulants => ({
  mean: mean * by,
  variance: variance * by ** 2,
  third: third * by ** 3,
})

export const addCumulants = (all: readonly Cumulants[]): Cumulants => ({
  mean: all.reduce((sum, { mean }) => sum + mean, 0),
  variance: all.reduce((sum, { variance }) => sum + variance, 0),
  third: all.reduce((sum, { third }) => sum + third, 0),
})

/** First three moments about zero. */
export type Moments = readonly [number, number, number]

export function momentsOf({ mean, variance, third }: Cumulants): Moments {
  return [mean, variance + mean ** 2, third + 3 * mean * variance + mean ** 3]
}

export function cumulantsOf([first, second, third]: Moments): Cumulants {
  return {
    mean: first,
    variance: Math.max(0, second - first ** 2),
    third: third - 3 * first * second + 2 * first ** 3,
  }
}

const Z95 = normalQuantile(0.95)

/**
 * Cumulants of a typical draw, W, as twoPieceLognormal reads its low, typical and high:
 *
 *   E[D^k] = m^k (e^(k^2 a^2/2) F(-k a) + e^(k^2 b^2/2) F(k b))      a, b the spreads of ln D below and above m
 */
export function drawCumulants({ low, typical, high }: Range): Cumulants {
  if (low === typical && typical === high) return { mean: typical, variance: 0, third: 0 }
  const median = Math.max(typical, SMALLEST_W)
  const below = Math.log(median / Math.min(Math.max(low, SMALLEST_W), median)) / Z95
  const above = Math.log(Math.max(high, median) / median) / Z95
  const moment = (k: number) =>
    median ** k *
    (Math.exp((k * below) ** 2 / 2) * normalCdf(-k * below) +
      Math.exp((k * above) ** 2 / 2) * normalCdf(k * above))
  return cumulantsOf([moment(1), moment(2), moment(3)])
}
