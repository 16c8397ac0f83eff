import { convolve } from './convolve.ts'
import { type Distribution, isExact } from './distribution.ts'
import { exact } from './exact.ts'
import { Lattice } from './lattice.ts'
import { latticeDistribution } from './latticeDistribution.ts'
import { latticeQuantile } from './latticeQuantile.ts'
import { nodeAt } from './nodes.ts'
import { spread } from './spread.ts'

/**
 * The sum of `count` independent draws of one quantity, such as eight lamps of a kind.
 *
 * On a lattice, by repeated squaring; the mean is exact, and so is the second moment. Values beyond 1.5 times the
 * reach of the 99.5th percentile are cut off; latticeDistribution.ts says what stands for them.
 */
export function independentCopies(x: Distribution, count: number): Distribution {
  if (count === 1) return x
  if (isExact(x)) return exact(x.mean * count)
  const mean = count * x.mean
  return latticeDistribution(...repeated(x, count), mean, count * (x.meanSquare - x.mean ** 2) + mean ** 2)
}

const STEPS_ACROSS = 64

function repeated(x: Distribution, count: number): [Lattice, number] {
  const median = x.quantile(0.5)
  const root = Math.sqrt(count)
  const above = (x.quantile(0.995) - median) * root
  const below = (median - x.quantile(0.005)) * root
  const across = above + below
  const step =
    Math.min(across / STEPS_ACROSS, Math.max(below / 8, across / 400)) / Math.sqrt(Math.max(1, count / 40))
  for (let beyond = 1.5; ; beyond *= 2) {
    const reach = Math.ceil((count * Math.max(x.mean, median) + beyond * above) / step)
    const one = new Lattice()
    spread(x, nodeAt(1), step, reach, one)
    const sum = power(one, count, reach)
    if (latticeQuantile(sum, 0.9999) !== null) return [sum, step]
  }
}

function power(one: Lattice, count: number, reach: number): Lattice {
  if (count === 1) return one
  const half = power(one, Math.floor(count / 2), reach)
  const double = new Lattice()
  convolve(half, half, reach, double)
  if (count % 2 === 0) return double
  const whole = new Lattice()
  convolve(double, one, reach, whole)
  return whole
}
