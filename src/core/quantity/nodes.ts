import type { Distribution } from './distribution.ts'
import type { Nodes } from './spread.ts'

interface Rule {
  readonly points: Float64Array
  readonly weights: Float64Array
}

/** The less a factor spreads beside the widest one, the fewer values stand for it. */
const RULES = [
  { upTo: 0.1, rule: gaussLegendre(3) },
  { upTo: 0.35, rule: gaussLegendre(5) },
  { upTo: Infinity, rule: gaussLegendre(12) },
]

/** Nodes and weights of the Gauss-Legendre rule on 0..1, by Newton's method on the Legendre polynomial. */
function gaussLegendre(count: number): Rule {
  const points = new Float64Array(count)
  const weights = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5))
    let slope = 0
    for (let step = 0; step < 20; step++) {
      const [value, derivative] = legendre(count, x)
      slope = derivative
      x -= value / derivative
    }
    points[i] = (1 - x) / 2
    weights[i] = 1 / ((1 - x * x) * slope * slope)
  }
  return { points, weights }
}

function legendre(count: number, x: number): [value: number, derivative: number] {
  let [previous, value] = [1, x]
  for (let k = 2; k <= count; k++)
    [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k]
  return [value, (count * (x * value - previous)) / (x * x - 1)]
}

/** A value without uncertainty, as a single node. */
export const nodeAt = (value: number): Nodes => ({
  values: Float64Array.of(value),
  weights: ONE,
  count: 1,
})
const ONE = Float64Array.of(1)

/**
 * A narrow distribution times a constant as a few weighted values with its exact mean, for products with a wider one.
 * @param spreadRatio its relative spread over that of the widest factor, 0 to 1
 */
export function nodesOf(x: Distribution, spreadRatio: number, coefficient: number): Nodes {
  const { points, weights } = RULES.find(({ upTo }) => spreadRatio < upTo)!.rule
  const values = new Float64Array(points.length)
  let mean = 0
  for (let i = 0; i < values.length; i++) {
    values[i] = x.quantile(points[i]!)
    mean += values[i]! * weights[i]!
  }
  const correction = (coefficient * x.mean) / mean
  for (let i = 0; i < values.length; i++) values[i]! *= correction
  return { values, weights, count: values.length }
}

const CELLS = 32

/**
 * All products of two sets of nodes; where they are many, gathered onto 33 evenly spaced values without moving the mean.
 */
export function productOf(a: Nodes, b: Nodes): Nodes {
  const products = allProducts(a, b)
  return products.count > CELLS + 1 ? gathered(products) : products
}

function allProducts(a: Nodes, b: Nodes): Nodes {
  const count = a.count * b.count
  const [values, weights] = [new Float64Array(count), new Float64Array(count)]
  for (let i = 0; i < a.count; i++)
    for (let j = 0; j < b.count; j++) {
      const k = i * b.count + j
      values[k] = a.values[i]! * b.values[j]!
      weights[k] = a.weights[i]! * b.weights[j]!
    }
  return { values, weights, count }
}

function gathered({ values, weights, count }: Nodes): Nodes {
  let [low, high] = [values[0]!, values[0]!]
  for (let k = 1; k < count; k++) {
    low = Math.min(low, values[k]!)
    high = Math.max(high, values[k]!)
  }
  const step = (high - low) / CELLS
  const cells = new Float64Array(CELLS + 1)
  for (let k = 0; k < count; k++) {
    const place = (values[k]! - low) / step
    const cell = Math.min(CELLS - 1, Math.floor(place))
    cells[cell]! += weights[k]! * (cell + 1 - place)
    cells[cell + 1]! += weights[k]! * (place - cell)
  }
  return { values: cells.map((_, cell) => low + cell * step), weights: cells, count: CELLS + 1 }
}
