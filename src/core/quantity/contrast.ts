import { type Term, termMean } from './term.ts'

/**
 * One part of a difference between two states of the same things:
 *
 *   common x (sum of terms)
 *
 * Coefficients of the terms may be negative. What stands in `common` is one uncertain quantity for both states, such as
 * the power of a device that nobody changed; factors are independent of everything else, in this part and in the others.
 * Meters' gains and shared factors go by their names through all parts, as they do in sums.
 */
export interface Contrast {
  readonly common: Term
  readonly terms: readonly Term[]
}

/** Exact: all parts of a term, and common and terms, are independent of each other. */
export const contrastMean = ({ common, terms }: Contrast): number => termMean(common) * meanOfTerms(terms)

export const meanOfTerms = (terms: readonly Term[]): number =>
  terms.reduce((sum, term) => sum + termMean(term), 0)

/** Mean of all that is added and taken away. */
export const contrastSize = ({ common, terms }: Contrast): number =>
  Math.abs(termMean(common)) * terms.reduce((sum, term) => sum + Math.abs(termMean(term)), 0)
