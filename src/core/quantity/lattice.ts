import type { Distribution } from './distribution.ts'

/**
 * A distribution as probabilities on the multiples of a step: value (start + i) x step has probability masses[i].
 *
 * Every probability between two lattice points is split between them in proportion to nearness, so the mean is kept
 * exactly, and the variance grows by `smear` x step^2 (1/6 for a density that is smooth over a step). Sums are
 * convolutions; smears add.
 */
export interface Lattice {
  readonly step: number
  readonly start: number
  readonly masses: Float64Array
  readonly smear: number
}

const SMOOTH_SMEAR = 1 / 6

/** First and last point, and whether the distribution ends there or is cut off. */
type Extent = readonly [from: number, to: number, isWhole: boolean]

/** Where a distribution times a scale lies on a lattice; nothing above `limit` is kept. */
function extent(x: Distribution, scale: number, step: number, limit: number): Extent {
  const from = Math.floor((x.min * scale) / step)
  const end = Math.max(from, Math.ceil((x.max * scale) / step))
  return end <= limit ? [from, end, true] : [from, Math.max(from, limit), false]
}

/**
 * Adds weight x P(scale x X = k step) to masses[k - start]. The mass of a point is the second difference of the
 * integrated distribution function; what lies beyond the ends of X's extent is put on its last points.
 */
function addMasses(
  masses: Float64Array,
  start: number,
  x: Distribution,
  scale: number,
  weight: number,
  step: number,
  [from, to, isWhole]: Extent,
): void {
  const unit = step / scale
  const perMass = weight / unit
  let here = x.cdfIntegral(from * unit)
  let slope = 0
  for (let k = from; k <= to; k++) {
    const after = k === to && isWhole ? here + unit : x.cdfIntegral((k + 1) * unit)
    const next = after - here
    if (next > slope) masses[k - start]! += (next - slope) * perMass
    slope = next
    here = after
  }
}

/** Values with weights that add up to 1, standing for a distribution. */
export interface Nodes {
  readonly values: readonly number[]
  readonly weights: readonly number[]
}

/** The distribution of X times one of `nodes`, on a lattice. With a single node: X times a constant. */
export function spread(x: Distribution, nodes: Nodes, step: number, limit: number): Lattice {
  let [start, end] = [Infinity, -Infinity]
  const extents = nodes.values.map((value) => extent(x, value, step, limit))
  for (const [from, to] of extents) {
    if (from < start) start = from
    if (to > end) end = to
  }
  const masses = new Float64Array(end - start + 1)
  extents.forEach((place, i) => {
    const value = nodes.values[i]!
    if (value > 0) addMasses(masses, start, x, value, nodes.weights[i]!, step, place)
    else masses[-start]! += nodes.weights[i]!
  })
  return { step, start, masses, smear: smearOf(x, nodes, start, masses, step) }
}

/** What the lattice added to the variance, in steps squared: measured where X spans few points, 1/6 where many. */
function smearOf(x: Distribution, nodes: Nodes, start: number, masses: Float64Array, step: number): number {
  if (masses.length > 4) return SMOOTH_SMEAR
  let square = 0
  masses.forEach((mass, i) => {
    square += mass * (start + i) ** 2
  })
  const scaleSquare = nodes.values.reduce((sum, value, i) => sum + nodes.weights[i]! * value * value, 0)
  const trueSquare = (x.meanSquare * scaleSquare) / (step * step)
  return Math.max(0, square - trueSquare)
}

/** What is dropped from either end of a sum: far below any coverage interval's ends. */
const NEGLIGIBLE = 1e-9

/** The distribution of a sum of two independent quantities on the same lattice; nothing above `limit` is kept. */
export function convolve(a: Lattice, b: Lattice, limit: number): Lattice {
  const [long, short] = a.masses.length >= b.masses.length ? [a.masses, b.masses] : [b.masses, a.masses]
  const start = a.start + b.start
  const length = Math.max(1, Math.min(long.length + short.length - 1, limit - start + 1))
  const sums = new Float64Array(length)
  for (let j = 0; j < short.length; j++) {
    const weight = short[j]!
    if (weight === 0) continue
    const end = Math.min(long.length, length - j)
    for (let i = 0; i < end; i++) sums[i + j]! += weight * long[i]!
  }
  return trimmed({ step: a.step, start, masses: sums, smear: a.smear + b.smear })
}

function trimmed(lattice: Lattice): Lattice {
  const { masses } = lattice
  let [from, to, left, right] = [0, masses.length, 0, 0]
  while (from < to - 1 && (left += masses[from]!) < NEGLIGIBLE) from++
  while (to > from + 1 && (right += masses[to - 1]!) < NEGLIGIBLE) to--
  return { ...lattice, start: lattice.start + from, masses: masses.subarray(from, to) }
}

/**
 * The p-quantile of a lattice distribution, or null where the lattice was cut off below it.
 *
 * The distribution function half-way between two points is the sum of the masses up to there, less what the smear
 * added: (smear/2 - 1/24) step^2 x slope of the density (first term of the expansion of a convolution with the
 * smear, and the midpoint rule's). Between half-way points it is taken as straight.
 */
export function latticeQuantile(lattice: Lattice, p: number): number | null {
  const { masses, start, step, smear } = lattice
  const undo = smear / 2 - 1 / 24
  let [sum, before] = [0, 0]
  for (let i = 0; i < masses.length; i++) {
    sum += masses[i]!
    const slope = i + 1 < masses.length ? masses[i + 1]! - masses[i]! : 0
    const at = Math.max(before, sum - undo * slope)
    if (at >= p) return (start + i - 0.5 + (at > before ? (p - before) / (at - before) : 1)) * step
    before = at
  }
  return null
}
