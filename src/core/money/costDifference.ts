import { type Interval, intervalOfSum } from '../quantity/intervalOfSum.ts'
import { normalQuantile } from '../quantity/normal.ts'
import { scaleTerm, type Term } from '../quantity/term.ts'
import { varianceOfSum } from '../quantity/varianceOfSum.ts'
import type { ExactCost, Money } from './money.ts'
import type { StandbyCost } from './priceStandby.ts'
import type { StandbyEnergy } from './standbyEnergy.ts'

/** Probabilities at which the difference of two curves is looked at; between them it is taken as straight. */
const STEPS = 16

/**
 * What standby costs more under one tariff than under another, with an interval of its own: the energy is the same, so
 * that it does not blur the difference, and only how sure each price is does.
 *
 * - Prices a kWh for each mode: the sum over modes of (price - other price) x energy, by intervalOfSum; where some are
 *   dearer and some cheaper, mean and variance are exact and the ends those of a normal distribution (GUM G.6.6).
 * - A curve: its difference from the other at 32 quantiles of the energy, sorted; stated hours of the week count by what
 *   they add on average.
 * - Uncertain prices: each tariff's own, independent of the other's, added in quadrature to the ends (first order).
 */
export function costDifference(
  cost: StandbyCost,
  other: StandbyCost,
  energy: StandbyEnergy,
  coverage: number,
): ExactCost {
  const expected = cost.total.expected.minus(other.total.expected)
  const byEnergy =
    cost.price.curve || other.price.curve
      ? alongCurves(cost, other, energy, coverage)
      : alongPrices(cost, other, energy.terms, coverage)
  const spread = Math.hypot(
    ...[cost, other].map((one) => coverage * one.price.relativeUncertainty * one.total.expected.toNumber()),
  )
  return {
    expected,
    low: widened(expected, byEnergy.low, spread, -1),
    high: widened(expected, byEnergy.high, spread, 1),
  }
}

function widened(expected: Money, end: number, spread: number, side: 1 | -1): Money {
  return expected.plus(side * Math.hypot(Math.max(0, side * (end - expected.toNumber())), spread))
}

type Ends = Omit<Interval, 'expected'>

function alongPrices(cost: StandbyCost, other: StandbyCost, terms: readonly Term[], coverage: number): Ends {
  const prices = cost.pricesPerKwh.map((price, i) => price.minus(other.pricesPerKwh[i]!).toNumber())
  const sums = (sign: 1 | -1) =>
    intervalOfSum(
      terms.map((term, i) => scaleTerm(term, sign * prices[i]!)),
      coverage,
    )
  if (prices.every((price) => price >= 0)) return sums(1)
  if (prices.every((price) => price <= 0)) {
    const { low, high } = sums(-1)
    return { low: -high, high: -low }
  }
  const { total } = varianceOfSum(terms.map((term, i) => scaleTerm(term, prices[i]!)))
  const mean = cost.total.expected.minus(other.total.expected).toNumber()
  const half = normalQuantile((1 + coverage) / 2) * Math.sqrt(total)
  return { low: mean - half, high: mean + half }
}

function alongCurves(cost: StandbyCost, other: StandbyCost, energy: StandbyEnergy, coverage: number): Ends {
  const mean = energy.expected
  const [here, there] = [curveOf(cost, mean), curveOf(other, mean)]
  const quantiles = Array.from({ length: STEPS }, (_, i) => energy.endsAt((i + 0.5) / STEPS))
    .flatMap(({ low, high }) => [low, high])
    .map((kwh) => here(kwh).minus(there(kwh)).toNumber())
    .sort((a, b) => a - b)
  return { low: at(quantiles, (1 - coverage) / 2), high: at(quantiles, (1 + coverage) / 2) }
}

/** Cost of any amount of energy; stated hours of the week count by what they add on average. */
function curveOf({ price: { curve, perKwh }, total }: StandbyCost, mean: number): (kwh: number) => Money {
  const surcharge = mean > 0 ? total.expected.div(mean).minus(perKwh) : perKwh.times(0)
  return (kwh) => (curve ? curve(kwh) : perKwh.times(kwh)).plus(surcharge.times(kwh))
}

/** A quantile of equally likely values, each in the middle of its share of the probability. */
function at(sorted: readonly number[], p: number): number {
  const place = Math.min(Math.max(p * sorted.length - 0.5, 0), sorted.length - 1)
  const below = Math.floor(place)
  const [here, next] = [sorted[below]!, sorted[Math.ceil(place)]!]
  return here + (place - below) * (next - here)
}
