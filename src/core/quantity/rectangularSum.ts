import { type Distribution, NEGLIGIBLE_SPREAD, SMALLEST } from './distribution.ts'
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
  const larger = Math.max(halfWidth1, halfWidth2)
  const smaller = Math.min(halfWidth1, halfWidth2)
  if (value + larger + smaller <= 0) return exact(0)
  if (larger <= NEGLIGIBLE_SPREAD * value || larger < SMALLEST) return exact(Math.max(0, value))
  if (smaller < larger * 1e-6) return new Trapezoid(value, Math.hypot(larger, smaller), 0)
  return new Trapezoid(value, larger, smaller)
}

class Trapezoid implements Distribution {
  readonly mean: number
  readonly meanSquare: number
  readonly min: number
  readonly max: number
  readonly #value: number
  /** Half of the flat top's length. */
  readonly #flat: number
  /** Half of the base's length. */
  readonly #base: number
  /** Length of either slope. */
  readonly #ramp: number
  /** Density on the flat top. */
  readonly #height: number
  /** Probability of a slope, over the square of its length. */
  readonly #rise: number
  /** What the cut at zero adds to the mean: the integral of the distribution function below zero. */
  readonly #lost: number

  constructor(value: number, a: number, b: number) {
    this.#value = value
    this.#flat = a - b
    this.#base = a + b
    this.#ramp = 2 * b
    this.#height = 1 / (2 * a)
    this.#rise = b === 0 ? 0 : this.#height / (4 * b)
    const clipped = value < this.#base
    this.#lost = clipped ? this.#integral(0) : 0
    this.min = clipped ? 0 : value - this.#base
    this.max = value + this.#base
    this.mean = value + this.#lost
    const square = value * value + (a * a + b * b) / 3
    this.meanSquare = clipped ? square - 2 * this.#secondIntegral(0, (a * a + b * b) / 3) : square
  }
  cdf(x: number): number {
    if (x < this.min) return 0
    if (x >= this.max) return 1
    const distance = x - this.#value
    return distance <= 0 ? this.#lowerCdf(distance) : 1 - this.#lowerCdf(-distance)
  }
  cdfIntegral(x: number): number {
    if (x <= this.min) return 0
    return x >= this.max ? x - this.mean : this.#integral(x) - this.#lost
  }
  cdfIntegrals(out: Float64Array, from: number, count: number, unit: number): void {
    for (let i = 0; i < count; i++) out[i] = this.cdfIntegral((from + i) * unit)
  }
  quantile(p: number): number {
    const fromEnd = this.#lowerQuantile(p <= 0.5 ? p : 1 - p)
    return Math.max(0, p <= 0.5 ? this.#value - fromEnd : this.#value + fromEnd)
  }

  /** The distribution function at value + distance, distance <= 0; the upper half follows by symmetry. */
  #lowerCdf(distance: number): number {
    const onBase = distance + this.#base
    const onFlat = distance + this.#flat
    return onFlat <= 0 ? this.#rise * onBase * onBase : this.#height * (this.#ramp / 2 + onFlat)
  }
  /** Integral of the uncut distribution function up to x. */
  #integral(x: number): number {
    const distance = x - this.#value
    return distance <= 0 ? this.#lowerIntegral(distance) : distance + this.#lowerIntegral(-distance)
  }
  #lowerIntegral(distance: number): number {
    const onBase = distance + this.#base
    const onFlat = distance + this.#flat
    if (onFlat <= 0) return (this.#rise * onBase * onBase * onBase) / 3
    const ramp = this.#ramp
    return this.#height * ((ramp * ramp) / 6 + ((ramp + onFlat) * onFlat) / 2)
  }
  /** Integral of #integral up to x. */
  #secondIntegral(x: number, variance: number): number {
    const distance = x - this.#value
    if (distance > 0)
      return (distance * distance + variance) / 2 - this.#secondIntegral(this.#value - distance, variance)
    const onBase = distance + this.#base
    const onFlat = distance + this.#flat
    if (onFlat <= 0) return (this.#rise * onBase ** 4) / 12
    const ramp = this.#ramp
    return (
      this.#height *
      (ramp ** 3 / 24 + (ramp * ramp * onFlat) / 6 + (ramp * onFlat ** 2) / 4 + onFlat ** 3 / 6)
    )
  }
  /** How far below value the quantile of p <= 1/2 lies. */
  #lowerQuantile(p: number): number {
    const atFlat = (this.#height * this.#ramp) / 2
    return p < atFlat ? this.#base - Math.sqrt(p / this.#rise) : this.#flat - (p - atFlat) / this.#height
  }
}
