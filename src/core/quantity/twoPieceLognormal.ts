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
  const growBelow = median * Math.exp((below * below) / 2)
  const growAbove = median * Math.exp((above * above) / 2)
  const partBelow = growBelow * normalCdf(-below)
  const partAboveFrom = normalCdf(-above)
  const mean = partBelow + growAbove * normalCdf(above)

  /** E[X; X <= x] */
  function partialMean(x: number, z: number): number {
    return x < median
      ? growBelow * tabulatedNormalCdf(z - below)
      : partBelow + growAbove * (tabulatedNormalCdf(z - above) - partAboveFrom)
  }
  const score = (x: number) => {
    const logarithm = Math.log(x / median)
    if (logarithm < 0) return below === 0 ? -Infinity : logarithm / below
    return above === 0 ? Infinity : logarithm / above
  }
  const quantile = (p: number) => {
    const z = normalQuantile(p)
    const spread = z < 0 ? below : above
    return spread === 0 ? median : median * Math.exp(spread * z)
  }
  return {
    mean,
    meanSquare:
      median *
      median *
      (Math.exp(2 * below * below) * normalCdf(-2 * below) +
        Math.exp(2 * above * above) * normalCdf(2 * above)),
    min: median * Math.exp(-below * Z_TAIL),
    max: median * Math.exp(above * Z_TAIL),
    cdf: (x) => (x <= 0 ? 0 : normalCdf(score(x))),
    cdfIntegral(x) {
      if (x <= 0) return 0
      const z = score(x)
      return Math.max(0, x * tabulatedNormalCdf(z) - partialMean(x, z))
    },
    quantile,
  }
}
