import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Distribution } from './distribution.ts'
import type { Interval } from './intervalOfSum.ts'
import type { Term } from './term.ts'

/**
 * The same quantity as intervalOfSum, by drawing (JCGM 101:2008, 7): the oracle of the tests, and the method for
 * those who ask for it. Follows the model to the letter: reading x (1 + gain) + counts, cut off at zero.
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
  const totals = monteCarloDraws(terms, draws, seed, outer)
  const expected = totals.reduce((sum, total) => sum + total, 0) / draws
  totals.sort()
  const tail = (1 - coverage) / 2
  return { expected, low: orderStatistic(totals, tail), high: orderStatistic(totals, 1 - tail) }
}

/** Linear interpolation between order statistics at (draws - 1) p. */
function orderStatistic(sorted: Float64Array, p: number): number {
  const place = (sorted.length - 1) * p
  const below = Math.floor(place)
  const next = sorted[Math.min(below + 1, sorted.length - 1)]!
  return sorted[below]! + (place - below) * (next - sorted[below]!)
}

export function monteCarloDraws(
  terms: readonly Term[],
  draws: number,
  seed: number,
  outer?: Distribution,
): Float64Array {
  const generator = xoroshiro128plus(seed)
  const uniform = () => ((generator.next() >>> 0) + 0.5) / 0x1_0000_0000
  const totals = new Float64Array(draws)
  for (let i = 0; i < draws; i++) {
    const gains = new Map<string, number>()
    const shares = new Map<string, number>()
    let total = 0
    for (const term of terms) {
      let value = term.coefficient
      for (const factor of term.factors) value *= factor.quantile(uniform())
      if (term.shared)
        value *= once(shares, term.shared.key, () => term.shared!.distribution.quantile(uniform()))
      if (term.metered) {
        const { value: reading, gain, counts, meter } = term.metered
        const error = meter === null ? 2 * uniform() - 1 : once(gains, meter, () => 2 * uniform() - 1)
        value *= Math.max(0, reading * (1 + gain * error) + counts * (2 * uniform() - 1))
      }
      total += value
    }
    totals[i] = outer ? total * outer.quantile(uniform()) : total
  }
  return totals
}

function once(known: Map<string, number>, key: string, draw: () => number): number {
  const value = known.get(key) ?? draw()
  known.set(key, value)
  return value
}
