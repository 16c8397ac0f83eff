import type { Distribution } from './distribution.ts'
import { intervalOfDraws, monteCarloDraws } from './monteCarlo.ts'
import type { Drawing, Term } from './term.ts'

/**
 * Monte Carlo with so many draws from one seed. The last sum's draws are kept, since the price of a block tariff asks
 * for many intervals of one sum.
 */
export function drawingOf(draws: number, seed: number): Drawing {
  let last: { terms: readonly Term[]; outer: Distribution | undefined; sorted: Float64Array } | null = null
  return {
    draws,
    seed,
    intervalOf(terms, coverage, outer) {
      if (last?.terms !== terms || last.outer !== outer)
        last = { terms, outer, sorted: monteCarloDraws(terms, draws, seed, outer).sort() }
      return intervalOfDraws(last.sorted, coverage)
    },
  }
}
