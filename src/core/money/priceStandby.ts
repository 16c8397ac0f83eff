import { type Interval, intervalOfSum } from '../quantity/intervalOfSum.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import { scaleTerm, termMean } from '../quantity/term.ts'
import { type ExactCost, Money, ZERO } from './money.ts'
import { type PricedMode, scheduleSurcharge } from './pricedMode.ts'
import { type HouseholdUse, type StandbyPrice, standbyPrice } from './standbyPrice.ts'
import type { StandbyEnergy } from './standbyEnergy.ts'
import type { Tariff } from './tariff.ts'

/** What the standby of one household costs a year, before rounding. */
export interface StandbyCost {
  readonly price: StandbyPrice
  readonly total: ExactCost
  /** The part of one device; the parts' means add up to that of the total. */
  ofDevice(energy: Interval, modes: readonly PricedMode[]): ExactCost
  /** Currency a kWh, taxes included, for each mode in order. */
  readonly pricesPerKwh: readonly Money[]
}

/**
 * Cost of standby a year, in the tariff's currency.
 *
 *   price of a mode = price of standby (standbyPrice.ts) + what its hours of the week are dearer (pricedMode.ts)
 *   device          = sum over its modes of price x energy
 *   total           = sum over all modes; its mean at the margin is that of the whole standby, not of each device alone
 *
 * A device bears the total in proportion to its energy at the total's own price, so that no device depends on the
 * order that they are listed in. Interval: the cost grows with the energy, so its ends are those of the energy, put through
 * the cost. Exact where one price or one curve holds for all modes; where both a curve and stated hours do, and where the
 * price is uncertain beside a curve, to first order: the ends of the cost at the mean price, moved by what the curve
 * departs from it there.
 *
 * @param energy of all modes together, kWh/yr
 */
export function priceStandby(
  tariff: Tariff,
  use: HouseholdUse,
  energy: StandbyEnergy,
  modes: readonly PricedMode[],
  coverage: number,
): StandbyCost {
  const price = standbyPrice(tariff, use, energy)
  const priceAt = onceForEach((schedule) =>
    Money.max(ZERO, price.perKwh.plus(scheduleSurcharge(tariff, schedule))),
  )
  const priceOf = ({ schedule }: PricedMode) => priceAt(schedule)
  const costOf = (kwh: Interval, some: readonly PricedMode[]) =>
    proportional(kwh, some, some.map(priceOf), price.relativeUncertainty, coverage)
  return {
    price,
    total: bent(costOf(energy, modes), price, energy),
    ofDevice: costOf,
    pricesPerKwh: modes.map(priceOf),
  }
}

/** Sum of energies at prices of their own. */
function proportional(
  energy: Interval,
  modes: readonly PricedMode[],
  prices: readonly Money[],
  relativeUncertainty: number,
  coverage: number,
): ExactCost {
  const first = prices[0] ?? ZERO
  const outer = relativeUncertainty > 0 ? rectangularSum(1, relativeUncertainty) : undefined
  if (prices.every((price) => price === first || price.eq(first))) {
    const { low, high } = outer
      ? intervalOfSum(
          modes.map((mode) => mode.energy),
          coverage,
          outer,
        )
      : energy
    return { expected: first.times(energy.expected), low: first.times(low), high: first.times(high) }
  }
  const terms = modes.map((mode, i) => scaleTerm(mode.energy, prices[i]!.toNumber()))
  const { low, high } = intervalOfSum(terms, coverage, outer)
  const expected = modes.reduce((sum, mode, i) => sum.plus(prices[i]!.times(termMean(mode.energy))), ZERO)
  return { expected, low: new Money(low), high: new Money(high) }
}

/** Moves the ends from the mean price to where the curve has them. */
function bent(cost: ExactCost, { curve, perKwh }: StandbyPrice, energy: Interval): ExactCost {
  if (!curve) return cost
  const off = (kwh: number) => curve(kwh).minus(perKwh.times(kwh))
  const low = Money.max(ZERO, cost.low.plus(off(energy.low)))
  return { expected: cost.expected, low, high: Money.max(low, cost.high.plus(off(energy.high))) }
}

/** Most modes have no stated hours, and those that have share a few. */
function onceForEach<T>(
  work: (schedule: PricedMode['schedule']) => T,
): (schedule: PricedMode['schedule']) => T {
  const known = new Map<string, T>()
  const unscheduled = work(null)
  return (schedule) => {
    if (schedule === null) return unscheduled
    const key = JSON.stringify(schedule)
    const result = known.get(key) ?? work(schedule)
    known.set(key, result)
    return result
  }
}
