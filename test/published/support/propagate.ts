/**
 * The law of propagation of uncertainty in general form, as a yardstick: the core itself never divides, never
 * subtracts and knows no correlation but that of shared factors.
 *
 *   u_c^2(y) = sum_i sum_j (df/dx_i)(df/dx_j) u(x_i, x_j)
 *
 * Sensitivities by central differences over +- one standard uncertainty (5.1.3, note 2). Source: JCGM 100:2008 (GUM)
 * 5.1.2 and 5.2.2, equations 10 and 13.
 */
export function propagate(
  model: (inputs: readonly number[]) => number,
  values: readonly number[],
  covariance: readonly (readonly number[])[],
): number {
  const slopes = values.map((_, i) => slope(model, values, i, Math.sqrt(covariance[i]![i]!)))
  let square = 0
  for (let i = 0; i < values.length; i++)
    for (let j = 0; j < values.length; j++) square += slopes[i]! * slopes[j]! * covariance[i]![j]!
  return Math.sqrt(square)
}

function slope(
  model: (inputs: readonly number[]) => number,
  values: readonly number[],
  i: number,
  step: number,
) {
  const at = (shift: number) => model(values.map((other, j) => (j === i ? other + shift : other)))
  return (at(step) - at(-step)) / (2 * step)
}

/** The same uncertainties with every correlation dropped. */
export const withoutCorrelation = (covariance: readonly (readonly number[])[]): number[][] =>
  covariance.map((row, i) => row.map((value, j) => (i === j ? value : 0)))

/**
 * Effective degrees of freedom of a sum of independent components; Infinity marks one that is known exactly.
 * Source: JCGM 100:2008 (GUM) G.4.1, equation G.2b (Welch-Satterthwaite).
 */
export function effectiveDegreesOfFreedom(
  components: readonly { readonly uncertainty: number; readonly degreesOfFreedom: number }[],
): number {
  const square = components.reduce((sum, { uncertainty }) => sum + uncertainty ** 2, 0)
  const parts = components.reduce(
    (sum, { uncertainty, degreesOfFreedom }) => sum + uncertainty ** 4 / degreesOfFreedom,
    0,
  )
  return square ** 2 / parts
}
