import { type Distribution, TAIL } from './distribution.ts'
import { studentTCdf, studentTDensity, studentTQuantile } from './studentTCdf.ts'

/**
 * A value known by scattered readings: its mean, the standard uncertainty of the mean and how many degrees of freedom
 * that rests on; what would fall below zero counts as zero.
 *
 *   X = max(0, value + spread T),   T Student's t with `degrees` degrees of freedom
 *
 * With f and F of T, z = -value/spread and m = degrees:
 *   E[T; T <= z] = -(m + z^2)/(m - 1) f(z)
 *   E[T^2; T <= z] = m [(m - 1)/(m - 2) F_{m-2}(z sqrt((m - 2)/m)) - F(z)]
 * Source: JCGM 101:2008 6.4.9 (scaled and shifted t-distribution); the partial moments by integration.
 * @param spread above 0, in the unit of `value`
 * @param degrees above 2, so that mean and variance exist; need not be whole
 */
export function studentT(value: number, spread: number, degrees: number): Distribution {
  const zero = -value / spread
  const cut = studentTCdf(zero, degrees)
  const lost = spread * integralTo(zero, degrees)
  const cutSquare = square(value, spread, zero, degrees, cut)
  return {
    mean: value + lost,
    meanSquare: value * value + (spread * spread * degrees) / (degrees - 2) - cutSquare,
    min: Math.max(0, value + spread * studentTQuantile(TAIL, degrees)),
    max: Math.max(0, value - spread * studentTQuantile(TAIL, degrees)),
    cdf: (x) => (x < 0 ? 0 : studentTCdf((x - value) / spread, degrees)),
    cdfIntegral: (x) => (x <= 0 ? 0 : spread * integralTo((x - value) / spread, degrees) - lost),
    quantile: (p) => Math.max(0, value + spread * studentTQuantile(p, degrees)),
  }
}

/** Integral of F up to z, E[max(0, z - T)]. */
const integralTo = (z: number, m: number) =>
  z * studentTCdf(z, m) + ((m + z * z) / (m - 1)) * studentTDensity(z, m)

/** E[(value + spread T)^2; T <= z], which the cut at zero takes away. */
function square(value: number, spread: number, z: number, m: number, cut: number): number {
  const first = (-(m + z * z) / (m - 1)) * studentTDensity(z, m)
  const second = m * (((m - 1) / (m - 2)) * studentTCdf(z * Math.sqrt((m - 2) / m), m - 2) - cut)
  return value * value * cut + 2 * value * spread * first + spread * spread * second
}
