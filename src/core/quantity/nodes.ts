import type { Distribution } from './distribution.ts'
import type { Nodes } from './lattice.ts'

/** Nodes and weights of the 16-point Gauss-Legendre rule on 0..1, by Newton's method on the Legendre polynomial. */
const RULE = gaussLegendre(16)

export function gaussLegendre(count: number): {
  readonly points: readonly number[]
  readonly weights: readonly number[]
} {
  const points: number[] = []
  const weights: number[] = []
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5))
    let slope = 0
    for (let step = 0; step < 20; step++) {
      const [value, derivative] = legendre(count, x)
      slope = derivative
      x -= value / derivative
    }
    points.push((1 - x) / 2)
    weights.push(1 / ((1 - x * x) * slope * slope))
  }
  return { points, weights }
}

function legendre(count: number, x: number): [value: number, derivative: number] {
  let [previous, value] = [1, x]
  for (let k = 2; k <= count; k++)
    [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k]
  return [value, (count * (x * value - previous)) / (x * x - 1)]
}

/** A narrow distribution as a few weighted values with its exact mean, for products with a wider one. */
export function nodesOf(x: Distribution, scale: number): Nodes {
  if (x.min === x.max) return { values: [x.mean * scale], weights: [1] }
  const values = RULE.points.map((p) => x.quantile(p))
  const mean = values.reduce((sum, value, i) => sum + value * RULE.weights[i]!, 0)
  const correction = mean > 0 ? (x.mean / mean) * scale : scale
  return { values: values.map((value) => value * correction), weights: RULE.weights }
}

const CELLS = 32

/** All products of two sets of nodes, gathered onto 33 evenly spaced values without moving the mean. */
export function productOf(a: Nodes, b: Nodes): Nodes {
  if (a.values.length === 1)
    return { values: b.values.map((value) => value * a.values[0]!), weights: b.weights }
  if (b.values.length === 1) return productOf(b, a)
  const low = Math.min(...a.values) * Math.min(...b.values)
  const high = Math.max(...a.values) * Math.max(...b.values)
  const step = (high - low) / CELLS
  const weights = new Array<number>(CELLS + 1).fill(0)
  a.values.forEach((x, i) =>
    b.values.forEach((y, j) => {
      const place = (x * y - low) / step
      const cell = Math.min(CELLS - 1, Math.floor(place))
      const weight = a.weights[i]! * b.weights[j]!
      weights[cell]! += weight * (cell + 1 - place)
      weights[cell + 1]! += weight * (place - cell)
    }),
  )
  return { values: weights.map((_, cell) => low + cell * step), weights }
}
