/**
 * What is known of one non-negative quantity: a probability distribution (JCGM 101:2008, 5).
 *
 * `cdfIntegral` is the integral of the distribution function up to x, that is E[max(0, x - X)]. It is what puts a
 * distribution onto a lattice without moving its mean (see spread.ts), so every kind gives it in closed form.
 */
export interface Distribution {
  readonly mean: number
  /** E[X^2], about zero. */
  readonly meanSquare: number
  /** All but TAIL of the probability at either end lies between these two. */
  readonly min: number
  readonly max: number
  cdf(x: number): number
  cdfIntegral(x: number): number
  /**
   * The same for many values: out[i] = cdfIntegral((from + i) x unit) for i = 0 .. count - 1. For kinds that stand in
   * most sums: a loop of their own is several times faster than a call for each value.
   */
  cdfIntegrals?(out: Float64Array, from: number, count: number, unit: number): void
  /** Inverse of the distribution function for p in 0..1. */
  quantile(p: number): number
}

export const variance = (x: Distribution): number => Math.max(0, x.meanSquare - x.mean * x.mean)

/** True for a value without uncertainty. */
export const isExact = (x: Distribution): boolean => x.min === x.max

/** Standard deviation over mean; 0 for an exact value, also for an exact zero. */
export const relativeSpread = (x: Distribution): number =>
  x.mean === 0 ? 0 : Math.sqrt(variance(x)) / x.mean

/** Probability that `min` and `max` may leave out at either end; on a lattice it is put on the last point. */
export const TAIL = 1e-6

/**
 * A half-width below this share of the value shows in no digit that is given, and its square would be lost beside the
 * value's: such a value counts as exact.
 */
export const NEGLIGIBLE_SPREAD = 1e-7

/** Below this, squares and what is made of them are lost to underflow; no unit of the service has so small a figure. */
export const SMALLEST = 1e-60
