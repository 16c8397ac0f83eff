import type { Interval } from '../quantity/intervalOfSum.ts'
import type { Term } from '../quantity/term.ts'
import { timesFactor } from '../quantity/timesFactor.ts'
import type { EmissionFactor } from './emissionFactor.ts'

/**
 * Emissions of a year's energy, kg CO2e/yr:
 *
 *   emissions = energy x factor / (1 - gridLoss)
 *
 * The loss is the share of generation that does not arrive; a factor that already speaks of consumption has none.
 */
export function emissionsOf(
  energy: Interval,
  terms: readonly Term[],
  coverage: number,
  { kgCo2ePerKwh, gridLoss = 0, relativeUncertainty = 0 }: EmissionFactor,
): Interval {
  return timesFactor(energy, terms, coverage, kgCo2ePerKwh / (1 - gridLoss), relativeUncertainty)
}
