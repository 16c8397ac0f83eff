import { intervalOfSum, type Interval } from '../../../../src/core/quantity/intervalOfSum.ts'
import { distributionOf, type Recipe, termsOf } from './recipe.ts'
import { nthSmallest } from './nthSmallest.ts'
import { stratifiedDraws } from './stratifiedDraws.ts'

/** Something of a household's total times the price, and of its first device. */
export interface OfHousehold<T> {
  readonly total: T
  readonly first: T
}

/** How far the core is off: the ends in shares of the interval's width, the mean in shares of itself. */
export interface Errors {
  readonly low: number
  readonly high: number
  readonly mean: number
}

/** What the oracle draws. */
export function drawnIntervals(recipe: Recipe, seed: number): OfHousehold<Interval> {
  const drawn = stratifiedDraws(recipe, seed)
  return {
    total: intervalOf(drawn.total, recipe.coverage),
    first: intervalOf(drawn.first, recipe.coverage),
  }
}

/** What the core makes of the same household, beside that. */
export function compare(
  { devices, coverage, outer, voltageHalfWidth }: Recipe,
  drawn: OfHousehold<Interval>,
): OfHousehold<Errors> {
  const total = intervalOfSum(
    termsOf(devices.flat(), voltageHalfWidth),
    coverage,
    outer ? distributionOf(outer) : undefined,
  )
  const first = intervalOfSum(termsOf(devices[0]!, voltageHalfWidth), coverage)
  return { total: errorsOf(total, drawn.total), first: errorsOf(first, drawn.first) }
}

export function errorsOf(found: Interval, wanted: Interval): Errors {
  const width = wanted.high - wanted.low
  return {
    low: Math.abs(found.low - wanted.low) / width,
    high: Math.abs(found.high - wanted.high) / width,
    mean: Math.abs(found.expected / wanted.expected - 1),
  }
}

/** Mean and coverage interval of draws, which are put into another order. */
function intervalOf(draws: Float64Array, coverage: number): Interval {
  const tail = (1 - coverage) / 2
  return {
    expected: draws.reduce((sum, draw) => sum + draw, 0) / draws.length,
    low: nthSmallest(draws, Math.floor(tail * draws.length)),
    high: nthSmallest(draws, Math.floor((1 - tail) * draws.length)),
  }
}
