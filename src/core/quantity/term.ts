import type { Distribution } from './distribution.ts'
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
  readonly metered?: MeterReadingValue
  readonly shared?: SharedFactor
}

export const scaleTerm = (term: Term, by: number): Term => ({ ...term, coefficient: term.coefficient * by })
export const multiplyTerm = (term: Term, factor: Distribution): Term => ({
  ...term,
  factors: [...term.factors, factor],
})

const readings = new WeakMap<MeterReadingValue, Distribution>()

/** A reading on its own, with both parts of its meter's error. Kept, since one reading stands in many sums. */
export function readingDistribution(reading: MeterReadingValue): Distribution {
  const known = readings.get(reading)
  if (known) return known
  const distribution = rectangularSum(reading.value, reading.gain * reading.value, reading.counts)
  readings.set(reading, distribution)
  return distribution
}

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
