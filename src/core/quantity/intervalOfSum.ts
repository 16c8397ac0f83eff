import { closedForm } from './closedForm.ts'
import { conditionedSums } from './conditionedSums.ts'
import type { Distribution } from './distribution.ts'
import type { Interval } from './interval.ts'
import { latticeEnds } from './latticeEnds.ts'
import { GrowingSum, type Sum } from './sumNode.ts'
import { type Term, termMean } from './term.ts'

export { type Interval, scaleInterval } from './interval.ts'

/**
 * Mean and coverage interval of outer x (sum of terms).
 *
 * The mean is exact. The interval comes from numerical convolution on a lattice, as deterministic as arithmetic is;
 * a single uncertain factor is answered in closed form. README.md of this folder gives method, error and speed. Terms
 * that are to be drawn are drawn instead.
 *
 * @param outer a factor that multiplies the whole sum, such as an uncertain price; independent of all terms
 * @param coverage probability of the interval, above 0 and below 1; the same probability is left out at either end
 */
export function intervalOfSum(terms: readonly Term[], coverage: number, outer?: Distribution): Interval {
  const drawing = terms[0]?.drawn?.drawing
  if (drawing) return drawing.intervalOf(terms, coverage, outer)
  const pLow = (1 - coverage) / 2
  const pHigh = 1 - pLow
  let expected = 0
  for (const term of terms) expected += termMean(term)
  if (outer) expected *= outer.mean
  const inner = conditionedSums(terms)
  const sums = outer ? inner.map((sum) => timesOuter(sum, outer)) : inner
  const closed = sums.length === 1 ? closedForm(sums[0]!, pLow, pHigh) : null
  const { low, high } = closed ?? latticeEnds(sums, expected, pLow, pHigh)
  return { expected, low, high }
}

function timesOuter(sum: Sum, outer: Distribution): Sum {
  const product = new GrowingSum()
  product.addScaled(outer, sum)
  return product
}
