import { type BillingPeriod, billingPeriods } from './billingPeriods.ts'
import { times } from './billOf.ts'
import { componentsOf, minimumTaxFactor, taxFactor } from './componentsOf.ts'
import { energyCharge } from './energyCharge.ts'
import { Money, ZERO } from './money.ts'
import type { Tariff } from './tariff.ts'

/** What a standby load of so many kWh a year costs: currency a year. */
export type CostOfStandby = (kwh: number) => Money

/**
 * Standby priced at the margin: the bill with it less the bill without it,
 *
 *   M(S) = sum over periods of B(U) - B(U - S)       U the household's use, S the standby, in the period
 *
 * with B the energy lines, the minimum and the taxes on them. Fixed charges fall out. Standby is even over the days of
 * the year; the household's use goes by its months. Lines are not rounded here: a cent up or down on every line is no
 * price of standby. Where standby exceeds the use of a period, the use is taken to be at least the standby. M grows
 * with S, since no price is negative.
 */
export function marginalCost(
  tariff: Tariff,
  annualUseKwh: number,
  monthlyUse: readonly number[] | null,
): CostOfStandby {
  const periods = alike(billingPeriods(tariff, monthlyUse), tariff)
  const chargeOf = energyBill(tariff)
  const use = new Money(annualUseKwh)
  return (kwh) =>
    periods.reduce((sum, [period, count]) => {
      const standby = period.evenShare.times(kwh)
      const uses = Money.max(period.useShare.times(use), standby)
      return sum.plus(
        chargeOf(period, uses)
          .minus(chargeOf(period, uses.minus(standby)))
          .times(count),
      )
    }, ZERO)
}

/** Energy lines of a period with their taxes, and what fills them up to the minimum. */
function energyBill(tariff: Tariff): (period: BillingPeriod, kwh: Money) => Money {
  const components = componentsOf(tariff).map((component) => ({
    component,
    tax: taxFactor(tariff, component.name),
  }))
  const { minimumCharge } = tariff
  const minimumTax = minimumTaxFactor(tariff)
  return (period, kwh) => {
    let [bare, taxed] = [ZERO, ZERO]
    for (const { component, tax } of components)
      for (const { amount } of energyCharge(tariff, component, period, kwh)) {
        bare = bare.plus(amount)
        taxed = taxed.plus(amount.times(tax))
      }
    if (!minimumCharge) return taxed
    const lacking = times(minimumCharge.amount, minimumCharge.per, period).minus(bare)
    return lacking.gt(0) ? taxed.plus(lacking.times(minimumTax)) : taxed
  }
}

/** Periods that are priced the same, once each, with their number: months of as many days, use and blocks. */
function alike(periods: readonly BillingPeriod[], tariff: Tariff): [BillingPeriod, number][] {
  const components = componentsOf(tariff)
  const byTime = components.some(({ kind }) => kind === 'time-of-use')
  const found = new Map<string, [BillingPeriod, number]>()
  for (const period of periods) {
    const parts = components.map((price) => (price.kind === 'block' ? period.partsOf(price) : null))
    const key = JSON.stringify([period.days, period.useShare, parts, byTime && period.month])
    const known = found.get(key)
    if (known) known[1] += 1
    else found.set(key, [period, 1])
  }
  return [...found.values()]
}
