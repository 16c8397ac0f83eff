import { expectedCost } from './expectedCost.ts'
import { type CostOfStandby, marginalCost } from './marginalCost.ts'
import { type Money, ZERO } from './money.ts'
import { isLinear, priceRange } from './priceRange.ts'
import type { StandbyEnergy } from './standbyEnergy.ts'
import type { Tariff } from './tariff.ts'

/** How a household uses energy as a whole; it decides which block standby falls in. */
export interface HouseholdUse {
  readonly annualUseKwh: number | null
  /** Use by month, January first; null where only the year is known. */
  readonly monthlyUseKwh: readonly number[] | null
}

/** What a kWh of standby costs, taxes included, where it is spread evenly over the year. */
export interface StandbyPrice {
  /** Mean cost over mean energy, currency/kWh. */
  readonly perKwh: Money
  /** Half-width of its uncertainty relative to it; rectangular, and shared by all devices. */
  readonly relativeUncertainty: number
  /** The cost of any amount; null where it is proportional to the energy. */
  readonly curve: CostOfStandby | null
  readonly basis: PriceBasis
}

/** How the price came about; see priceBasis.ts for the words. */
export type PriceBasis = 'one-price' | 'margin' | 'use-unknown'

/**
 * The price of standby: the tariff's own where a kWh costs the same however many came before it; else at the margin,
 * from the household's annual use. Without that use nobody knows which block standby falls in: any price between the
 * cheapest and the dearest block is then as likely as another, rectangular, and the same for all devices.
 */
export function standbyPrice(
  tariff: Tariff,
  { annualUseKwh, monthlyUseKwh }: HouseholdUse,
  energy: StandbyEnergy,
): StandbyPrice {
  const own = tariff.relativeUncertainty ?? 0
  if (isLinear(tariff))
    return { perKwh: priceRange(tariff).least, relativeUncertainty: own, curve: null, basis: 'one-price' }
  if (annualUseKwh !== null) {
    const curve = marginalCost(tariff, annualUseKwh, monthlyUseKwh)
    const perKwh =
      energy.expected > 0 ? expectedCost(curve, energy).div(energy.expected) : curve(SMALL_KWH).div(SMALL_KWH)
    return { perKwh, relativeUncertainty: own, curve, basis: 'margin' }
  }
  const { least, most } = priceRange(tariff)
  const middle = least.plus(most).div(2)
  const spread = middle.gt(0) ? most.minus(middle).div(middle).toNumber() : 0
  return {
    perKwh: middle.isZero() ? ZERO : middle,
    relativeUncertainty: Math.min(1, spread + own + spread * own),
    curve: null,
    basis: 'use-unknown',
  }
}

/** Nothing has no price; the next little bit has. */
const SMALL_KWH = 0.001
