/**
 * Quantile of a sample, the same as the unit of the values: close to median-unbiased whatever the distribution.
 *
 *   h = (n + 1/3) p + 1/3,   Q = x[floor h] + (h - floor h)(x[floor h + 1] - x[floor h])
 *
 * with x[1] the smallest value and x[n] the largest; beyond them, these. For a few readings of many devices; percentile.ts
 * of the base load is for data that is all there is.
 * Source: definition 8 of Hyndman and Fan, The American Statistician 50 (1996) 361-365, the one that they recommend (M).
 * @param sorted at least one, ascending
 * @param p 0 to 1
 */
export function quantileOf(sorted: readonly number[], p: number): number {
  const n = sorted.length
  const h = Math.min(n, Math.max(1, (n + 1 / 3) * p + 1 / 3))
  const below = Math.floor(h)
  const lower = sorted[below - 1]!
  return lower + (h - below) * (sorted[Math.min(below, n - 1)]! - lower)
}
