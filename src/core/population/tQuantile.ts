import { normalQuantile } from '../quantity/normal.ts'
import { studentTQuantile } from '../quantity/studentTCdf.ts'

/** From here on the series is better than 1e-12, and the distribution function loses digits. */
const MANY = 2_000

/**
 * Quantile of Student's t to 1e-10 for any number of degrees of freedom: a survey may have a hundred thousand homes.
 *
 *   t = z + (z^3 + z)/(4 n) + (5 z^5 + 16 z^3 + 3 z)/(96 n^2) + (3 z^7 + 19 z^5 + 17 z^3 - 15 z)/(384 n^3)
 *
 * with z of the normal distribution and n many degrees of freedom; below, from the distribution function.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5 (from memory; checked against
 * arbitrary-precision values).
 */
export function tQuantile(p: number, degrees: number): number {
  if (degrees < MANY) return studentTQuantile(p, degrees)
  const z = normalQuantile(p)
  const s = z * z
  const first = (z * (s + 1)) / (4 * degrees)
  const second = (z * (3 + s * (16 + 5 * s))) / (96 * degrees ** 2)
  const third = (z * (-15 + s * (17 + s * (19 + 3 * s)))) / (384 * degrees ** 3)
  return z + first + second + third
}
