import { intervalOfSum, type Interval } from '../../../../src/core/quantity/intervalOfSum.ts'
import { distributionOf, type Recipe, termsOf } from './recipe.ts'
import { nthSmallest } from './nthSmallest.ts'
import { stratifiedDraws } from './stratifiedDraws.ts'

/** How far the core is off: the ends in shares of the interval's width, the mean in shares of itself. */
export interface Errors {
  readonly low: number
  readonly high: number
  readonly mean: number
}

/** Of the total times the price, and of the first device. */
export function compare(recipe: Recipe, seed: number): { readonly total: Errors; readonly first: Errors } {
  const { devices, coverage, outer, voltageHalfWidth } = recipe
  const drawn = stratifiedDraws(recipe, seed)
  const total = intervalOfSum(
    termsOf(devices.flat(), voltageHalfWidth),
    coverage,
    outer ? distributionOf(outer) : undefined,
  )
  const first = intervalOfSum(termsOf(devices[0]!, voltageHalfWidth), coverage)
  return {
    total: errorsOf(total, intervalOf(drawn.total, coverage)),
    first: errorsOf(first, intervalOf(drawn.first, coverage)),
  }
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
export function intervalOf(draws: Float64Array, coverage: number): Interval {
  const tail = (1 - coverage) / 2
  return {
    expected: draws.reduce((sum, draw) => sum + draw, 0) / draws.length,
    low: nthSmallest(draws, Math.floor(tail * draws.length)),
    high: nthSmallest(draws, Math.floor((1 - tail) * draws.length)),
  }
}
