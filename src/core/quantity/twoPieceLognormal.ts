import type { Range } from '../catalogue/category.ts'
import { type Distribution, TAIL } from './distribution.ts'
import { exact } from './exact.ts'
import { normalCdf, normalQuantile } from './normal.ts'
import { tabulatedNormalCdf } from './tabulatedNormal.ts'

/** The smallest step that IEC 62301 asks a meter to resolve below 10 W (ed. 1, 4.4); a low of 0 W is read as this. */
export const SMALLEST_W = 0.01

const Z95 = normalQuantile(0.95)
const Z_TAIL = normalQuantile(1 - TAIL)

/**
 * A typical draw: ln X is normal on either side of the median, with a spread of its own on each, so that low,
 * typical and high are the 5th, 50th and 95th percentile.
 *
 *   X = m e^(s z),  z standard normal,  m = typical,
 *   s = ln(typical/low)/1.6449 below the median,  ln(high/typical)/1.6449 above
 *
 * Equal low, typical and high are an exact value. Where only two are equal, half of the probability sits at the
 * median. Wrong choice for a quantity that can truly be zero, or that has two humps (a device with a fault state).
 * Assumption: DESIGN section 3, after the log-normal spread of field-metered standby draws. Common practice, no source.
 */
export function twoPieceLognormal({ low, typical, high }: Range): Distribution {
  if (low === typical && typical === high) return exact(typical)
  const median = Math.max(typical, SMALLEST_W)
  const below = Math.log(median / Math.min(Math.max(low, SMALLEST_W), median)) / Z95
  const above = Math.log(Math.max(high, median) / median) / Z95
  return lognormalOf(median, below, above)
}

/** The same by its median and the spreads of ln X below and above it. */
export function lognormalOf(median: number, below: number, above: number): Distribution {
  return Math.max(below, above) < NARROW ? exact(median) : new TwoPieceLognormal(median, below, above)
}

/** Less would not show, and would be lost in the error of tabulatedNormalCdf. */
const NARROW = 1e-6

class TwoPieceLognormal implements Distribution {
  readonly mean: number
  readonly meanSquare: number
  readonly min: number
  readonly max: number
  readonly #median: number
  readonly #below: number
  readonly #above: number
  /** One over the spreads; a spread of zero stands as a very steep one, so that no score is 0/0. */
  readonly #perBelow: number
  readonly #perAbove: number
  /** Median times e^(s^2/2): what a side's mean would be if the side were the whole. */
  readonly #growBelow: number
  readonly #growAbove: number
  /** E[X; X <= median], less what the upper side's formula gives there. */
  readonly #partBelow: number

  constructor(median: number, below: number, above: number) {
    this.#median = median
    this.#below = below
    this.#above = above
    this.#perBelow = below === 0 ? STEEP : 1 / below
    this.#perAbove = above === 0 ? STEEP : 1 / above
    this.#growBelow = median * Math.exp((below * below) / 2)
    this.#growAbove = median * Math.exp((above * above) / 2)
    const lower = this.#growBelow * normalCdf(-below)
    this.#partBelow = lower - this.#growAbove * normalCdf(-above)
    this.mean = lower + this.#growAbove * normalCdf(above)
    this.meanSquare =
      median *
      median *
      (Math.exp(2 * below * below) * normalCdf(-2 * below) +
        Math.exp(2 * above * above) * normalCdf(2 * above))
    this.min = median * Math.exp(-below * Z_TAIL)
    this.max = median * Math.exp(above * Z_TAIL)
  }
  cdf(x: number): number {
    if (x <= 0) return 0
    const logarithm = Math.log(x / this.#median)
    // Without a spread above, the upper half of the probability sits at the median.
    if (logarithm >= 0 && this.#above === 0) return 1
    return normalCdf(logarithm * (logarithm < 0 ? this.#perBelow : this.#perAbove))
  }
  cdfIntegral(x: number): number {
    return x <= 0 ? 0 : this.#integralAt(x, Math.log(x / this.#median))
  }
  cdfIntegrals(out: Float64Array, from: number, count: number, unit: number): void {
    const logOfUnit = Math.log(unit / this.#median)
    for (let i = 0; i < count; i++) {
      const k = from + i
      out[i] = k <= 0 ? 0 : this.#integralAt(k * unit, logOfWhole(k) + logOfUnit)
    }
  }
  quantile(p: number): number {
    const z = normalQuantile(p)
    const spread = z < 0 ? this.#below : this.#above
    return spread === 0 ? this.#median : this.#median * Math.exp(spread * z)
  }

  /** x F(x) - E[X; X <= x], with logarithm = ln(x/median). */
  #integralAt(x: number, logarithm: number): number {
    if (logarithm < 0) {
      const z = logarithm * this.#perBelow
      return Math.max(0, x * tabulatedNormalCdf(z) - this.#growBelow * shiftedCdf(z, this.#below))
    }
    const z = logarithm * this.#perAbove
    return x * tabulatedNormalCdf(z) - this.#partBelow - this.#growAbove * shiftedCdf(z, this.#above)
  }
}

const STEEP = 1e300
/** Beyond this spread e^(s^2/2) would make the table's error show. */
const WIDE = 3
const shiftedCdf = (z: number, spread: number): number =>
  spread > WIDE ? normalCdf(z - spread) : tabulatedNormalCdf(z - spread)

/** Logarithms of the whole numbers, which every lattice asks for: a table is several times faster than Math.log. */
const LOGARITHMS = Float64Array.from({ length: 1024 }, (_, k) => Math.log(k))
const logOfWhole = (k: number): number => (k < 1024 ? LOGARITHMS[k]! : Math.log(k))
