import { billingPeriods } from './billingPeriods.ts'
import { componentsOf, taxFactor } from './componentsOf.ts'
import { evenPrice } from './meanPrice.ts'
import { Money, ZERO } from './money.ts'
import { type Block, type EnergyComponent, REFERENCE_YEAR, type Tariff } from './tariff.ts'

/** Whether a kWh costs the same however many came before it: no second block, no minimum. */
export const isLinear = (tariff: Tariff): boolean =>
  tariff.minimumCharge === undefined &&
  componentsOf(tariff).every(
    (price) =>
      price.kind !== 'block' || [price, ...(price.seasons ?? [])].every(({ blocks }) => blocks.length === 1),
  )

/**
 * The least and the most that one more kWh, even over the year, can cost with its taxes, whatever the household uses:
 * in the cheapest, and in the dearest block of every season. A minimum charge is left out of it.
 */
export function priceRange(tariff: Tariff): { readonly least: Money; readonly most: Money } {
  const total = (choose: (...prices: Money[]) => Money) =>
    componentsOf(tariff).reduce(
      (sum, component) =>
        sum.plus(priceOf(tariff, component, choose).times(taxFactor(tariff, component.name))),
      ZERO,
    )
  return {
    least: total((...prices) => Money.min(...prices)),
    most: total((...prices) => Money.max(...prices)),
  }
}

function priceOf(tariff: Tariff, component: EnergyComponent, choose: (...prices: Money[]) => Money): Money {
  if (component.kind === 'flat') return new Money(component.pricePerKwh)
  if (component.kind === 'time-of-use') return evenPrice(component, tariff.referenceYear ?? REFERENCE_YEAR)
  const chosen = (blocks: readonly Block[]) =>
    choose(...blocks.map(({ pricePerKwh }) => new Money(pricePerKwh)))
  return billingPeriods(tariff, null)
    .flatMap((period) => period.partsOf(component).map((part) => ({ ...part, of: period.daysInYear })))
    .reduce((sum, { days, blocks, of }) => sum.plus(chosen(blocks).times(days).div(of)), ZERO)
}
