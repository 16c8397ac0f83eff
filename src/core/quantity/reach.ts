import type { ProductNode, ScaledNode, Sum } from './sumNode.ts'

/** A sum's middle, and how far the given probabilities lie below and above it. */
export interface Reach {
  readonly middle: number
  readonly below: number
  readonly above: number
}

/**
 * Roughly where the quantiles of a sum lie, for choosing a lattice: medians add up, distances from them add up in
 * squares. Never part of a result.
 */
export function reachOf(sum: Sum, pLow: number, pHigh: number): Reach {
  let [middle, below, above] = [sum.constant, 0, 0]
  for (const node of sum.nodes) {
    const one = node.kind === 'product' ? reachOfProduct(node, pLow, pHigh) : reachOfScaled(node, pLow, pHigh)
    middle += one.middle
    below += one.below ** 2
    above += one.above ** 2
  }
  return { middle, below: Math.sqrt(below), above: Math.sqrt(above) }
}

function reachOfProduct({ coefficient, factors }: ProductNode, pLow: number, pHigh: number): Reach {
  let [middle, below, above] = [coefficient, 0, 0]
  for (const factor of factors) {
    const median = factor.quantile(0.5)
    // The median of what is cut at zero may be next to nothing, which tells nothing of the scale.
    const center = median < 1e-6 * factor.mean ? factor.mean : median
    middle *= center
    below += ((center - factor.quantile(pLow)) / center) ** 2
    above += ((factor.quantile(pHigh) - center) / center) ** 2
  }
  return {
    middle,
    below: middle * Math.min(1, Math.sqrt(below)),
    above: middle * Math.sqrt(above),
  }
}

function reachOfScaled({ by, of }: ScaledNode, pLow: number, pHigh: number): Reach {
  const inner = reachOf(of, pLow, pHigh)
  const width = by.quantile(pHigh) - by.mean
  return {
    middle: by.mean * inner.middle,
    below: Math.hypot(by.mean * inner.below, width * inner.middle),
    above: Math.hypot(by.mean * inner.above, width * inner.middle),
  }
}
