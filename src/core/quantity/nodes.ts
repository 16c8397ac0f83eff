import type { Distribution } from './distribution.ts'
import type { Nodes } from './lattice.ts'

interface Rule {
  readonly points: readonly number[]
  readonly weights: readonly number[]
}

/** The less a factor spreads beside the widest one, the fewer values stand for it. */
const RULES = [
  { upTo: 0.1, rule: gaussLegendre(3) },
  { upTo: 0.35, rule: gaussLegendre(6) },
  { upTo: Infinity, rule: gaussLegendre(16) },
]

/** Nodes and weights of the Gauss-Legendre rule on 0..1, by Newton's method on the Legendre polynomial. */
function gaussLegendre(count: number): Rule {
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

const known = new WeakMap<Distribution, Map<Rule, Nodes>>()

/**
 * A narrow distribution as a few weighted values with its exact mean, for products with a wider one. Kept, since one
 * factor stands in many sums.
 * @param spreadRatio its relative spread over that of the widest factor, 0 to 1
 */
export function nodesOf(x: Distribution, spreadRatio: number): Nodes {
  const { rule } = RULES.find(({ upTo }) => spreadRatio < upTo)!
  const byRule = known.get(x) ?? new Map<Rule, Nodes>()
  known.set(x, byRule)
  const nodes = byRule.get(rule) ?? quadrature(x, rule)
  byRule.set(rule, nodes)
  return nodes
}

function quadrature(x: Distribution, { points, weights }: Rule): Nodes {
  const values = points.map((p) => x.quantile(p))
  const mean = values.reduce((sum, value, i) => sum + value * weights[i]!, 0)
  const correction = mean > 0 ? x.mean / mean : 1
  return { values: values.map((value) => value * correction), weights }
}

const CELLS = 32

/** All products of two sets of nodes, gathered onto 33 evenly spaced values without moving the mean. */
export function productOf(a: Nodes, b: Nodes): Nodes {
  if (a.values.length === 1) return scaledNodes(b, a.values[0]!)
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

const scaledNodes = ({ values, weights }: Nodes, by: number): Nodes => ({
  values: values.map((value) => value * by),
  weights,
})
