import { type Interval, intervalOfSum } from '../quantity/intervalOfSum.ts'
import { latticeQuantile } from '../quantity/latticeQuantile.ts'
import { spreadOfSum } from '../quantity/spreadOfSum.ts'
import { type Term, termMean } from '../quantity/term.ts'
import { treeOf } from '../quantity/treeOf.ts'
import type { RungTerms } from './rungTerms.ts'

const REACH = 8
const NO_CORRECTION = 1 / 12

/**
 * Mean and coverage interval of a sum over homes. A few homes have a kind of device or not, so that their sum has humps and
 * a good part of its probability at single values; a lattice of a hundredth of the standard deviation resolves them.
 * @param terms those of the rung, or each times one factor that all share
 */
export function intervalOfHomes(
  { isGranular, variance, resolution: step }: RungTerms,
  terms: readonly Term[],
  coverage: number,
): Interval {
  if (!isGranular || variance === 0) return intervalOfSum(terms, coverage)
  const expected = terms.reduce((sum, term) => sum + termMean(term), 0)
  const tree = treeOf(terms)
  const tail = (1 - coverage) / 2
  for (let reach = REACH; ; reach *= 2) {
    const limit = Math.ceil((expected - tree.constant + reach * Math.sqrt(variance)) / step)
    const lattice = spreadOfSum(tree, step, limit)
    // Steps as fine as these need no correction for their width, which would not fit where probability sits at one value.
    lattice.smear = NO_CORRECTION
    const [low, high] = [latticeQuantile(lattice, tail), latticeQuantile(lattice, 1 - tail)]
    if (low === null || high === null) continue
    const end = (steps: number) => Math.max(0, tree.constant + steps * step)
    return { expected, low: end(low), high: end(high) }
  }
}
