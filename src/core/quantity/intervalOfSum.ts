import { type Distribution, relativeSpread } from './distribution.ts'
import { type Lattice, latticeQuantile } from './lattice.ts'
import { spreadOfSum } from './spreadOfSum.ts'
import { absorbSmall } from './absorbSmall.ts'
import { crossingMeters, onEachGain } from './crossingMeters.ts'
import { reachOfSum, type Sum, treeOf } from './sumNode.ts'
import { type Term, termMean } from './term.ts'

/** Mean, and the ends of the symmetric-probability coverage interval (JCGM 101:2008, 7.7). */
export interface Interval {
  readonly expected: number
  readonly low: number
  readonly high: number
}

export const scaleInterval = (interval: Interval, by: number): Interval => ({
  expected: interval.expected * by,
  low: interval.low * by,
  high: interval.high * by,
})

/**
 * Mean and coverage interval of outer x (sum of terms).
 *
 * The mean is exact. The interval comes from numerical convolution on a lattice, as deterministic as arithmetic is;
 * a single uncertain factor is answered in closed form. README.md of this folder gives method, error and speed.
 *
 * @param outer a factor that multiplies the whole sum, such as an uncertain price; independent of all terms
 * @param coverage probability of the interval, above 0 and below 1; the same probability is left out at either end
 */
export function intervalOfSum(terms: readonly Term[], coverage: number, outer?: Distribution): Interval {
  const pLow = (1 - coverage) / 2
  const expected = terms.reduce((sum, term) => sum + termMean(term), 0) * (outer?.mean ?? 1)
  const crossing = crossingMeters(terms)
  const variants = crossing.length === 0 ? [terms] : onEachGain(crossing, terms)
  const sums = variants.map((variant) => withOuter(absorbSmall(treeOf(variant)), outer))
  return { expected, ...coverageEnds(sums, expected, pLow, 1 - pLow) }
}

/** An outer factor of any mean as a tree's scaled node, whose factor has the mean 1. */
function withOuter(sum: Sum, outer: Distribution | undefined): Sum {
  if (!outer) return sum
  const scaled = {
    constant: sum.constant * outer.mean,
    nodes: sum.nodes.map((node) => scaleNode(node, outer.mean)),
  }
  if (relativeSpread(outer) === 0) return scaled
  return { constant: 0, nodes: [{ kind: 'scaled', by: relative(outer), of: scaled }] }
}

type Node = Sum['nodes'][number]
function scaleNode(node: Node, by: number): Node {
  if (node.kind === 'product') return { ...node, coefficient: node.coefficient * by }
  const { constant, nodes } = node.of
  return { ...node, of: { constant: constant * by, nodes: nodes.map((inner) => scaleNode(inner, by)) } }
}

function relative(x: Distribution): Distribution {
  const { mean } = x
  return {
    mean: 1,
    meanSquare: x.meanSquare / (mean * mean),
    min: x.min / mean,
    max: x.max / mean,
    cdf: (y) => x.cdf(y * mean),
    cdfIntegral: (y) => x.cdfIntegral(y * mean) / mean,
    quantile: (p) => x.quantile(p) / mean,
  }
}

/** Fewest lattice steps over an interval's width, and over its narrower side; see the table in README.md. */
const STEPS_ACROSS = 32
const STEPS_BELOW = 6
const MOST_STEPS = 400
/** Above this many parts the step shrinks, since each adds its smear. */
const PARTS = 16

function coverageEnds(
  sums: readonly Sum[],
  expected: number,
  pLow: number,
  pHigh: number,
): { low: number; high: number } {
  const closed = closedForm(sums, pLow, pHigh)
  if (closed) return closed
  const reaches = sums.map((sum) => reachOfSum(sum, pLow, pHigh))
  const widest = reaches.reduce((a, b) => (a.below + a.above > b.below + b.above ? a : b))
  const width = widest.below + widest.above
  const parts = Math.max(1, countParts(sums[0]!) / PARTS)
  const step =
    Math.min(width / STEPS_ACROSS, Math.max(widest.below / STEPS_BELOW, width / MOST_STEPS)) /
    Math.sqrt(parts)
  const middle = Math.max(expected, widest.middle)
  for (let reachOut = 1.5; ; reachOut *= 2) {
    const mixed = mixture(sums, step, middle + reachOut * widest.above)
    const high = latticeQuantile(mixed, pHigh)
    if (high !== null) return { low: Math.max(0, latticeQuantile(mixed, pLow)!), high }
  }
}

/** No uncertainty, or a single uncertain factor: no lattice is needed. */
function closedForm(sums: readonly Sum[], pLow: number, pHigh: number): { low: number; high: number } | null {
  const [sum] = sums
  if (sums.length !== 1 || sum!.nodes.length > 1) return null
  const { constant, nodes } = sum!
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

const countParts = (sum: Sum): number =>
  sum.nodes.reduce((count, node) => count + (node.kind === 'product' ? 1 : 1 + countParts(node.of)), 0)

/** Equal parts of sums on one lattice, each with its constant; a constant between two points is split like any probability. */
function mixture(sums: readonly Sum[], step: number, highest: number): Lattice {
  const lattices = sums.map((sum) => {
    const lattice = spreadOfSum(sum, step, Math.ceil((highest - sum.constant) / step))!
    return { ...lattice, start: lattice.start + sum.constant / step }
  })
  if (lattices.length === 1) return lattices[0]!
  const start = Math.floor(Math.min(...lattices.map((lattice) => lattice.start)))
  const end = Math.max(...lattices.map((lattice) => Math.ceil(lattice.start) + lattice.masses.length))
  const masses = new Float64Array(end - start + 1)
  for (const lattice of lattices) {
    const whole = Math.floor(lattice.start)
    const part = lattice.start - whole
    lattice.masses.forEach((mass, i) => {
      masses[whole - start + i]! += (mass * (1 - part)) / lattices.length
      masses[whole - start + i + 1]! += (mass * part) / lattices.length
    })
  }
  return { step, start, masses, smear: lattices[0]!.smear }
}
