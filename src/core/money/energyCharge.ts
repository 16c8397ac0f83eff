import type { BillingPeriod, SeasonPart } from './billingPeriods.ts'
import { evenPrice } from './meanPrice.ts'
import { Money, ZERO } from './money.ts'
import { type BlockPrice, type EnergyComponent, REFERENCE_YEAR, type Tariff } from './tariff.ts'

/** What one step of a price comes to in one period, before any rounding. */
export interface ChargeLine {
  readonly component: string
  readonly kwh: Money
  readonly pricePerKwh: Money
  readonly amount: Money
}

/**
 * What one component charges for a period's energy, step by step.
 *
 * Blocks fill from the first on. In a month that a season begins or ends in, the energy is spread evenly over the days,
 * and each part of the month has blocks in proportion to its days. Blocks by the day see a month's energy spread evenly
 * over its days. A time-of-use price sees energy spread evenly over the hours.
 */
export function energyCharge(
  tariff: Tariff,
  component: EnergyComponent,
  period: BillingPeriod,
  kwh: Money,
): ChargeLine[] {
  const line = (energy: Money, price: Money): ChargeLine => ({
    component: component.name,
    kwh: energy,
    pricePerKwh: price,
    amount: energy.times(price),
  })
  if (component.kind === 'flat') return [line(kwh, new Money(component.pricePerKwh))]
  if (component.kind === 'time-of-use') {
    const year = tariff.referenceYear ?? REFERENCE_YEAR
    return [line(kwh, evenPrice(component, year, period.month ?? undefined))]
  }
  return period
    .partsOf(component)
    .flatMap((part) =>
      fill(part, scaleOf(component, part, period), kwh.times(part.days).div(period.days)).map(
        ([energy, price]) => line(energy, price),
      ),
    )
}

/** By how much a block of the stated size is longer or shorter in a part of a period. */
function scaleOf({ per }: BlockPrice, { days }: SeasonPart, period: BillingPeriod): Money {
  if (per === 'day') return new Money(days)
  return new Money(days).div(per === 'month' ? period.days : period.daysInYear)
}

function fill({ blocks }: SeasonPart, scale: Money, kwh: Money): [energy: Money, price: Money][] {
  let from = ZERO
  const lines: [Money, Money][] = []
  for (const { upToKwh, pricePerKwh } of blocks) {
    const to = upToKwh === undefined ? kwh : Money.min(kwh, scale.times(upToKwh))
    if (to.gt(from)) lines.push([to.minus(from), new Money(pricePerKwh)])
    from = Money.max(from, to)
  }
  return lines
}
