import { relativeSpread } from './distribution.ts'
import { convolve, type Lattice, type Nodes, spread } from './lattice.ts'
import { nodesOf, productOf } from './nodes.ts'
import type { Sum, SumNode } from './sumNode.ts'

/** The uncertain part of a sum on a lattice (its constant is left to the caller), or null where nothing is uncertain. */
export function spreadOfSum(sum: Sum, step: number, limit: number): Lattice | null {
  const parts = sum.nodes.map((node) => spreadOfNode(node, step, limit))
  parts.sort((a, b) => a.masses.length - b.masses.length)
  return parts.reduce<Lattice | null>((total, part) => (total ? convolve(total, part, limit) : part), null)
}

function spreadOfNode(node: SumNode, step: number, limit: number): Lattice {
  return node.kind === 'product' ? spreadOfProduct(node, step, limit) : spreadOfScaled(node, step, limit)
}

/** The widest factor keeps its closed form; the narrower ones become a few weighted values of its scale. */
function spreadOfProduct(
  { coefficient, factors }: SumNode & { kind: 'product' },
  step: number,
  limit: number,
): Lattice {
  const constant: Nodes = { values: [coefficient], weights: [1] }
  if (factors.length === 1) return spread(factors[0]!, constant, step, limit)
  const spreads = factors.map(relativeSpread)
  const widest = spreads.indexOf(Math.max(...spreads))
  const scales = factors.reduce<Nodes>(
    (nodes, factor, i) =>
      i === widest ? nodes : productOf(nodes, nodesOf(factor, spreads[i]! / spreads[widest]!)),
    constant,
  )
  return spread(factors[widest]!, scales, step, limit)
}

/** A shared factor times a sum: each lattice point of the sum scales the factor. */
function spreadOfScaled(node: SumNode & { kind: 'scaled' }, step: number, limit: number): Lattice {
  const { constant } = node.of
  const inner = spreadOfSum(node.of, step, Math.ceil(limit / Math.max(node.by.min, 0.01) - constant / step))
  if (inner === null) return spread(node.by, { values: [constant], weights: [1] }, step, limit)
  const values = [...inner.masses].map((_, i) => Math.max(0, (inner.start + i) * step + constant))
  const scaled = spread(node.by, { values, weights: [...inner.masses] }, step, limit)
  return { ...scaled, smear: scaled.smear + inner.smear }
}
