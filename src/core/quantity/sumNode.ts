import { type Distribution, isExact } from './distribution.ts'
import { rectangularSum } from './rectangularSum.ts'
import { type MeterReadingValue, readingDistribution, type Term } from './term.ts'

/**
 * A sum of products as a tree, in which what is shared stands outside the sum that shares it:
 * `product` is coefficient x independent factors; `scaled` is a relative factor of mean 1 times a sum.
 */
export type SumNode =
  | { readonly kind: 'product'; readonly coefficient: number; readonly factors: readonly Distribution[] }
  | { readonly kind: 'scaled'; readonly by: Distribution; readonly of: Sum }

export interface Sum {
  /** What is added for certain; may be negative where a node's own mean stands twice. */
  readonly constant: number
  readonly nodes: readonly SumNode[]
}

/** Puts terms into a tree. Terms that share a factor go under it; inside, those that share a meter go under its gain. */
export function treeOf(terms: readonly Term[]): Sum {
  const [alone, groups] = grouped(terms, (term) => term.shared?.key ?? null)
  const parts = [byMeter(alone.map(withOwnShared))]
  for (const group of groups)
    parts.push({
      constant: 0,
      nodes: [{ kind: 'scaled', by: group[0]!.shared!.distribution, of: byMeter(group.map(withoutShared)) }],
    })
  return merged(parts)
}

const withoutShared = ({ coefficient, factors, metered }: Term): Term => ({
  coefficient,
  factors,
  ...(metered && { metered }),
})
const withOwnShared = (term: Term): Term =>
  term.shared ? { ...withoutShared(term), factors: [...term.factors, term.shared.distribution] } : term

function byMeter(terms: readonly Term[]): Sum {
  const [alone, groups] = grouped(terms, (term) => (term.metered?.gain ? term.metered.meter : null))
  const parts = alone.map((term) =>
    product(
      term.coefficient,
      term.metered ? [...term.factors, readingDistribution(term.metered)] : term.factors,
    ),
  )
  for (const group of groups) parts.push(group.every(addsOnly) ? addedGain(group) : factoredGain(group))
  return merged(parts)
}

const unclipped = (reading: MeterReadingValue) => reading.value * (1 - reading.gain) >= reading.counts
const addsOnly = (term: Term) => unclipped(term.metered!) && term.factors.every(isExact)

/** Readings times constants: the gain's part of the sum is one rectangular quantity, added to each reading's counts part. */
function addedGain(group: readonly Term[]): Sum {
  const scaled = group.map((term) => ({
    scale: term.factors.reduce((sum, factor) => sum * factor.mean, term.coefficient),
    reading: term.metered!,
  }))
  const total = scaled.reduce((sum, { scale, reading }) => sum + scale * reading.value, 0)
  const gain = product(1, [rectangularSum(total, total * group[0]!.metered!.gain)])
  const counts = scaled.map(({ scale, reading }) =>
    product(scale, [rectangularSum(reading.value, reading.counts)]),
  )
  return merged([{ constant: -total, nodes: [] }, gain, ...counts])
}

/**
 * Readings times uncertain factors: the gain multiplies the sum, (1 + g)(reading + c) in place of
 * reading (1 + g) + c. The difference g c is of second order; README.md of this folder states its size.
 */
function factoredGain(group: readonly Term[]): Sum {
  const of = merged(
    group.map((term) =>
      product(term.coefficient, [...term.factors, rectangularSum(term.metered!.value, term.metered!.counts)]),
    ),
  )
  return { constant: 0, nodes: [{ kind: 'scaled', by: rectangularSum(1, group[0]!.metered!.gain), of }] }
}

/** One product as a sum: exact factors go into the coefficient; with nothing uncertain left it is a constant. */
function product(coefficient: number, factors: readonly Distribution[]): Sum {
  const uncertain = factors.filter((factor) => !isExact(factor))
  const scale = factors.reduce((sum, factor) => (isExact(factor) ? sum * factor.mean : sum), coefficient)
  if (scale === 0) return { constant: 0, nodes: [] }
  if (uncertain.length === 0) return { constant: scale, nodes: [] }
  return { constant: 0, nodes: [{ kind: 'product', coefficient: scale, factors: uncertain }] }
}

const merged = (parts: readonly Sum[]): Sum => ({
  constant: parts.reduce((sum, part) => sum + part.constant, 0),
  nodes: parts.flatMap((part) => part.nodes),
})

/** Terms whose key occurs once (or is null), and the groups of those that share one. */
export function grouped(terms: readonly Term[], keyOf: (term: Term) => string | null): [Term[], Term[][]] {
  const groups = new Map<string, Term[]>()
  const alone: Term[] = []
  for (const term of terms) {
    const key = keyOf(term)
    if (key === null) alone.push(term)
    else groups.set(key, [...(groups.get(key) ?? []), term])
  }
  const shared = [...groups.values()].filter((group) => group.length > 1)
  for (const group of groups.values()) if (group.length === 1) alone.push(group[0]!)
  return [alone, shared]
}

/** A node's middle, and how far the given probabilities lie below and above it; rough, for choosing a lattice. */
export function reach(
  node: SumNode,
  pLow: number,
  pHigh: number,
): { middle: number; below: number; above: number } {
  if (node.kind === 'product') {
    let [middle, below, above] = [node.coefficient, 0, 0]
    for (const factor of node.factors) {
      const center = factor.quantile(0.5) || factor.mean
      middle *= center
      below += ((center - factor.quantile(pLow)) / center) ** 2
      above += ((factor.quantile(pHigh) - center) / center) ** 2
    }
    return { middle, below: middle * Math.min(1, Math.sqrt(below)), above: middle * Math.sqrt(above) }
  }
  const inner = reachOfSum(node.of, pLow, pHigh)
  const width = node.by.quantile(pHigh) - 1
  return {
    middle: inner.middle,
    below: Math.hypot(inner.below, width * inner.middle),
    above: Math.hypot(inner.above, width * inner.middle),
  }
}

export function reachOfSum(
  sum: Sum,
  pLow: number,
  pHigh: number,
): { middle: number; below: number; above: number } {
  let [middle, below, above] = [sum.constant, 0, 0]
  for (const node of sum.nodes) {
    const one = reach(node, pLow, pHigh)
    middle += one.middle
    below += one.below ** 2
    above += one.above ** 2
  }
  return { middle, below: Math.sqrt(below), above: Math.sqrt(above) }
}
