import { type Interval, intervalOfSum, scaleInterval } from './intervalOfSum.ts'
import { rectangularSum } from './rectangularSum.ts'
import type { Term } from './term.ts'

/**
 * A sum times a factor that multiplies all of it, such as a price: exact, or rectangular on +- a share of itself.
 *
 * @param interval the sum's own mean and interval
 * @param terms what the sum consists of; used where the factor is uncertain
 */
export function timesFactor(
  interval: Interval,
  terms: readonly Term[],
  coverage: number,
  factor: number,
  relativeUncertainty: number,
): Interval {
  if (relativeUncertainty === 0 || factor === 0) return scaleInterval(interval, factor)
  return scaleInterval(intervalOfSum(terms, coverage, rectangularSum(1, relativeUncertainty)), factor)
}
