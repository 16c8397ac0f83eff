import { type Distribution, isExact, SMALLEST } from './distribution.ts'

/** A coefficient times independent uncertain factors. */
export interface ProductNode {
  readonly kind: 'product'
  readonly coefficient: number
  readonly factors: readonly Distribution[]
  readonly mean: number
  readonly variance: number
}

/** A factor times a whole sum, all of which shares it. */
export interface ScaledNode {
  readonly kind: 'scaled'
  readonly by: Distribution
  readonly of: Sum
  readonly mean: number
  readonly variance: number
}

/** A sum of products as a tree, in which what is shared stands outside the sum that shares it. */
export type SumNode = ProductNode | ScaledNode

/** The sum of a constant and of nodes that are independent of each other. */
export interface Sum {
  /** What is added for certain; may be negative where a node's own mean stands twice. */
  readonly constant: number
  readonly nodes: readonly SumNode[]
}

/** A sum that is being put together. */
export class GrowingSum implements Sum {
  constant = 0
  readonly nodes: SumNode[] = []

  /** Adds coefficient x factors; exact factors go into the coefficient, and with nothing uncertain left it is a constant. */
  addProduct(coefficient: number, factors: readonly Distribution[]): void {
    let scale = coefficient
    let [mean, square] = [1, 1]
    const uncertain: Distribution[] = []
    for (const factor of factors) {
      if (isExact(factor)) scale *= factor.mean
      else {
        uncertain.push(factor)
        mean *= factor.mean
        square *= factor.meanSquare
      }
    }
    if (uncertain.length === 0 || scale * mean < SMALLEST) {
      this.constant += scale * mean
      return
    }
    const variance = scale * scale * Math.max(0, square - mean * mean)
    this.nodes.push({
      kind: 'product',
      coefficient: scale,
      factors: uncertain,
      mean: scale * mean,
      variance,
    })
  }

  addScaled(by: Distribution, of: Sum): void {
    const node = scaledNode(by, of)
    if (node.mean < SMALLEST) this.constant += node.mean
    else this.nodes.push(node)
  }
}

export function scaledNode(by: Distribution, of: Sum): ScaledNode {
  let [mean, variance] = [of.constant, 0]
  for (const node of of.nodes) {
    mean += node.mean
    variance += node.variance
  }
  const square = by.meanSquare * (mean * mean + variance)
  return {
    kind: 'scaled',
    by,
    of,
    mean: by.mean * mean,
    variance: Math.max(0, square - (by.mean * mean) ** 2),
  }
}
