import { type Lattice, PADDING } from './lattice.ts'

/** What is moved inwards from either end of a sum: far below the probability outside any coverage interval. */
const NEGLIGIBLE = 1e-6

/**
 * The distribution of the sum of two independent quantities on lattices of the same step.
 * @param reach most points that are kept, counted from the sum's first; what lies above them is left out
 * @param into another lattice than a and b
 */
export function convolve(a: Lattice, b: Lattice, reach: number, into: Lattice): void {
  const [long, short] = a.length >= b.length ? [a, b] : [b, a]
  const length = Math.min(long.length + short.length - 1, reach)
  into.clear(a.start + b.start, length)
  into.smear = a.smear + b.smear
  for (let j = 0; j < short.length; j += 4) addFour(long, short.masses, j, into)
  trim(into)
}

/**
 * into[i + j] += long[i] weights[j] for four neighbouring j at once: each sum is then read and written once instead
 * of four times, which is most of what a convolution costs. The zeros after the last point stand in for what is not there.
 */
function addFour(long: Lattice, weights: Float64Array, j: number, into: Lattice): void {
  const { masses } = long
  const sums = into.masses
  const [w0, w1, w2, w3] = [weights[j]!, weights[j + 1]!, weights[j + 2]!, weights[j + 3]!]
  const end = Math.min(long.length + PADDING, into.length - j)
  let [x1, x2, x3] = [0, 0, 0]
  for (let i = 0; i < end; i++) {
    const x0 = masses[i]!
    sums[i + j]! += w0 * x0 + w1 * x1 + w2 * x2 + w3 * x3
    x3 = x2
    x2 = x1
    x1 = x0
  }
}

/** Puts what is negligible at either end on the next point, until it no longer is. */
function trim(lattice: Lattice): void {
  const { masses } = lattice
  let [first, last] = [0, lattice.length - 1]
  for (; first < last && masses[first]! < NEGLIGIBLE; first++) masses[first + 1]! += masses[first]!
  for (; last > first && masses[last]! < NEGLIGIBLE; last--) masses[last - 1]! += masses[last]!
  if (first > 0) masses.copyWithin(0, first, last + 1)
  lattice.start += first
  lattice.length = last - first + 1
  masses.fill(0, lattice.length, lattice.length + PADDING)
}
