import type { CautionList } from '../cautions/caution.ts'
import type { NamedEmissionFactor } from '../emissions/emissionFactor.ts'
import type { Supply } from '../inventory/household.ts'
import type { Limit } from '../limits/limit.ts'
import type { NamedTariff } from '../money/tariff.ts'
import type { MeterPresets } from '../readings/meterPreset.ts'
import type { Measure } from '../savings/measure.ts'

/** What the operator sets once and a request may override. */
export interface OperatorSettings {
  readonly supply: Supply
  readonly defaultTariffCode: string
  readonly defaultEmissionFactorCode: string
  /** What each class of meter can do, for readings that name a class in place of a meter's own accuracy. */
  readonly meterPresets: MeterPresets
  /** Published limits by their code. */
  readonly limits: ReadonlyMap<string, Limit>
  /** What a household can do about standby, by code, in the order in which it is offered. */
  readonly measures: ReadonlyMap<string, Measure>
  /** In the order in which they are shown. */
  readonly cautions: CautionList
  readonly weeksPerYear: number
  readonly coverageProbability: number
}

/** The same with what a request names by its code; retired ones too, so that old estimates can still be made. */
export interface EstimateSettings extends OperatorSettings {
  readonly tariffs: ReadonlyMap<string, NamedTariff>
  readonly emissionFactors: ReadonlyMap<string, NamedEmissionFactor>
  /** The revision of tariffs and emission factors that these are of. */
  readonly referenceRevision: number
}
