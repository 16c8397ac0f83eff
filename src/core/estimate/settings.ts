import type { NamedEmissionFactor } from '../emissions/emissionFactor.ts'
import type { Supply } from '../inventory/household.ts'
import type { NamedTariff } from '../money/tariff.ts'

/** What the operator sets once and a request may override. */
export interface EstimateSettings {
  readonly supply: Supply
  readonly tariffs: ReadonlyMap<string, NamedTariff>
  readonly defaultTariffCode: string
  readonly emissionFactors: ReadonlyMap<string, NamedEmissionFactor>
  readonly defaultEmissionFactorCode: string
  readonly weeksPerYear: number
  readonly coverageProbability: number
}
