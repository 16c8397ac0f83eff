import { type Distribution, variance } from './distribution.ts'
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

/** A reading on its own, with both parts of its meter's error. */
export const readingDistribution = (reading: MeterReadingValue): Distribution =>
  rectangularSum(reading.value, reading.gain * reading.value, reading.counts)

/** Everything random in a term, taken as independent: right for one term, wrong for a sum of terms that share. */
export function ownFactors(term: Term): Distribution[] {
  const own = [...term.factors]
  if (term.metered) own.push(readingDistribution(term.metered))
  if (term.shared) own.push(term.shared.distribution)
  return own
}

/** E[T]: exact, since all parts of one term are independent of each other. */
export const termMean = (term: Term): number =>
  ownFactors(term).reduce((product, factor) => product * factor.mean, term.coefficient)

const termMeanSquare = (term: Term): number =>
  ownFactors(term).reduce(
    (product, factor) => product * factor.meanSquare,
    term.coefficient * term.coefficient,
  )

export const termVariance = (term: Term): number => Math.max(0, termMeanSquare(term) - termMean(term) ** 2)

/**
 * Variance of a sum of terms, with the covariance of those that share a meter's gain or a shared factor
 * (JCGM 100:2008 (GUM) 5.2.2): every pair that shares a factor of mean 1 and variance d has the covariance
 * d x mean x mean. Exact but for a reading that its counts part may push below zero, where the gain's part is an
 * upper bound.
 */
export function varianceOfSum(terms: readonly Term[]): number {
  const own = terms.reduce((sum, term) => sum + termVariance(term), 0)
  const meters = covariance(
    terms,
    (term) => term.metered?.meter ?? null,
    (term) => term.metered!.gain ** 2 / 3,
  )
  const shared = covariance(
    terms,
    (term) => term.shared?.key ?? null,
    (term) => variance(term.shared!.distribution),
  )
  return own + meters + shared
}

function covariance(
  terms: readonly Term[],
  keyOf: (term: Term) => string | null,
  varianceOf: (term: Term) => number,
): number {
  const groups = new Map<string, { sum: number; squares: number; variance: number }>()
  for (const term of terms) {
    const key = keyOf(term)
    if (key === null) continue
    const group = groups.get(key) ?? { sum: 0, squares: 0, variance: varianceOf(term) }
    const mean = termMean(term)
    groups.set(key, { ...group, sum: group.sum + mean, squares: group.squares + mean * mean })
  }
  let total = 0
  for (const group of groups.values()) total += group.variance * (group.sum * group.sum - group.squares)
  return total
}
