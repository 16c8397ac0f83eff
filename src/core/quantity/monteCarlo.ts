import { type Distribution, isExact } from './distribution.ts'
import type { Interval } from './interval.ts'
import type { MeterReadingValue, Term } from './term.ts'
import { uniformStream, type UniformStream } from './uniformStream.ts'

/**
 * The same quantity as intervalOfSum, by drawing (JCGM 101:2008, 7): for those who ask for it, and to check by.
 * Follows the model to the letter: reading x (1 + gain) + counts, cut off at zero.
 *
 * @param draws number of draws; the ends of the interval have a standard error of about sqrt(p(1-p)/draws)/density
 * @param seed whole number; the same seed gives the same result
 */
export function monteCarloInterval(
  terms: readonly Term[],
  coverage: number,
  draws: number,
  seed: number,
  outer?: Distribution,
): Interval {
  return intervalOfDraws(monteCarloDraws(terms, draws, seed, outer).sort(), coverage)
}

/** @param sorted in ascending order */
export function intervalOfDraws(sorted: Float64Array, coverage: number): Interval {
  const expected = sorted.reduce((sum, total) => sum + total, 0) / sorted.length
  const tail = (1 - coverage) / 2
  return { expected, low: orderStatistic(sorted, tail), high: orderStatistic(sorted, 1 - tail) }
}

/** Linear interpolation between order statistics at (draws - 1) p. */
function orderStatistic(sorted: Float64Array, p: number): number {
  const place = (sorted.length - 1) * p
  const below = Math.floor(place)
  const next = sorted[Math.min(below + 1, sorted.length - 1)]!
  return sorted[below]! + (place - below) * (next - sorted[below]!)
}

/**
 * Draws of outer x (sum of terms). Every input has a stream of its own: each factor and the counts part of each term by
 * the term's `drawn.stream` (its place in `terms` where it has none), each meter's gain and each shared factor by its name.
 */
export function monteCarloDraws(
  terms: readonly Term[],
  draws: number,
  seed: number,
  outer?: Distribution,
): Float64Array {
  const totals = new Float64Array(draws)
  const product = new Float64Array(draws)
  terms.forEach((term, place) => {
    const own = term.drawn?.stream ?? place
    product.fill(term.coefficient)
    term.factors.forEach((factor, i) => multiply(product, factor, uniformStream(seed, `${own} factor ${i}`)))
    const { metered, shared } = term
    if (shared) multiply(product, shared.distribution, uniformStream(seed, `shared ${shared.key}`))
    if (metered) {
      const gain = metered.meter === null ? `${own} gain` : `meter ${metered.meter}`
      multiplyByReading(product, metered, uniformStream(seed, gain), uniformStream(seed, `${own} counts`))
    }
    for (let i = 0; i < draws; i++) totals[i]! += product[i]!
  })
  if (outer) multiply(totals, outer, uniformStream(seed, 'outer'))
  return totals
}

function multiply(values: Float64Array, factor: Distribution, uniform: UniformStream): void {
  if (isExact(factor)) for (let i = 0; i < values.length; i++) values[i]! *= factor.mean
  else for (let i = 0; i < values.length; i++) values[i]! *= factor.quantile(uniform())
}

function multiplyByReading(
  values: Float64Array,
  { value, gain, counts }: MeterReadingValue,
  ofGain: UniformStream,
  ofCounts: UniformStream,
): void {
  for (let i = 0; i < values.length; i++) {
    const reading = value * (1 + gain * (2 * ofGain() - 1)) + counts * (2 * ofCounts() - 1)
    values[i]! *= Math.max(0, reading)
  }
}
