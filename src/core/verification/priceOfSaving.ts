import { marginalCost } from '../money/marginalCost.ts'
import { type ExactCost, Money, ZERO } from '../money/money.ts'
import { basisInWords } from '../money/priceBasis.ts'
import { type PricedMode, scheduleSurcharge } from '../money/pricedMode.ts'
import { type HouseholdUse, type StandbyPrice, standbyPrice } from '../money/standbyPrice.ts'
import { daysOfYear } from '../money/daysOfYear.ts'
import { REFERENCE_YEAR, type Tariff } from '../money/tariff.ts'
import type { Interval } from '../quantity/interval.ts'

/** What a kWh that is saved is worth. */
export interface PriceOfSaving {
  readonly price: StandbyPrice
  readonly basis: string
  /** Currency a kWh of a mode with these hours of the week. */
  ofMode(schedule: PricedMode['schedule']): number
  /** The ends of the cost of all that was saved, from those at the mean price. */
  bent(cost: ExactCost, energy: Interval): ExactCost
}

const MARGIN =
  'At the margin: the bill of the household’s annual use less the bill of that use without what was saved, lines not rounded; the annual use counts as the one before the change. Each device bears the total in proportion to its energy, so that no device depends on the order and all add up to the total.'

/**
 * The price of what was saved, D kWh/yr. Where a kWh costs the same however many came before it, that price; else at the
 * margin of the household's use U before the change:
 *
 *   cost(D) = B(U) - B(U - D)       B the bill; below zero where D is
 *
 * The mean price is cost(D) / D at the mean of D; what a block's edge adds to the mean by the spread of D is left out,
 * so that devices add up. The ends of the total are those of D put through the cost.
 * @param energy of all that was saved, kWh/yr
 */
export function priceOfSaving(tariff: Tariff, use: HouseholdUse, energy: Interval): PriceOfSaving {
  const alone = standbyPrice(tariff, use, NOTHING)
  const surcharges = new Map<string, Money>()
  const surchargeOf = (schedule: PricedMode['schedule']) => {
    const key = JSON.stringify(schedule)
    const known = surcharges.get(key) ?? scheduleSurcharge(tariff, schedule)
    surcharges.set(key, known)
    return known
  }
  const curve = alone.curve && costOfSaved(tariff, use)
  const mean = Math.abs(energy.expected) < SMALL_KWH ? SMALL_KWH : energy.expected
  const perKwh = curve ? curve(mean).div(mean) : alone.perKwh
  return {
    price: { ...alone, perKwh },
    basis: curve ? MARGIN : basisInWords(alone.basis, tariff),
    ofMode: (schedule) => Money.max(ZERO, perKwh.plus(surchargeOf(schedule))).toNumber(),
    bent(cost, { low, high }) {
      if (!curve) return cost
      const off = (kwh: number) => curve(kwh).minus(perKwh.times(kwh))
      return { expected: cost.expected, low: cost.low.plus(off(low)), high: cost.high.plus(off(high)) }
    },
  }
}

const NOTHING = { expected: 0, low: 0, high: 0, terms: [], endsAt: () => ({ low: 0, high: 0 }) }
/** Nothing has no price; the next little bit has. */
const SMALL_KWH = 0.001

/** B(U) - B(U - D), for D of either sign; currency a year. Only where U is known, as it is wherever a price has a curve. */
function costOfSaved(tariff: Tariff, { annualUseKwh, monthlyUseKwh }: HouseholdUse): (kwh: number) => Money {
  const use = annualUseKwh!
  const saved = marginalCost(tariff, use, monthlyUseKwh)
  return (kwh) => {
    if (kwh >= 0) return saved(kwh)
    const more = -kwh
    return marginalCost(tariff, use + more, grown(monthlyUseKwh, more, tariff))(more).negated()
  }
}

/** The use by month with so many kWh more, even over the days. */
function grown(monthly: readonly number[] | null, kwh: number, tariff: Tariff): readonly number[] | null {
  if (!monthly) return null
  const days = daysOfYear(tariff.referenceYear ?? REFERENCE_YEAR)
  return monthly.map(
    (use, i) => use + (kwh * days.filter(({ month }) => month === i + 1).length) / days.length,
  )
}
