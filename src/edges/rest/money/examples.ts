import type { z } from 'zod'
import type { emissionFactorListSchema, namedEmissionFactorSchema } from '../../../schemas/emissionFactor.ts'
import type { namedTariffSchema, tariffListSchema } from '../../../schemas/tariff.ts'
import type {
  tariffComparisonRequestSchema,
  tariffComparisonSchema,
} from '../../../schemas/tariffComparison.ts'

/** The answer to /v1/tariffs/sample-block-yearly-eur. A test holds every example here against what comes back. */
export const exampleTariff = {
  code: 'sample-block-yearly-eur',
  name: 'Invented blocks by the year, in euros',
  retired: false,
  tariff: {
    kind: 'block',
    currency: 'EUR',
    per: 'year',
    blocks: [{ upToKwh: 2500, pricePerKwh: 0.24 }, { pricePerKwh: 0.33 }],
    fixedCharges: [{ name: 'standing charge', amount: 120, per: 'year' }],
    taxes: [{ name: 'value added tax', percent: 20 }],
  },
  source: 'invented sample',
  sampleData: true,
} satisfies z.output<typeof namedTariffSchema>

/** The answer to /v1/tariffs?currency=KWD. */
export const exampleTariffList = {
  items: [
    {
      code: 'sample-flat-kwd',
      name: 'Invented flat price in Kuwaiti dinars',
      retired: false,
      tariff: { kind: 'flat', currency: 'KWD', pricePerKwh: 0.01 },
      source: 'invented sample',
      sampleData: true,
    },
  ],
  nextCursor: null,
  referenceRevision: 1,
} satisfies z.output<typeof tariffListSchema>

/** The answer to /v1/emission-factors/uk-2026. */
export const exampleEmissionFactor = {
  code: 'uk-2026',
  retired: false,
  regionCode: 'uk',
  region: 'United Kingdom, generation',
  kind: 'average',
  year: 2026,
  factor: { kgCo2ePerKwh: 0.13096 },
  gases: 'CO2+CH4+N2O',
  source: 'UK DESNZ greenhouse gas conversion factors 2026: 0.12943 CO2 + 0.00067 CH4 + 0.00086 N2O',
  mark: 'V2',
} satisfies z.output<typeof namedEmissionFactorSchema>

/** The answer to /v1/emission-factors?region=uk&year=2030. */
export const exampleEmissionFactorList = {
  items: [exampleEmissionFactor],
  nextCursor: null,
  warnings: [
    {
      code: 'factor-year-missing',
      message: 'There is no average emission factor of uk for 2030; that of 2026, the nearest year, is used.',
    },
  ],
  referenceRevision: 1,
} satisfies z.output<typeof emissionFactorListSchema>

/** One device under a flat price and under blocks. */
const oneDevice = {
  annualUseKwh: 3200,
  devices: [
    {
      category: 'router',
      modes: [{ mode: 'networked-standby', hoursPerWeek: 168, reading: { kind: 'power', watts: 8 } }],
    },
  ],
  tariffs: ['sample-flat-eur', 'sample-block-yearly-eur'],
} satisfies z.input<typeof tariffComparisonRequestSchema>

export const COMPARISON_REQUESTS = {
  two: { summary: 'One device that was read, under a flat price and under blocks', value: oneDevice },
} as const

/** The answer to that request. */
export const exampleComparison = {
  catalogueRevision: 1,
  referenceRevision: 1,
  overlayRevision: 0,
  coverageProbability: 0.9,
  currency: 'EUR',
  sampleData: true,
  annualUseKwh: 3200,
  methodVersion: '1.0.0',
  energyKwhPerYear: { expected: 70.08, low: 70.08, high: 70.08 },
  tariffs: [
    {
      tariffCode: 'sample-flat-eur',
      name: 'Invented flat price in euros',
      source: 'invented sample',
      sampleData: true,
      standbyPricePerKwh: 0.3,
      priceBasis:
        'A kWh costs the same however many came before it. Each device bears the total in proportion to its energy at the total’s price a kWh, so that no device depends on the order and all add up to the total.',
      costPerYear: {
        expected: 21.024,
        low: 21.024,
        high: 21.024,
        amounts: { expected: '21.02', low: '21.02', high: '21.02' },
      },
      differencePerYear: {
        expected: 0,
        low: 0,
        high: 0,
        amounts: { expected: '0.00', low: '0.00', high: '0.00' },
      },
      annualBill: '960.00',
      warnings: [],
    },
    {
      tariffCode: 'sample-block-yearly-eur',
      name: 'Invented blocks by the year, in euros',
      source: 'invented sample',
      sampleData: true,
      standbyPricePerKwh: 0.396,
      priceBasis:
        'At the margin: the bill of the household’s annual use less the bill of that use without its standby, lines not rounded. Counted on 2025, a year of 365 days (8760 h). Each device bears the total in proportion to its energy at the total’s price a kWh, so that no device depends on the order and all add up to the total.',
      costPerYear: {
        expected: 27.7517,
        low: 27.7517,
        high: 27.7517,
        amounts: { expected: '27.75', low: '27.75', high: '27.75' },
      },
      differencePerYear: {
        expected: 6.72768,
        low: 6.72768,
        high: 6.72768,
        amounts: { expected: '6.73', low: '6.73', high: '6.73' },
      },
      annualBill: '1141.20',
      warnings: [],
    },
  ],
} satisfies z.output<typeof tariffComparisonSchema>
