import { rectangularSum } from './rectangularSum.ts'
import { GrowingSum, scaledNode, type Sum, type SumNode } from './sumNode.ts'

/** Up to this share of the variance the shape of a part does not show in the ends of an interval (README.md, table). */
const LEAST_SHARE = 0.004
/** Up to this share not even its width does. */
const NO_SHARE = 1e-6

/**
 * The same sum with its smallest independent parts, together at most 0.4 % of the variance, as one rectangular part of
 * their mean and variance; the same inside of what is scaled. What is left is in ascending order of variance. Most
 * devices of a household are such small parts, and each would cost a convolution.
 */
export function absorbSmall(sum: Sum, total: number): Sum {
  const { constant } = sum
  if (sum.nodes.length < 2) return { constant, nodes: sum.nodes.map((node) => absorbInside(node, total)) }
  const nodes = sum.nodes.toSorted((a, b) => a.variance - b.variance)
  const { count, mean, variance } = smallOnes(nodes, total)
  const large = nodes.slice(count).map((node) => absorbInside(node, total))
  if (variance <= NO_SHARE * total) return { constant: constant + mean, nodes: large }
  if (count < 2) return { constant, nodes: [...nodes.slice(0, count), ...large] }
  return withRectangular(constant, mean, variance, large)
}

function smallOnes(ascending: readonly SumNode[], total: number) {
  let [count, mean, variance] = [0, 0, 0]
  for (const node of ascending) {
    if (node.kind !== 'product' || variance + node.variance > LEAST_SHARE * total) break
    count++
    mean += node.mean
    variance += node.variance
  }
  return { count, mean, variance }
}

function withRectangular(constant: number, mean: number, variance: number, others: readonly SumNode[]): Sum {
  const halfWidth = Math.sqrt(3 * variance)
  // A part that reaches below zero would be cut off there: move it up, and the constant down.
  const middle = Math.max(mean, halfWidth)
  const sum = new GrowingSum()
  sum.constant = constant + mean - middle
  sum.addProduct(1, [rectangularSum(middle, halfWidth)])
  for (const node of others) sum.nodes.push(node)
  return sum
}

const absorbInside = (node: SumNode, total: number): SumNode =>
  node.kind === 'product' ? node : scaledNode(node.by, absorbSmall(node.of, total / node.by.mean ** 2))
