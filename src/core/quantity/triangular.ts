import type { Range } from '../catalogue/category.ts'
import { type Distribution, NEGLIGIBLE_SPREAD, SMALLEST } from './distribution.ts'
import { exact } from './exact.ts'

/**
 * A quantity known by its bounds and its most likely value.
 *
 *   E[X] = (a + c + b)/3     E[X^2] = (a^2 + b^2 + c^2 + ab + ac + bc)/6     with a = low, c = typical, b = high
 *
 * Source: JCGM 100:2008 (GUM) 4.3.9 for the use; the moments are the textbook ones.
 */
export function triangular(range: Range): Distribution {
  const { low, typical, high } = range
  const isNarrow = high - low <= NEGLIGIBLE_SPREAD * high || high < SMALLEST
  return isNarrow ? exact(typical) : new Triangular(range)
}

class Triangular implements Distribution {
  readonly mean: number
  readonly meanSquare: number
  readonly min: number
  readonly max: number
  readonly #mode: number
  /** (b - a)(c - a) and (b - a)(b - c): the squares of what the two sides' lengths are scaled by. */
  readonly #rising: number
  readonly #falling: number

  constructor({ low: a, typical: c, high: b }: Range) {
    this.mean = (a + b + c) / 3
    this.meanSquare = (a * a + b * b + c * c + a * b + a * c + b * c) / 6
    this.min = a
    this.max = b
    this.#mode = c
    this.#rising = (b - a) * (c - a)
    this.#falling = (b - a) * (b - c)
  }
  cdf(x: number): number {
    if (x <= this.min) return 0
    if (x >= this.max) return 1
    return x < this.#mode ? (x - this.min) ** 2 / this.#rising : 1 - (this.max - x) ** 2 / this.#falling
  }
  cdfIntegral(x: number): number {
    if (x <= this.min) return 0
    if (x >= this.max) return x - this.mean
    if (x < this.#mode) return cube(x - this.min) / (3 * this.#rising)
    return x - this.mean + cube(this.max - x) / (3 * this.#falling)
  }
  cdfIntegrals(out: Float64Array, from: number, count: number, unit: number): void {
    for (let i = 0; i < count; i++) out[i] = this.cdfIntegral((from + i) * unit)
  }
  quantile(p: number): number {
    const width = this.max - this.min
    if (p * width < this.#mode - this.min) return this.min + Math.sqrt(p * this.#rising)
    return this.max - Math.sqrt((1 - p) * this.#falling)
  }
}

const cube = (x: number) => x * x * x
