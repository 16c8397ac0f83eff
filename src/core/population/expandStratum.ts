import type { SurveyedHome } from './survey.ts'
import type { SampledStratum } from './sampledStratum.ts'

/** A linear function of what one home says: its value, 1, its auxiliary quantity, each also within a domain only. */
export type OfHome = (home: SurveyedHome) => number

/** Weights of value, auxiliary quantity and the number 1, for strata that are known in summary only. */
export interface Weights {
  readonly value: number
  readonly auxiliary: number
  readonly one: number
}

/** An estimated total and its variance. */
export interface Expanded {
  readonly total: number
  readonly variance: number
}

/**
 * One stratum's total from a simple random sample of its units (homes, or clusters that were surveyed whole).
 *
 *   t = (A/a) sum z      V(t) = A^2 (1 - a/A) s^2/a      z the sum over a unit's homes, s^2 with divisor a - 1
 *
 * with A units in the stratum and a in the sample. The finite population correction (1 - a/A) can be left out.
 * Source: S. L. Lohr, Sampling: Design and Analysis, chapters 2, 3 and 5 (formulas from memory; the published results are
 * reproduced in test/published/survey.test.ts).
 * @param ofHome what is summed; `weights` says the same of a stratum that is known in summary only
 */
export function expandStratum(
  stratum: SampledStratum,
  ofHome: OfHome,
  weights: Weights,
  correction: boolean,
): Expanded {
  const { populationUnits: all, sampledUnits: sampled } = stratum
  const { mean, variance } = stratum.units
    ? momentsOf(stratum.units.map(({ homes }) => homes.reduce((sum, home) => sum + ofHome(home), 0)))
    : momentsOfSummary(stratum, weights)
  const unsampled = correction ? 1 - sampled / all : 1
  return { total: all * mean, variance: (all * all * unsampled * variance) / sampled }
}

/** Two passes, since values of like size would lose their differences in one. */
function momentsOf(values: readonly number[]): { mean: number; variance: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean, variance: squares / (values.length - 1) }
}

/** s^2 of b y + c x is b^2 s_y^2 + 2 b c s_xy + c^2 s_x^2. */
function momentsOfSummary({ summary }: SampledStratum, { value, auxiliary, one }: Weights) {
  const { mean, variance } = summary!
  const x = summary!.auxiliary ?? { mean: 0, variance: 0, covariance: 0 }
  return {
    mean: value * mean + auxiliary * x.mean + one,
    variance: Math.max(
      0,
      value * value * variance + 2 * value * auxiliary * x.covariance + auxiliary * auxiliary * x.variance,
    ),
  }
}

/** Strata are sampled independently, so totals and variances add. */
export const sumOf = (parts: readonly Expanded[]): Expanded => ({
  total: parts.reduce((sum, { total }) => sum + total, 0),
  variance: parts.reduce((sum, { variance }) => sum + variance, 0),
})
