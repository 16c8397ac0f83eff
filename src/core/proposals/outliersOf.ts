import { quantileOf } from './quantileOf.ts'

/** Readings that stand far from the others; they are named, and stay in. */
export interface Outliers {
  readonly rule: string
  readonly lowerFenceW: number
  readonly upperFenceW: number
  readonly count: number
  /** Those beyond the fences, W, ascending; of more than twenty the ten at each end. */
  readonly outsideW: readonly number[]
}

/** A reading below this counts as this: the smallest step that IEC 62301 asks a meter to resolve, as in estimates. */
export const SMALLEST_W = 0.01
const RULE =
  'Tukey’s inner fences on ln W: more than 1.5 interquartile ranges below the first or above the third quartile (J. W. Tukey, Exploratory Data Analysis, 1977). They stay in, since devices that draw much are a part of the truth; but of few readings one alone can make the 5th or the 95th percentile, so look at them before you accept.'
const FENCE = 1.5
const SHOWN = 10

/**
 * Tukey's inner fences, on logarithms, since draws of one kind of device spread by factors and not by differences.
 *
 *   ln W < Q1 - 1.5 (Q3 - Q1)   or   ln W > Q3 + 1.5 (Q3 - Q1)
 *
 * Q1 and Q3 by quantileOf.ts. Source: J. W. Tukey, Exploratory Data Analysis, 1977, 2C; NIST/SEMATECH e-Handbook of Statistical
 * Methods 7.1.6 (both from memory). Wrong choice for fewer than some eight values.
 * @param sortedW ascending, W
 */
export function outliersOf(sortedW: readonly number[]): Outliers {
  const logarithms = sortedW.map((watts) => Math.log(Math.max(watts, SMALLEST_W)))
  const [first, third] = [quantileOf(logarithms, 0.25), quantileOf(logarithms, 0.75)]
  const reach = FENCE * (third - first)
  // Equal readings stand on the fence, and rounding must not put them beyond it.
  const [lower, upper] = [first - reach - 1e-9, third + reach + 1e-9]
  const outsideW = sortedW.filter((_, i) => logarithms[i]! < lower || logarithms[i]! > upper)
  return {
    rule: RULE,
    lowerFenceW: Math.exp(lower),
    upperFenceW: Math.exp(upper),
    count: outsideW.length,
    outsideW:
      outsideW.length > 2 * SHOWN ? [...outsideW.slice(0, SHOWN), ...outsideW.slice(-SHOWN)] : outsideW,
  }
}
