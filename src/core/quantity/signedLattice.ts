import { convolve } from './convolve.ts'
import { type Distribution, relativeSpread } from './distribution.ts'
import { Lattice } from './lattice.ts'
import { nodesOf } from './nodes.ts'
import { reachOf } from './reach.ts'
import { meanOf, signedReachOf } from './signedReach.ts'
import type { Block, SignedSum } from './signedSum.ts'
import { type Nodes, spread } from './spread.ts'
import { spreadOfSum } from './spreadOfSum.ts'
import type { SumNode } from './sumNode.ts'

/** Of the probability outside one end of the interval, the share that may be put on a lattice's last point. */
const FOLDED = 0.05
/** Steps over the width of what a block scales, however narrow it is. */
const STEPS_WITHIN = 24

/**
 * The uncertain part of a signed sum on a lattice; its constant is left to the caller.
 *
 * A lattice of what is added, convolved with the mirror image of the lattice of what is taken away, and with each block.
 * @param tail probability outside either end of the interval that is asked for
 */
export function signedLattice(sum: SignedSum, step: number, tail: number): Lattice {
  const up = oneSided(sum.up.nodes, step, tail)
  const down = mirrored(oneSided(sum.down.nodes, step, tail))
  return sum.blocks.reduce(
    (total, block) => convolved(total, blockLattice(block, step, tail)),
    convolved(up, down),
  )
}

function convolved(a: Lattice, b: Lattice): Lattice {
  if (isZero(a)) return b
  if (isZero(b)) return a
  const sum = new Lattice()
  convolve(a, b, Infinity, sum)
  return sum
}

const isZero = ({ start, length, smear }: Lattice) => start === 0 && length === 1 && smear === 0

function oneSided(nodes: readonly SumNode[], step: number, tail: number): Lattice {
  const sum = { constant: 0, nodes }
  const { middle, above } = reachOf(sum, tail, 1 - tail)
  for (let beyond = 1.5; ; beyond *= 2) {
    const lattice = copied(spreadOfSum(sum, step, Math.ceil((middle + beyond * above) / step)))
    if (fold(lattice, 1) <= FOLDED * tail) return lattice
  }
}

/** Puts what is missing of the probability on the last point, and says how much it was. */
function fold(lattice: Lattice, whole: number): number {
  const missing = whole - massOf(lattice)
  lattice.masses[lattice.length - 1]! += Math.max(0, missing)
  return missing
}

function massOf({ masses, length }: Lattice): number {
  let mass = 0
  for (let i = 0; i < length; i++) mass += masses[i]!
  return mass
}

function copied({ start, length, masses, smear }: Lattice): Lattice {
  const copy = new Lattice()
  copy.clear(start, length)
  copy.masses.set(masses.subarray(0, length))
  copy.smear = smear
  return copy
}

function mirrored({ start, length, masses, smear }: Lattice): Lattice {
  const mirror = new Lattice()
  mirror.clear(-(start + length - 1), length)
  for (let i = 0; i < length; i++) mirror.masses[i] = masses[length - 1 - i]!
  mirror.smear = smear
  return mirror
}

/**
 * Factors times a signed sum: each lattice point of the sum scales the widest factor, which keeps its closed form;
 * negative points scale its mirror image.
 */
function blockLattice({ by, of }: Block, step: number, tail: number): Lattice {
  const { below, above } = signedReachOf(of, tail, 1 - tail)
  const innerStep = Math.min(step / meanOf(by), (below + above) / STEPS_WITHIN)
  const inner = signedLattice(of, innerStep, tail)
  const spreads = by.map(relativeSpread)
  const widest = spreads.indexOf(Math.max(...spreads))
  const [positive, negative] = scalesOf(inner, innerStep, of.constant, by, spreads, widest)
  const lattice = joined(
    mirrored(spreadSide(by[widest]!, negative, step, tail)),
    spreadSide(by[widest]!, positive, step, tail),
  )
  const square = by.reduce((product, { meanSquare }) => product * meanSquare, 1)
  lattice.smear += inner.smear * (innerStep / step) ** 2 * square
  return lattice
}

/** Lattice points times nodes of the narrower factors, by their sign. */
function scalesOf(
  inner: Lattice,
  innerStep: number,
  constant: number,
  by: readonly Distribution[],
  spreads: readonly number[],
  widest: number,
): [positive: Nodes, negative: Nodes] {
  let scales: Scale[] = Array.from({ length: inner.length }, (_, i) => ({
    value: constant + (inner.start + i) * innerStep,
    weight: inner.masses[i]!,
  }))
  by.forEach((factor, i) => {
    if (i === widest) return
    const { values, weights } = nodesOf(factor, spreads[i]! / spreads[widest]!, 1)
    scales = scales.flatMap(({ value, weight }) =>
      Array.from(values, (node, k) => ({ value: value * node, weight: weight * weights[k]! })),
    )
  })
  const side = (sign: 1 | -1) =>
    gathered(
      scales
        .filter(({ value }) => (sign === 1 ? value >= 0 : value < 0))
        .map(({ value, weight }) => ({ value: sign * value, weight })),
      // The points of a single factor's sum are kept as they are.
      by.length > 1 ? MANY : Infinity,
    )
  return [side(1), side(-1)]
}

interface Scale {
  readonly value: number
  readonly weight: number
}

/** More would not show beside the factors that they scale (a test holds the ends against draws). */
const CELLS = 96
const MANY = 400

/** Where there are many values, the same gathered onto evenly spaced ones, without moving the mean. */
function gathered(scales: readonly Scale[], most: number): Nodes {
  if (scales.length <= most)
    return {
      values: Float64Array.from(scales, ({ value }) => value),
      weights: Float64Array.from(scales, ({ weight }) => weight),
      count: scales.length,
    }
  const low = scales.reduce((least, { value }) => Math.min(least, value), Infinity)
  const step = (scales.reduce((most, { value }) => Math.max(most, value), 0) - low) / CELLS
  const weights = new Float64Array(CELLS + 1)
  for (const { value, weight } of scales) {
    const place = (value - low) / step
    const cell = Math.min(CELLS - 1, Math.floor(place))
    weights[cell]! += weight * (cell + 1 - place)
    weights[cell + 1]! += weight * (place - cell)
  }
  return { values: weights.map((_, cell) => low + cell * step), weights, count: CELLS + 1 }
}

function spreadSide(x: Distribution, nodes: Nodes, step: number, tail: number): Lattice {
  const lattice = new Lattice()
  const whole = nodes.weights.reduce((sum, weight) => sum + weight, 0)
  if (whole === 0) {
    lattice.clear(0, 1)
    return lattice
  }
  const largest = nodes.values.reduce((a, b) => Math.max(a, b), 0)
  const reach = Math.ceil((largest * x.quantile(1 - FOLDED * tail)) / step) + 2
  spread(x, nodes, step, reach, lattice)
  lattice.smear *= whole
  fold(lattice, whole)
  return lattice
}

/** Two lattices that hold one distribution's probability between them. */
function joined(low: Lattice, high: Lattice): Lattice {
  const start = Math.min(low.start, high.start)
  const all = new Lattice()
  all.clear(start, Math.max(low.start + low.length, high.start + high.length) - start)
  for (const part of [low, high])
    for (let i = 0; i < part.length; i++) all.masses[part.start - start + i]! += part.masses[i]!
  all.smear = low.smear + high.smear
  return all
}
