import type { Interval } from '../quantity/intervalOfSum.ts'
import type { Term } from '../quantity/term.ts'
import { timesFactor } from '../quantity/timesFactor.ts'
import type { Tariff } from './tariff.ts'

/**
 * What a year's energy costs, in the tariff's currency.
 *
 *   flat: cost = energy x price          energy in kWh/yr, price in currency/kWh
 *
 * The price is exact unless a relative uncertainty is given. Block and time-of-use tariffs will be priced here too,
 * each by a function of its own.
 *
 * @param energy the energy's mean and interval, kWh/yr
 * @param terms what the energy is the sum of; used where the price is uncertain
 */
export function priceEnergy(
  energy: Interval,
  terms: readonly Term[],
  coverage: number,
  { pricePerKwh, relativeUncertainty = 0 }: Tariff,
): Interval {
  return timesFactor(energy, terms, coverage, pricePerKwh, relativeUncertainty)
}
