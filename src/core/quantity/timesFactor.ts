import { Decimal } from 'decimal.js'
import { type Interval, intervalOfSum } from './intervalOfSum.ts'
import { rectangularSum } from './rectangularSum.ts'
import type { Term } from './term.ts'

/**
 * A sum times a factor that multiplies all of it, such as a price: exact, or rectangular on +- a share of itself.
 * An exact factor is multiplied in decimal, so that 3 x 0.1 is 0.3: people check such sums by hand.
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
  if (relativeUncertainty > 0 && factor > 0)
    return intervalOfSum(terms, coverage, rectangularSum(factor, factor * relativeUncertainty))
  const times = (value: number) => new Decimal(value).times(factor).toNumber()
  return { expected: times(interval.expected), low: times(interval.low), high: times(interval.high) }
}
