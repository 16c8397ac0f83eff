import type { Interval } from '../quantity/intervalOfSum.ts'
import type { Term } from '../quantity/term.ts'
import { timesFactor } from '../quantity/timesFactor.ts'
import type { Tariff } from './tariff.ts'

/**
 * What a year's energy costs, in the tariff's currency.
 *
 * `flat`: cost = energy x price; the price is exact unless a relative uncertainty is given. Block and time-of-use
 * tariffs get their own case here.
 *
 * @param energy the energy's mean and interval, kWh/yr
 * @param terms what the energy is the sum of; used where the price is uncertain
 */
export function priceEnergy(
  energy: Interval,
  terms: readonly Term[],
  coverage: number,
  tariff: Tariff,
): Interval {
  switch (tariff.kind) {
    case 'flat':
      return timesFactor(energy, terms, coverage, tariff.pricePerKwh, tariff.relativeUncertainty ?? 0)
  }
}
