import type { Distribution } from './distribution.ts'
import { exact } from './exact.ts'

/**
 * A value with one or two independent rectangular errors, such as a meter's percent part and its counts part;
 * what would fall below zero counts as zero.
 *
 *   X = max(0, value + E1 + E2),   Ei rectangular on +-halfWidth_i
 *
 * All in the unit of `value`. Without the cut at zero the density is a trapezoid, flat over value +- (a - b) and zero
 * outside value +- (a + b), with a the larger half-width; its integrals are polynomials of the distance from the
 * nearer end. A half-width below a millionth of the other is merged into it, to keep them accurate.
 * Source: JCGM 100:2008 (GUM) 4.3.7 for the rectangular limit of error, 4.3.9 for the trapezoid.
 */
export function rectangularSum(value: number, halfWidth1: number, halfWidth2 = 0): Distribution {
  const [a, b] = widths(halfWidth1, halfWidth2)
  if (a === 0) return exact(Math.max(0, value))
  const shape = trapezoid(value, a, b)
  const min = Math.max(0, value - a - b)
  const max = Math.max(0, value + a + b)
  const clipped = value - a - b < 0
  const lost = clipped ? shape.integral(0) : 0
  return {
    mean: value + lost,
    meanSquare: value * value + (a * a + b * b) / 3 - (clipped ? 2 * shape.secondIntegral(0) : 0),
    min,
    max,
    cdf: (x) => (x < min ? 0 : x >= max ? 1 : shape.cdf(x)),
    cdfIntegral: (x) => (x <= min ? 0 : x >= max ? x - value - lost : shape.integral(x) - lost),
    quantile: (p) => Math.max(0, shape.quantile(p)),
  }
}

function widths(halfWidth1: number, halfWidth2: number): [number, number] {
  const [a, b] = halfWidth1 >= halfWidth2 ? [halfWidth1, halfWidth2] : [halfWidth2, halfWidth1]
  return b < a * 1e-6 ? [Math.hypot(a, b), 0] : [a, b]
}

/** Distribution function of value + E1 + E2, its first two integrals and its inverse; a > 0, a >= b >= 0. */
function trapezoid(value: number, a: number, b: number) {
  const height = 1 / (2 * a)
  const rise = b === 0 ? 0 : height / (2 * b)
  const start = value - a - b
  const flat = value - a + b
  const atFlat = b * height

  /** For x up to the middle; the upper half follows by symmetry. */
  function lowerCdf(x: number): number {
    const [s, t] = [x - start, x - flat]
    if (s <= 0) return 0
    return t <= 0 ? (rise * s * s) / 2 : atFlat + height * t
  }
  function lowerIntegral(x: number): number {
    const [s, t] = [x - start, x - flat]
    if (s <= 0) return 0
    if (t <= 0) return (rise * s * s * s) / 6
    return (rise * (2 * b) ** 3) / 6 + atFlat * t + (height * t * t) / 2
  }
  function secondIntegral(x: number): number {
    if (x > value) return ((x - value) ** 2 + (a * a + b * b) / 3) / 2 - secondIntegral(2 * value - x)
    const [s, t] = [x - start, x - flat]
    if (s <= 0) return 0
    if (t <= 0) return (rise * s ** 4) / 24
    const ramp = 2 * b
    return (rise * ramp ** 4) / 24 + (rise * ramp ** 3 * t) / 6 + (atFlat * t * t) / 2 + (height * t ** 3) / 6
  }
  function lowerQuantile(p: number): number {
    return p < atFlat ? start + Math.sqrt((2 * p) / rise) : flat + (p - atFlat) / height
  }
  return {
    cdf: (x: number) => (x <= value ? lowerCdf(x) : 1 - lowerCdf(2 * value - x)),
    integral: (x: number) => (x <= value ? lowerIntegral(x) : x - value + lowerIntegral(2 * value - x)),
    secondIntegral,
    quantile: (p: number) => (p <= 0.5 ? lowerQuantile(p) : 2 * value - lowerQuantile(1 - p)),
  }
}
