import { Decimal } from 'decimal.js'
import type { BillingPeriod } from './billingPeriods.ts'
import { componentsOf, MINIMUM, taxesMinimum } from './componentsOf.ts'
import { energyCharge } from './energyCharge.ts'
import { minorUnit } from './minorUnit.ts'
import { Money, ZERO } from './money.ts'
import type { Tariff, TariffPeriod } from './tariff.ts'

export interface BillLine {
  readonly name: string
  readonly amount: Money
}

export interface Bill {
  readonly lines: readonly BillLine[]
  readonly taxes: readonly BillLine[]
  readonly total: Money
}

/**
 * The bill for one period's energy, as a supplier writes it: a line for each step of each price, the minimum, the
 * fixed charges, and the taxes on them, each line rounded to the minor unit where the tariff says so.
 *
 *   minimum: energy lines come to at least amount x days, or x months
 */
export function billOf(tariff: Tariff, period: BillingPeriod, kwh: Money): Bill {
  const rounded = rounder(tariff)
  const energy = componentsOf(tariff)
    .flatMap((component) => energyCharge(tariff, component, period, kwh))
    .map(({ component, amount }) => ({ name: component, amount: rounded(amount) }))
  const { minimumCharge, fixedCharges = [] } = tariff
  const lacking = minimumCharge
    ? rounded(times(minimumCharge.amount, minimumCharge.per, period)).minus(sumOf(energy))
    : ZERO
  const lines = [
    ...energy,
    ...(lacking.gt(0) ? [{ name: MINIMUM, amount: lacking }] : []),
    ...fixedCharges.map(({ name, amount, per }) => ({ name, amount: rounded(times(amount, per, period)) })),
  ]
  const taxes = (tariff.taxes ?? []).map(({ name, percent, on }) => {
    const isOn = (line: string) => (line === MINIMUM ? taxesMinimum(tariff, on) : !on || on.includes(line))
    const base = sumOf(lines.filter((line) => isOn(line.name)))
    return { name, amount: rounded(base.times(percent).div(100)) }
  })
  return { lines, taxes, total: sumOf(lines).plus(sumOf(taxes)) }
}

const sumOf = (lines: readonly BillLine[]) => lines.reduce((sum, { amount }) => sum.plus(amount), ZERO)

/** A sum that falls due once a day, month or year, for one period; of a yearly one a month bears a twelfth. */
export function times(amount: number, per: TariffPeriod, { days, months }: BillingPeriod): Money {
  if (per === 'day') return new Money(amount).times(days)
  return per === 'month' ? new Money(amount).times(months) : new Money(amount).times(months).div(12)
}

function rounder({ currency, rounding = 'none' }: Tariff): (amount: Money) => Money {
  if (rounding === 'none') return (amount) => amount
  const way = rounding === 'half-up' ? Decimal.ROUND_HALF_UP : Decimal.ROUND_HALF_EVEN
  return (amount) => amount.toDecimalPlaces(minorUnit(currency), way)
}
