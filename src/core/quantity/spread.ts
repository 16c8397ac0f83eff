import type { Distribution } from './distribution.ts'
import type { Lattice } from './lattice.ts'

/** Values with weights that add up to 1, standing for a distribution; `count` of them. */
export interface Nodes {
  readonly values: Float64Array
  readonly weights: Float64Array
  readonly count: number
}

const SMOOTH_SMEAR = 1 / 6

/**
 * Puts the distribution of X times one of `nodes` onto a lattice. With a single node: X times a constant.
 * @param step distance of the lattice's points, in the unit of X times a node
 * @param reach most points that are kept; what lies above them is left out
 */
export function spread(x: Distribution, nodes: Nodes, step: number, reach: number, into: Lattice): void {
  const { values, weights, count } = nodes
  let [start, end] = [Infinity, -Infinity]
  for (let i = 0; i < count; i++) {
    if (weights[i] === 0) continue
    start = Math.min(start, firstPoint(x, values[i]!, step))
    end = Math.max(end, lastPoint(x, values[i]!, step))
  }
  into.clear(start, Math.max(1, Math.min(end - start + 1, reach)))
  for (let i = 0; i < count; i++) if (weights[i] !== 0) addMasses(x, values[i]!, weights[i]!, step, into)
  into.smear = into.length > 4 ? SMOOTH_SMEAR : measuredSmear(x, nodes, step, into)
}

const firstPoint = (x: Distribution, scale: number, step: number) => Math.floor((x.min * scale) / step)
const lastPoint = (x: Distribution, scale: number, step: number) => Math.ceil((x.max * scale) / step)

/** The integrated distribution function at the points of one lattice, and one beyond. */
let integrals = new Float64Array(256)

/** In steps: what lies so near to zero stands on it, as it has no digits left to be split between two points. */
const NEARLY_ZERO = 1e-12

/**
 * Adds weight x P(scale x X = k step) to every point k. The mass of a point is the second difference of the
 * integrated distribution function; what lies beyond the ends of X's own range is put on its last points.
 */
function addMasses(x: Distribution, scale: number, weight: number, step: number, into: Lattice): void {
  const { masses, start } = into
  if (scale * x.max < NEARLY_ZERO * step) {
    masses[-start]! += weight
    return
  }
  const from = firstPoint(x, scale, step)
  const last = Math.max(from, lastPoint(x, scale, step))
  const to = Math.min(last, start + into.length - 1)
  if (to < from) return
  const count = to - from + 2
  if (integrals.length < count) integrals = new Float64Array(2 * count)
  const unit = step / scale
  integrate(x, from, count, unit)
  if (to === last) integrals[count - 1] = integrals[count - 2]! + unit
  const perMass = weight / unit
  let slope = 0
  for (let i = 0; i < count - 1; i++) {
    const next = integrals[i + 1]! - integrals[i]!
    masses[from - start + i]! += (next - slope) * perMass
    slope = next
  }
}

function integrate(x: Distribution, from: number, count: number, unit: number): void {
  if (x.cdfIntegrals) x.cdfIntegrals(integrals, from, count, unit)
  else for (let i = 0; i < count; i++) integrals[i] = x.cdfIntegral((from + i) * unit)
}

/** What a lattice of few points added to the variance, in steps squared; where X spans many it is 1/6. */
function measuredSmear(
  x: Distribution,
  { values, weights, count }: Nodes,
  step: number,
  of: Lattice,
): number {
  let square = 0
  for (let i = 0; i < of.length; i++) square += of.masses[i]! * (of.start + i) ** 2
  let scaleSquare = 0
  for (let i = 0; i < count; i++) scaleSquare += weights[i]! * values[i]! ** 2
  return Math.max(0, square - (x.meanSquare * scaleSquare) / (step * step))
}
