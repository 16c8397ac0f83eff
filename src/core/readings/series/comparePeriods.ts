import { meanOf } from './blockMeans.ts'
import { type MeanUncertainty, uncertaintyOfMean } from './uncertaintyOfMean.ts'

/** Two periods of whole cycles, the second right after the first and both as long. */
interface ComparedPeriods extends MeanUncertainty {
  /** Over both periods. */
  readonly mean: number
  /** Rise from the middle of the first to the middle of the second, by step. */
  readonly slope: number
  readonly used: number
  /** How many whole cycles the series holds. */
  readonly cycles: number
}

/**
 * The mean of a load that repeats itself, over the last whole cycles, an even number of them. Samples within one cycle
 * are far from independent, so the scatter is that of the means of the cycles: batch means, each batch one cycle.
 * Source: IEC 62301:2011 5.3.2 for the two periods (M); Schmeiser, Operations Research 30 (1982) 556-568, for batch
 * means (from memory).
 * @param period in steps; at least two cycles fit into the values
 */
export function comparePeriods(values: readonly number[], period: number): ComparedPeriods {
  const cycles = Math.floor(values.length / period + 1e-9)
  const half = Math.floor(cycles / 2)
  const end = values.length
  const bounds = Array.from({ length: 2 * half + 1 }, (_, i) => Math.round(end - (2 * half - i) * period))
  const means = bounds.slice(1).map((to, i) => meanOf(values, bounds[i], to))
  const [from, middle] = [bounds[0]!, bounds[half]!]
  const rise = meanOf(values, middle, end) - meanOf(values, from, middle)
  return {
    mean: meanOf(values, from, end),
    slope: rise / ((end - from) / 2),
    used: end - from,
    cycles,
    ...uncertaintyOfMean(means),
  }
}
