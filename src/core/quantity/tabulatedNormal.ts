import { normalCdf } from './normal.ts'

const REACH = 7
const PER_UNIT = 128
const INTERVALS = 2 * REACH * PER_UNIT
/** Value and slope of the distribution function at each point, side by side, since they are read together. */
const TABLE = new Float64Array(2 * (INTERVALS + 1))
for (let i = 0; i <= INTERVALS; i++) {
  const z = i / PER_UNIT - REACH
  TABLE[2 * i] = normalCdf(z)
  TABLE[2 * i + 1] = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / PER_UNIT
}

/**
 * Distribution function of the standard normal distribution from a table, to 1e-11 absolute: several times faster
 * than normalCdf, for the thousands of values that a lattice asks for. Cubic Hermite interpolation, whose error is at
 * most h^4/384 times the fourth derivative (below 0.56 here).
 */
export function tabulatedNormalCdf(z: number): number {
  if (z <= -REACH) return 0
  if (z >= REACH) return 1
  const place = (z + REACH) * PER_UNIT
  const i = Math.floor(place)
  const t = place - i
  const from = TABLE[2 * i]!
  const rise = TABLE[2 * i + 2]! - from
  const bend = TABLE[2 * i + 1]! - rise
  const end = TABLE[2 * i + 3]! - rise
  return from + t * (rise + (1 - t) * (bend * (1 - t) - end * t))
}
