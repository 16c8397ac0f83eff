import type { Distribution } from './distribution.ts'
import type { Sum } from './sumNode.ts'

/** Quantiles of a sum without uncertainty or with a single uncertain factor, for which no lattice is needed; else null. */
export function closedForm(
  { constant, nodes }: Sum,
  pLow: number,
  pHigh: number,
): { readonly low: number; readonly high: number } | null {
  if (nodes.length > 1) return null
  const node = nodes[0]
  if (!node) return { low: constant, high: constant }
  const ends = (x: Distribution, scale: number) => ({
    low: constant + scale * x.quantile(pLow),
    high: constant + scale * x.quantile(pHigh),
  })
  if (node.kind === 'product')
    return node.factors.length === 1 ? ends(node.factors[0]!, node.coefficient) : null
  return node.of.nodes.length === 0 ? ends(node.by, node.of.constant) : null
}
