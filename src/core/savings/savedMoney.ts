import { type ExactCost, Money } from '../money/money.ts'
import type { CostOfStandby } from '../money/marginalCost.ts'
import type { Interval } from '../quantity/interval.ts'
import { intervalOfDraws } from '../quantity/monteCarlo.ts'
import type { MeanSaving } from './meanSaving.ts'
import type { PlanHousehold } from './planHousehold.ts'
import type { SavingDraws } from './savingDraws.ts'

/** Parts into which the span of a saving is cut where the tariff has blocks; the cost is taken as straight in each. */
const CUTS = 64

/** Money that a saving is worth, currency/yr: in each draw, and its mean and interval. */
export interface SavedMoney extends ExactCost {
  readonly draws: Float64Array
}

/**
 * The bill with the standby as it is less the bill without what is saved, at the margin: what is saved is the last that the
 * household used, so it is worth core/money's M(saved). Hours with a price of their own count by what they are dearer.
 *
 * The mean is exact where a kWh has one price; where there are blocks, what is straight is, and what an edge adds is
 * taken from the draws.
 * @param interval of the energy saved, kWh/yr
 * @param priceDraws relative, of mean 1; null where the price is certain
 */
export function savedMoney(
  { kwh, surcharge }: SavingDraws,
  mean: MeanSaving,
  interval: Interval,
  { price, perKwh, resolved }: PlanHousehold,
  priceDraws: Float64Array | null,
): SavedMoney {
  if (!price.curve && !surcharge && !priceDraws) return atOnePrice(kwh, interval, perKwh)
  const worth = price.curve ? worthOnCurve(kwh, price.curve) : proportional(perKwh)
  const draws = kwh.map(worth.of)
  const bend = price.curve ? meanOf(kwh.map((x) => worth.of(x) - worth.straight(x))) : 0
  if (surcharge) for (let i = 0; i < draws.length; i++) draws[i]! += surcharge[i]!
  if (priceDraws) for (let i = 0; i < draws.length; i++) draws[i]! *= priceDraws[i]!
  const { low, high } = intervalOfDraws(draws.toSorted(), resolved.coverage)
  const expected = worth.straight(mean.kwh) + bend + (mean.money - mean.kwh * perKwh)
  return { draws, expected: new Money(expected), low: new Money(low), high: new Money(high) }
}

/** Where one certain price holds, money is energy on another scale. */
function atOnePrice(kwh: Float64Array, { expected, low, high }: Interval, perKwh: number): SavedMoney {
  const money = (saved: number) => new Money(saved).times(perKwh)
  return {
    draws: kwh.map((saved) => saved * perKwh),
    expected: money(expected),
    low: money(low),
    high: money(high),
  }
}

interface Worth {
  readonly of: (kwh: number) => number
  /** The straight line through both ends of the span. */
  readonly straight: (kwh: number) => number
}

const proportional = (perKwh: number): Worth => {
  const straight = (kwh: number) => kwh * perKwh
  return { of: straight, straight }
}

function worthOnCurve(kwh: Float64Array, curve: CostOfStandby): Worth {
  const [from, to] = kwh.reduce(
    ([least, most], x) => [Math.min(least, x), Math.max(most, x)],
    [Infinity, -Infinity],
  )
  const width = (to - from) / CUTS
  if (width <= Math.abs(to) * 1e-12) {
    const only = curve(to).toNumber()
    return { of: () => only, straight: () => only }
  }
  const knots = Float64Array.from({ length: CUTS + 1 }, (_, i) => curve(from + i * width).toNumber())
  const slope = (knots[CUTS]! - knots[0]!) / (to - from)
  return {
    of: (x) => {
      const place = Math.min(CUTS - 1, Math.floor((x - from) / width))
      return knots[place]! + ((x - from) / width - place) * (knots[place + 1]! - knots[place]!)
    },
    straight: (x) => knots[0]! + slope * (x - from),
  }
}

const meanOf = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length
