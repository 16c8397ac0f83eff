import type { NamedEmissionFactor } from '../emissions/emissionFactor.ts'
import type { Household } from '../inventory/household.ts'
import type { NamedTariff } from '../money/tariff.ts'
import { without } from '../without.ts'
import type { EstimateSettings } from './settings.ts'

/**
 * Everything besides the household and the catalogue that an estimate was made from, in a form that can be stored: with it
 * the same estimate can be made again after the operator's settings, tariffs and factors have moved on.
 */
export interface EstimateBasis extends Omit<EstimateSettings, 'tariffs' | 'emissionFactors' | 'limits'> {
  readonly tariffs: readonly NamedTariff[]
  readonly emissionFactors: readonly NamedEmissionFactor[]
}

export function basisOf(household: Household, settings: EstimateSettings): EstimateBasis {
  const { cautions } = settings
  const tariff = settings.tariffs.get(household.tariffCode ?? settings.defaultTariffCode)
  return {
    ...without(settings, 'limits', 'tariffs', 'emissionFactors'),
    cautions: cautions.filter(({ appliesTo }) => appliesTo.includes('estimate')),
    tariffs: tariff && household.tariff === undefined ? [tariff] : [],
    emissionFactors: factorsUsed(household, settings),
  }
}

/** A factor by region and year is chosen among all of its region, and the choice may say so in words. */
function factorsUsed(household: Household, settings: EstimateSettings): readonly NamedEmissionFactor[] {
  const { emissionFactor, emissionFactorCode, emissionFactorFor } = household
  if (emissionFactor) return []
  const code = emissionFactorCode ?? settings.defaultEmissionFactorCode
  return [...settings.emissionFactors.values()].filter((factor) =>
    emissionFactorFor ? factor.regionCode === emissionFactorFor.region : factor.code === code,
  )
}

/** The settings that a basis stands for. They know no limits, since no estimate asks for any. */
export const settingsOfBasis = ({ tariffs, emissionFactors, ...rest }: EstimateBasis): EstimateSettings => ({
  ...rest,
  tariffs: new Map(tariffs.map((tariff) => [tariff.code, tariff])),
  emissionFactors: new Map(emissionFactors.map((factor) => [factor.code, factor])),
  limits: new Map(),
})
