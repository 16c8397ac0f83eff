import { Decimal } from 'decimal.js'
import { type Interval } from '../quantity/intervalOfSum.ts'
import { significantInterval } from '../quantity/significant.ts'
import { minorUnit } from './minorUnit.ts'

/**
 * Decimals of 30 digits. A price comes as a JSON number, and its shortest decimal text is what counts: 0.064 is
 * 0.064 and not the binary fraction nearest to it.
 */
export const Money = Decimal.clone({ precision: 30, defaults: true })
export type Money = InstanceType<typeof Decimal>

export const ZERO: Money = new Money(0)

/** Sums of money as decimal text, rounded half-even to the currency's minor unit. */
export interface Amounts {
  readonly expected: string
  readonly low: string
  readonly high: string
}

/** An interval of money: figures to reckon with, and amounts to show. */
export interface MoneyInterval extends Interval {
  readonly amounts: Amounts
}

/** A mean and the ends of its interval before anything is rounded. */
export interface ExactCost {
  readonly expected: Money
  readonly low: Money
  readonly high: Money
}

/** Money as decimal text; half-even to the minor unit of the currency, such as 0.01 EUR, 1 JPY, 0.001 KWD. */
export const amountOf = (money: Money, currency: string): string =>
  money.toFixed(minorUnit(currency), Decimal.ROUND_HALF_EVEN).replace(/^-(0(?:\.0*)?)$/, '$1')

/** What is shown of a cost: six digits as figures, the minor unit as amounts. */
export function moneyInterval({ expected, low, high }: ExactCost, currency: string): MoneyInterval {
  return {
    ...significantInterval({
      expected: expected.toNumber(),
      low: low.toNumber(),
      high: high.toNumber(),
    }),
    amounts: {
      expected: amountOf(expected, currency),
      low: amountOf(low, currency),
      high: amountOf(high, currency),
    },
  }
}
