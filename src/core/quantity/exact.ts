import type { Distribution } from './distribution.ts'

/** A value without uncertainty. */
export const exact = (value: number): Distribution => new Exact(value)

class Exact implements Distribution {
  readonly mean: number
  readonly meanSquare: number
  readonly min: number
  readonly max: number

  constructor(value: number) {
    this.mean = value
    this.meanSquare = value * value
    this.min = value
    this.max = value
  }
  cdf(x: number): number {
    return x < this.mean ? 0 : 1
  }
  cdfIntegral(x: number): number {
    return Math.max(0, x - this.mean)
  }
  quantile(): number {
    return this.mean
  }
}
