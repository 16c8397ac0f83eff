import { rectangularSum } from './rectangularSum.ts'
import type { GrowingSum, Sum } from './sumNode.ts'
import { type Term, termMean } from './term.ts'
import { treeOf } from './treeOf.ts'

/** Strata of a shared factor; with what is done inside of each, more would not show (README.md, table). */
const STRATA = 8

/**
 * A sum of terms as trees that stand for it in equal parts. One tree is enough unless a meter's readings stand both
 * inside and outside a shared factor, such as a meter that read power as well as current at the supply's assumed
 * voltage: meter and voltage then each reach over the other, and no tree holds both.
 *
 * The shared factor V is then cut into 8 strata of equal probability, and in each the rest is a tree without V:
 *
 *   V A + B  ~  v_i A + B + r_i E[A]        v_i the stratum's middle, r_i rectangular on +- half of its width
 *
 * What is left out, r_i (A - E[A]), is of second order. Strata of the factor and not of the meters' gains, because there
 * is one supply voltage and there may be a hundred such meters.
 */
export const conditionedSums: (terms: readonly Term[]) => readonly Sum[] = conditioned

function conditioned(terms: readonly Term[]): GrowingSum[] {
  const key = crossingKey(terms)
  if (key === null) return [treeOf(terms)]
  const { distribution } = terms.find(({ shared }) => shared?.key === key)!.shared!
  const sharedMean = terms.reduce(
    (sum, term) => (term.shared?.key === key ? sum + termMean(times(term, 1)) : sum),
    0,
  )
  return Array.from({ length: STRATA }, (_, i) => {
    const [from, to] = [distribution.quantile(i / STRATA), distribution.quantile((i + 1) / STRATA)]
    const within = terms.map((term) => (term.shared?.key === key ? times(term, (from + to) / 2) : term))
    return conditioned(within).map((sum) => {
      const half = (to - from) / 2
      sum.constant -= half * sharedMean
      sum.addProduct(sharedMean, [rectangularSum(half, half)])
      return sum
    })
  }).flat()
}

/** The term with a figure in place of its shared factor. */
function times({ coefficient, factors, metered }: Term, by: number): Term {
  return {
    coefficient: coefficient * by,
    factors,
    ...(metered && { metered }),
  }
}

/** A factor that several terms share and that a meter reaches over: its readings stand inside of it and outside. */
function crossingKey(terms: readonly Term[]): string | null {
  if (terms.length === 1 || !terms.some(({ shared }) => shared)) return null
  const uses = new Map<string, number>()
  for (const { shared } of terms) if (shared) uses.set(shared.key, (uses.get(shared.key) ?? 0) + 1)
  const keyOfMeter = new Map<string, string | null>()
  for (const { metered, shared } of terms) {
    if (!metered?.meter || metered.gain === 0) continue
    const key = shared && uses.get(shared.key)! > 1 ? shared.key : null
    const other = keyOfMeter.get(metered.meter)
    if (other !== undefined && other !== key) return other ?? key
    keyOfMeter.set(metered.meter, key)
  }
  return null
}
