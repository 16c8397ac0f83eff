import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import type { Term } from '../../../src/core/quantity/term.ts'

/** Standard deviation of the shared factors below; rectangular, so that it stays above zero. */
const SPREAD = 0.5
const sharedFactor = rectangularSum(1, SPREAD * Math.sqrt(3))

/**
 * Terms of the core whose sum spreads like a sum of quantities with this covariance: each quantity is a sum of shared
 * factors by the Cholesky rows of the covariance. Only the spread is theirs; the mean is moved so that all stay
 * above zero. With `keepShared` false every factor stands alone, which drops the correlation.
 * @throws Error where a row would be negative: sums of non-negative shared factors cannot correlate negatively
 */
export function sharedTerms(covariance: readonly (readonly number[])[], keepShared = true): Term[] {
  const rows = cholesky(covariance)
  return rows.flatMap((row, i) =>
    row.map((loading, j) => {
      if (loading < 0) throw new Error('The core cannot express a negative correlation.')
      const key = keepShared ? `common-${j}` : `common-${j}-of-${i}`
      return { coefficient: loading / SPREAD, factors: [], shared: { key, distribution: sharedFactor } }
    }),
  )
}

function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const rows: number[][] = []
  for (let i = 0; i < matrix.length; i++) {
    const row: number[] = []
    for (let j = 0; j < i; j++) row.push((matrix[i]![j]! - dot(row, rows[j]!, j)) / rows[j]![j]!)
    row.push(Math.sqrt(matrix[i]![i]! - dot(row, row, i)))
    rows.push(row)
  }
  return rows
}

function dot(a: readonly number[], b: readonly number[], length: number): number {
  let sum = 0
  for (let k = 0; k < length; k++) sum += a[k]! * b[k]!
  return sum
}
