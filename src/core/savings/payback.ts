import type { ExactCost } from '../money/money.ts'
import { significant } from '../quantity/significant.ts'
import type { Payback } from './savingsPlan.ts'

/**
 * Simple payback, years: price over the money saved a year, without interest and at today's prices. Its mean would not
 * exist where nothing may be saved, so `expected` is that of the mean saving; the ends are those of the saving, the other
 * way round. Null is never. What costs nothing is paid back at once.
 */
export function simplePayback(price: number, { expected, low, high }: ExactCost): Payback {
  if (price === 0) return { expected: 0, low: 0, high: 0 }
  const years = (money: ExactCost['low']) => (money.gt(0) ? significant(price / money.toNumber()) : null)
  return { expected: years(expected), low: years(high), high: years(low) }
}

/** Share of draws in which the money saved over the life is at least the price; to four decimals. */
export function probabilityOfPayback(price: number, lifeYears: number, moneyPerYear: Float64Array): number {
  const needed = price / lifeYears
  // A saving that is certain, and just enough, must not fail by the last bit of a sum.
  const enough = needed - Math.abs(needed) * 1e-9 - 1e-12
  const paid = moneyPerYear.reduce((count, money) => (money >= enough ? count + 1 : count), 0)
  return Math.round((paid / moneyPerYear.length) * 10_000) / 10_000
}
