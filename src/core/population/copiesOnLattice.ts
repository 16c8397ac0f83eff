import { convolve } from '../quantity/convolve.ts'
import { type Distribution, variance } from '../quantity/distribution.ts'
import { Lattice } from '../quantity/lattice.ts'
import { latticeDistribution } from '../quantity/latticeDistribution.ts'
import { latticeQuantile } from '../quantity/latticeQuantile.ts'
import { nodeAt } from '../quantity/nodes.ts'
import { spread } from '../quantity/spread.ts'

/** Fewest steps in the sum's own standard deviation. */
const STEPS_IN_DEVIATION = 6
const REACH = 8
const SMOOTH_SMEAR = 1 / 6

/**
 * The sum of `count` independent copies of something that is often nothing, by repeated squaring of its lattice. Mean and
 * variance are exact. Unlike independentCopies it takes no finer steps than the sum it goes into can show.
 * @param resolution largest step
 */
export function copiesOnLattice(x: Distribution, count: number, resolution: number): Distribution {
  if (count === 1) return x
  const mean = count * x.mean
  const deviation = Math.sqrt(count * variance(x))
  const step = Math.min(resolution, deviation / STEPS_IN_DEVIATION)
  for (let reach = REACH; ; reach *= 2) {
    const points = Math.ceil((mean + reach * deviation) / step)
    const one = new Lattice()
    spread(x, nodeAt(1), step, points, one)
    // What is nothing lies on a point of the lattice, and is not smeared.
    one.smear = SMOOTH_SMEAR * (1 - x.cdf(0))
    const sum = power(one, count, points)
    if (latticeQuantile(sum, 0.999) !== null)
      return latticeDistribution(sum, step, mean, deviation ** 2 + mean ** 2)
  }
}

function power(one: Lattice, count: number, points: number): Lattice {
  if (count === 1) return one
  const half = power(one, Math.floor(count / 2), points)
  const double = new Lattice()
  convolve(half, half, points, double)
  if (count % 2 === 0) return double
  const whole = new Lattice()
  convolve(double, one, points, whole)
  return whole
}
