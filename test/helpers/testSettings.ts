import type { EstimateSettings } from '../../src/core/estimate/settings.ts'
import { cautions } from './cautions.ts'
import { limits } from './limits.ts'
import { measures } from './measures.ts'
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
        retired: false,
        tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
        source: 'invented sample',
        sampleData: true,
      },
    ],
  ]),
  defaultTariffCode: 'flat',
  emissionFactors: new Map([
    [
      'grid',
      {
        code: 'grid',
        retired: false,
        regionCode: 'grid',
        region: 'Nowhere',
        kind: 'average',
        year: 2024,
        factor: { kgCo2ePerKwh: 0.5 },
        gases: 'CO2e',
        source: 'invented for the tests',
        mark: 'M',
      },
    ],
  ]),
  referenceRevision: 1,
  defaultEmissionFactorCode: 'grid',
  meterPresets,
  limits,
  measures,
  cautions,
  weeksPerYear: 52,
  coverageProbability: 0.9,
}
