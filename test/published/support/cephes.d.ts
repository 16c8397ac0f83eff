/** The package carries types, but its `exports` hide them from TypeScript; these are the functions that are used here. */
declare module 'cephes' {
  /** Resolves once the functions may be called. */
  export const compiled: Promise<void>
  /** Distribution function of the standard normal distribution. */
  export function ndtr(z: number): number
  /** Its inverse. */
  export function ndtri(p: number): number
  /** Quantile of Student's t distribution. */
  export function stdtri(degreesOfFreedom: number, p: number): number
  /** Distribution function of the binomial distribution: at most k of n. */
  export function bdtr(k: number, n: number, p: number): number
  /** Regularized incomplete beta function I(x; a, b). */
  export function incbet(a: number, b: number, x: number): number
}
