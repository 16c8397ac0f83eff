import type { Distribution } from './distribution.ts'

/** A value without uncertainty. */
export function exact(value: number): Distribution {
  return {
    mean: value,
    meanSquare: value * value,
    min: value,
    max: value,
    cdf: (x) => (x < value ? 0 : 1),
    cdfIntegral: (x) => Math.max(0, x - value),
    quantile: () => value,
  }
}
