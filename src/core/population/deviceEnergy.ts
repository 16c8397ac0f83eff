import type { Range } from '../catalogue/category.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { twoPieceLognormal } from '../quantity/twoPieceLognormal.ts'
import { addCumulants, type Cumulants, drawCumulants, scaledCumulants } from './cumulants.ts'
import { matchedLognormal } from './matchedLognormal.ts'

/** One mode of a device: its draw in W, and how many kWh a year one W of it comes to. */
export interface ModeDraw {
  readonly draw: Range
  readonly kwhPerW: number
}

/** What one device uses in a year, kWh. */
export interface DeviceEnergy {
  readonly distribution: Distribution
  readonly cumulants: Cumulants
}

/**
 * Energy of one device over its modes, whose draws are independent: as in the estimate of one household. With one mode its
 * distribution is the typical draw's; with several it has the sum's mean, variance and skewness.
 */
export function deviceEnergy(modes: readonly ModeDraw[]): DeviceEnergy {
  const counted = modes.filter(({ kwhPerW }) => kwhPerW > 0)
  const cumulants = addCumulants(
    counted.map(({ draw, kwhPerW }) => scaledCumulants(drawCumulants(draw), kwhPerW)),
  )
  const [first] = counted
  const distribution =
    counted.length === 1
      ? scaled(twoPieceLognormal(first!.draw), first!.kwhPerW)
      : matchedLognormal(cumulants)
  return { distribution, cumulants }
}

const scaled = (x: Distribution, by: number): Distribution => ({
  mean: x.mean * by,
  meanSquare: x.meanSquare * by * by,
  min: x.min * by,
  max: x.max * by,
  cdf: (value) => x.cdf(value / by),
  cdfIntegral: (value) => by * x.cdfIntegral(value / by),
  quantile: (p) => by * x.quantile(p),
})
