import { convolve } from './convolve.ts'
import { relativeSpread } from './distribution.ts'
import { Lattice } from './lattice.ts'
import { nodeAt, nodesOf, productOf } from './nodes.ts'
import { type Nodes, spread } from './spread.ts'
import type { ProductNode, ScaledNode, Sum, SumNode } from './sumNode.ts'

/** The three lattices that one sum needs: what is summed so far, the next part, and their convolution. */
interface Workspace {
  total: Lattice
  readonly part: Lattice
  next: Lattice
}

/** One workspace for each depth of a tree, since a scaled node is worked on while the sum around it is. */
const workspaces: Workspace[] = []
function workspaceAt(depth: number): Workspace {
  return (workspaces[depth] ??= {
    total: new Lattice(),
    part: new Lattice(),
    next: new Lattice(),
  })
}

/**
 * The uncertain part of a sum on a lattice; its constant is left to the caller.
 * @param highest last lattice point of interest; what lies above it is left out
 * @param depth 0 for a sum that is in no other
 * @returns a lattice to be read before the next sum is worked on
 */
export function spreadOfSum(sum: Sum, step: number, highest: number, depth = 0): Lattice {
  const work = workspaceAt(depth)
  const firsts = sum.nodes.reduce((all, node) => all + firstPoint(node, step), 0)
  // No part can use more points than are left when all others are at their lowest.
  const reach = Math.max(1, highest - firsts + 1)
  work.total.clear(0, 1)
  work.total.masses[0] = 1
  sum.nodes.forEach((node, i) => {
    const into = i === 0 ? work.total : work.part
    spreadOfNode(node, step, reach, depth, into)
    if (i === 0) return
    convolve(work.total, work.part, reach, work.next)
    ;[work.total, work.next] = [work.next, work.total]
  })
  return work.total
}

/** Where a node's lattice starts, at the earliest. */
const firstPoint = (node: SumNode, step: number): number => Math.floor(lowest(node) / step)
const lowest = (node: SumNode): number =>
  node.kind === 'product'
    ? node.factors.reduce((product, factor) => product * factor.min, node.coefficient)
    : node.by.min *
      Math.max(0, node.of.constant + node.of.nodes.reduce((sum, inner) => sum + lowest(inner), 0))

function spreadOfNode(node: SumNode, step: number, reach: number, depth: number, into: Lattice): void {
  if (node.kind === 'product') spreadOfProduct(node, step, reach, into)
  else spreadOfScaled(node, step, reach, depth, into)
}

/** One value that stands for certain: written anew for each product, since most products have a single factor. */
const CONSTANT = nodeAt(1)

/** The widest factor keeps its closed form; the narrower ones become a few weighted values of its scale. */
function spreadOfProduct(
  { coefficient, factors }: ProductNode,
  step: number,
  reach: number,
  into: Lattice,
): void {
  if (factors.length === 1) {
    CONSTANT.values[0] = coefficient
    spread(factors[0]!, CONSTANT, step, reach, into)
    return
  }
  const spreads = factors.map(relativeSpread)
  const widest = spreads.indexOf(Math.max(...spreads))
  let scales: Nodes | undefined
  factors.forEach((factor, i) => {
    if (i === widest) return
    const ratio = spreads[i]! / spreads[widest]!
    scales = scales ? productOf(scales, nodesOf(factor, ratio, 1)) : nodesOf(factor, ratio, coefficient)
  })
  spread(factors[widest]!, scales!, step, reach, into)
}

/**
 * A shared factor times a sum: each lattice point of the sum scales the factor. The sum's own step is chosen so that
 * it is the given one once scaled.
 */
function spreadOfScaled(node: ScaledNode, step: number, reach: number, depth: number, into: Lattice): void {
  const { by, of } = node
  const innerStep = step / by.mean
  const highest = (firstPoint(node, step) + reach) * step
  const inner = spreadOfSum(
    of,
    innerStep,
    Math.ceil((highest / Math.max(by.min, 0.01 * by.mean) - of.constant) / innerStep),
    depth + 1,
  )
  const values = new Float64Array(inner.length)
  for (let i = 0; i < inner.length; i++) values[i] = Math.max(0, (inner.start + i) * innerStep + of.constant)
  spread(by, { values, weights: inner.masses, count: inner.length }, step, reach, into)
  into.smear += inner.smear
}
