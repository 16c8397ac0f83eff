import { rectangularSum } from './rectangularSum.ts'
import type { Sum, SumNode } from './sumNode.ts'

/** Up to this share of the variance the shape of a part does not show in the ends of an interval (README.md, table). */
const LEAST_SHARE = 0.004
/** Up to this share not even its width does. */
const NO_SHARE = 1e-6

/**
 * The same sum with its smallest independent parts, together at most 0.4 % of the variance, as one rectangular part of
 * their mean and variance. Most devices of a household are such parts, and each would cost a convolution.
 */
export function absorbSmall(sum: Sum): Sum {
  const parts = sum.nodes.map((node) => ({ node, ...momentsOf(node) }))
  const total = parts.reduce((all, { variance }) => all + variance, 0)
  parts.sort((a, b) => a.variance - b.variance)
  let [count, mean, variance] = [0, 0, 0]
  for (const part of parts) {
    if (part.node.kind !== 'product' || variance + part.variance > LEAST_SHARE * total) break
    count++
    mean += part.mean
    variance += part.variance
  }
  const large = parts.slice(count).map(({ node }) => node)
  if (variance <= NO_SHARE * total) return { constant: sum.constant + mean, nodes: large }
  if (count < 2) return sum
  const halfWidth = Math.sqrt(3 * variance)
  // A part that reaches below zero would be cut off there: move it up, and the constant down.
  const middle = Math.max(mean, halfWidth)
  const small: SumNode = { kind: 'product', coefficient: 1, factors: [rectangularSum(middle, halfWidth)] }
  return { constant: sum.constant + mean - middle, nodes: [small, ...large] }
}

/** Of a scaled node only the inner parts count here: it is never absorbed. */
function momentsOf(node: SumNode): { mean: number; variance: number } {
  if (node.kind === 'scaled')
    return { mean: 0, variance: node.of.nodes.reduce((all, inner) => all + momentsOf(inner).variance, 0) }
  let [mean, square] = [node.coefficient, node.coefficient * node.coefficient]
  for (const factor of node.factors) {
    mean *= factor.mean
    square *= factor.meanSquare
  }
  return { mean, variance: Math.max(0, square - mean * mean) }
}
