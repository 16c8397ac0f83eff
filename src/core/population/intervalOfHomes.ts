import { type Interval, intervalOfSum } from '../quantity/intervalOfSum.ts'
import { latticeQuantile } from '../quantity/latticeQuantile.ts'
import { spreadOfSum } from '../quantity/spreadOfSum.ts'
import { type Term, termMean, termVariance } from '../quantity/term.ts'
import { treeOf } from '../quantity/treeOf.ts'

/** With so many homes a sum is smooth enough for the lattice that serves households. */
const SMOOTH = 60
const STEPS_IN_DEVIATION = 100
const REACH = 8
const NO_CORRECTION = 1 / 12

/**
 * Mean and coverage interval of a sum over homes. A few homes have a kind of device or not, so that their sum has humps and
 * a good part of its probability at single values; a lattice of a hundredth of the standard deviation resolves them.
 */
export function intervalOfHomes(terms: readonly Term[], homes: number, coverage: number): Interval {
  const variance = terms.reduce((sum, term) => sum + termVariance(term), 0)
  if (homes > SMOOTH || variance === 0) return intervalOfSum(terms, coverage)
  const expected = terms.reduce((sum, term) => sum + termMean(term), 0)
  const tree = treeOf(terms)
  const step = Math.sqrt(variance) / STEPS_IN_DEVIATION
  const tail = (1 - coverage) / 2
  for (let reach = REACH; ; reach *= 2) {
    const limit = Math.ceil((expected - tree.constant + reach * Math.sqrt(variance)) / step)
    const lattice = spreadOfSum(tree, step, limit)
    // Steps as fine as these need no correction for their width, which would not fit where probability sits at one value.
    lattice.smear = NO_CORRECTION
    const [low, high] = [latticeQuantile(lattice, tail), latticeQuantile(lattice, 1 - tail)]
    if (low === null || high === null) continue
    return { expected, low: Math.max(0, tree.constant + low * step), high: tree.constant + high * step }
  }
}
