import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Category } from '../../../src/core/catalogue/category.ts'
import type { EstimateSettings } from '../../../src/core/estimate/settings.ts'
import { evaluateReading } from '../../../src/core/readings/evaluateReading.ts'
import type { Reading } from '../../../src/core/readings/reading.ts'
import type { ReadingToEvaluate } from '../../../src/core/readings/readingEvaluation.ts'
import { cautions } from '../../helpers/cautions.ts'
import { limits as publishedLimits } from '../../helpers/limits.ts'
import { measures } from '../../helpers/measures.ts'
import { meterPresets } from '../../helpers/meterPresets.ts'
import { seriesOf } from './noise.ts'

const draw = (yearFrom: number | null, yearTo: number | null, lowW: number, highW: number) => ({
  yearFrom,
  yearTo,
  lowW,
  typicalW: (lowW + highW) / 2,
  highW,
  provenance: { kind: 'sample', citation: null, n: null } as const,
})

export const category: Category = {
  code: 'lamp',
  name: 'Lamp',
  group: 'lighting-and-smart-home',
  aliases: ['light'],
  defaultQuantity: 4,
  retired: false,
  keepPowered: null,
  powerFactor: { low: 0.2, typical: 0.4, high: 0.6 },
  modes: [
    { mode: 'off', defaultHoursPerWeek: 10, draws: [draw(null, null, 0.1, 0.3)] },
    {
      mode: 'standby',
      defaultHoursPerWeek: 100,
      draws: [draw(null, 2012, 4, 9), draw(2013, null, 1, 2)],
    },
  ],
}
const published: Category = {
  ...category,
  code: 'fan',
  name: 'Fan',
  aliases: [],
  modes: [
    {
      mode: 'off',
      defaultHoursPerWeek: 1,
      draws: [{ ...draw(null, null, 1, 2), provenance: { kind: 'published', citation: 'c', n: null } }],
    },
  ],
}
export const catalogue = catalogueOf(3, [category, published])
export const settings: EstimateSettings = {
  supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
  tariffs: new Map([
    [
      't',
      {
        code: 't',
        name: 'T',
        retired: false,
        tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
        source: 's',
        sampleData: false,
      },
    ],
  ]),
  defaultTariffCode: 't',
  emissionFactors: new Map([
    [
      'e',
      {
        code: 'e',
        retired: false,
        regionCode: 'r',
        region: 'R',
        kind: 'average',
        year: 2024,
        factor: { kgCo2ePerKwh: 0.3 },
        gases: 'CO2e',
        source: 's',
        mark: 'M',
      },
    ],
  ]),
  defaultEmissionFactorCode: 'e',
  referenceRevision: 1,
  meterPresets,
  limits: publishedLimits,
  measures,
  cautions,
  weeksPerYear: 52,
  coverageProbability: 0.9,
}
export const evaluate = (asked: ReadingToEvaluate) => evaluateReading(asked, catalogue, settings)

export const limits = { percentOfReading: 1, counts: 0, resolution: 0 }
export const READINGS: Readonly<Record<Reading['kind'], Reading>> = {
  power: { kind: 'power', watts: 1.5, accuracy: limits },
  energy: { kind: 'energy', wattHours: 18, durationHours: 12, accuracy: limits },
  samples: {
    kind: 'samples',
    watts: seriesOf(900, (i) => 1.5 + 0.01 * Math.sin(i * i)),
    intervalSeconds: 1,
    accuracy: limits,
  },
  current: { kind: 'current', amperes: 0.1, accuracy: limits },
  'apparent-power': { kind: 'apparent-power', voltAmperes: 4, accuracy: limits },
  declared: { kind: 'declared', watts: 2 },
  thermal: {
    kind: 'thermal',
    surfaceTemperatureC: 40,
    ambientTemperatureC: 20,
    areaM2: 0.006,
    orientation: 'facing-up',
  },
}
