/**
 * The value below which a share of sorted values lies: linear interpolation at (n - 1) p between order statistics.
 *
 *   h = (n - 1) p,   Q = x[floor h] + (h - floor h)(x[floor h + 1] - x[floor h])
 *
 * Wrong choice where the values are samples of unequal weight.
 * Source: definition 7 of Hyndman and Fan, The American Statistician 50 (1996) 361-365 (M), the default of R, of
 * Python's numpy and of spreadsheets' inclusive percentile.
 * @param sorted at least one, ascending
 * @param share 0 to 1; beyond these the ends
 */
export function percentile(sorted: Float64Array, share: number): number {
  const place = (sorted.length - 1) * Math.min(1, Math.max(0, share))
  const below = Math.floor(place)
  const next = sorted[Math.min(below + 1, sorted.length - 1)]!
  return sorted[below]! + (place - below) * (next - sorted[below]!)
}

export const median = (values: readonly number[]) => percentile(Float64Array.from(values).sort(), 0.5)
