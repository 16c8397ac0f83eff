import type { Distribution } from './distribution.ts'
import type { Interval } from './interval.ts'
import { rectangularSum } from './rectangularSum.ts'

/** A meter's reading: what it showed, and the half-widths of its stated limits of error. */
export interface MeterReadingValue {
  readonly value: number
  /** Percent part, as a share of the reading (0.015 for 1.5 %). Readings with the same `meter` share its error. */
  readonly gain: number
  /** Counts part, in the reading's unit; independent for each reading. */
  readonly counts: number
  /** Identity of the meter; null where the reading shares its gain with no other. */
  readonly meter: string | null
}

/** A relative quantity of mean 1 that several terms have in common, such as the supply's voltage over its nominal. */
export interface SharedFactor {
  readonly key: string
  readonly distribution: Distribution
}

/**
 * One product in a sum of products, such as the energy of one mode of one device:
 *
 *   T = coefficient x metered x shared x product of factors
 *
 * Factors are independent of everything else. Everything is non-negative.
 */
export interface Term {
  readonly coefficient: number
  readonly factors: readonly Distribution[]
  readonly metered?: MeterReadingValue | undefined
  readonly shared?: SharedFactor | undefined
  /** Only where sums are to be drawn by Monte Carlo. */
  readonly drawn?: DrawnTerm | undefined
}

/**
 * How a term is drawn. Terms made from one quantity, such as power and energy of one mode, have the same stream, and the
 * n-th factor of one is the n-th factor of the other: they are then given the same figures, and so is every sum they
 * stand in.
 */
export interface DrawnTerm {
  readonly drawing: Drawing
  readonly stream: number
}

/** How sums are drawn instead of convolved: the same for all terms of one estimate. */
export interface Drawing {
  readonly draws: number
  readonly seed: number
  intervalOf(terms: readonly Term[], coverage: number, outer?: Distribution): Interval
}

// Written out, and not spread: these are made for every mode of every device.
export const scaleTerm = ({ coefficient, factors, metered, shared, drawn }: Term, by: number): Term => ({
  coefficient: coefficient * by,
  factors,
  metered,
  shared,
  drawn,
})
export const multiplyTerm = (
  { coefficient, factors, metered, shared, drawn }: Term,
  factor: Distribution,
): Term => ({ coefficient, factors: [...factors, factor], metered, shared, drawn })

/** A reading on its own, with both parts of its meter's error. */
export const readingDistribution = ({ value, gain, counts }: MeterReadingValue): Distribution =>
  rectangularSum(value, gain * value, counts)

/** E[T]: exact, since all parts of one term are independent of each other. */
export function termMean({ coefficient, factors, metered, shared }: Term): number {
  let mean = coefficient
  for (const factor of factors) mean *= factor.mean
  if (metered) mean *= readingDistribution(metered).mean
  if (shared) mean *= shared.distribution.mean
  return mean
}

export function termVariance(term: Term): number {
  const { coefficient, factors, metered, shared } = term
  let square = coefficient * coefficient
  for (const factor of factors) square *= factor.meanSquare
  if (metered) square *= readingDistribution(metered).meanSquare
  if (shared) square *= shared.distribution.meanSquare
  return Math.max(0, square - termMean(term) ** 2)
}
