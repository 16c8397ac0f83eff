const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/** Means of quantities that were observed together, and the covariances of those means (GUM 4.2.3 and 5.2.3). */
export function meansOf(columns: readonly (readonly number[])[]): {
  readonly means: number[]
  readonly covariance: number[][]
} {
  const means = columns.map(mean)
  const covariance = columns.map((a, i) =>
    columns.map((b, j) => {
      const products = a.map((value, k) => (value - means[i]!) * (b[k]! - means[j]!))
      return products.reduce((sum, product) => sum + product, 0) / (a.length * (a.length - 1))
    }),
  )
  return { means, covariance }
}
