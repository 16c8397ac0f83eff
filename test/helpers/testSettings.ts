import type { EstimateSettings } from '../../src/core/estimate/settings.ts'
import { cautions } from './cautions.ts'
import { limits } from './limits.ts'
import { meterPresets } from './meterPresets.ts'

/** Settings for tests of the core, all figures invented. */
export const testSettings: EstimateSettings = {
  supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
  tariffs: new Map([
    [
      'flat',
      {
        code: 'flat',
        name: 'Invented price',
        tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
        source: 'invented sample',
        sampleData: true,
      },
    ],
  ]),
  defaultTariffCode: 'flat',
  emissionFactors: new Map(),
  defaultEmissionFactorCode: 'none',
  meterPresets,
  limits,
  cautions,
  weeksPerYear: 52,
  coverageProbability: 0.9,
}
