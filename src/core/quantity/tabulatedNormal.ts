import { normalCdf } from './normal.ts'

const REACH = 6.5
const PER_UNIT = 128
const POINTS = 2 * REACH * PER_UNIT + 1
const VALUES = Float64Array.from({ length: POINTS }, (_, i) => normalCdf(i / PER_UNIT - REACH))
/** Density times the distance between points: the slope of the distribution function from point to point. */
const SLOPES = Float64Array.from({ length: POINTS }, (_, i) => {
  const z = i / PER_UNIT - REACH
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / PER_UNIT
})

/**
 * Distribution function of the standard normal distribution from a table, to 1e-11 absolute: several times faster
 * than normalCdf, for the thousands of values that a lattice asks for. Cubic Hermite interpolation, whose error is at
 * most h^4/384 times the fourth derivative (below 1.4 here).
 */
export function tabulatedNormalCdf(z: number): number {
  if (z <= -REACH) return 0
  if (z >= REACH) return 1
  const place = (z + REACH) * PER_UNIT
  const i = Math.min(Math.floor(place), POINTS - 2)
  const t = place - i
  const from = VALUES[i]!
  const rise = VALUES[i + 1]! - from
  const [bend, end] = [SLOPES[i]! - rise, SLOPES[i + 1]! - rise]
  return from + t * (rise + (1 - t) * (bend * (1 - t) - end * t))
}
