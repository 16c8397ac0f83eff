import type { Term } from '../quantity/term.ts'
import { componentsOf, taxFactor } from './componentsOf.ts'
import { evenPrice, scheduledPrice } from './meanPrice.ts'
import { type Money, ZERO } from './money.ts'
import { type HoursOfWeek, REFERENCE_YEAR, type Tariff } from './tariff.ts'

/** One mode's energy, and the hours of the week that it falls in; spread over all of them where none are stated. */
export interface PricedMode {
  /** kWh/yr */
  readonly energy: Term
  readonly schedule: readonly HoursOfWeek[] | null
}

/**
 * By how much a kWh at stated hours of the week is dearer than one spread evenly, with taxes, in currency/kWh; below
 * zero where it is cheaper. Zero without a price by time.
 */
export function scheduleSurcharge(tariff: Tariff, schedule: PricedMode['schedule']): Money {
  if (schedule === null) return ZERO
  const year = tariff.referenceYear ?? REFERENCE_YEAR
  return componentsOf(tariff).reduce((sum, price) => {
    if (price.kind !== 'time-of-use') return sum
    const surcharge = scheduledPrice(price, year, schedule).minus(evenPrice(price, year))
    return sum.plus(surcharge.times(taxFactor(tariff, price.name)))
  }, ZERO)
}
