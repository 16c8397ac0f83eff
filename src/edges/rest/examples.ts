import type { z } from 'zod'
import { ACCESS_REQUEST_EXAMPLES } from './access/examples.ts'
import { CATALOGUE_REQUEST_EXAMPLES } from './catalogue/examples.ts'
import { OVERLAY_REQUEST_EXAMPLES } from './overlay/requestExamples.ts'
import type { categoryAnswerSchema, categoryListSchema } from '../../schemas/category.ts'
import type { estimateSchema } from '../../schemas/estimate.ts'
import type { estimateRequestSchema } from '../../schemas/estimateRequest.ts'
import { INVENTORY_REQUESTS } from './inventories/requestExamples.ts'
import { LIMIT_REQUESTS } from './limits/examples.ts'
import { COMPARISON_REQUESTS } from './money/examples.ts'
import { REFERENCE_REQUESTS } from './reference/examples.ts'
import { POPULATION_REQUESTS } from './population/examples.ts'
import { SAVINGS_REQUESTS } from './savings/examples.ts'
import { VERIFICATION_REQUESTS } from './verification/examples.ts'
import { BASE_LOAD_REQUESTS } from './baseLoadExamples.ts'
import { QUIZ_REQUESTS } from './quiz/examples.ts'
import { READING_REQUESTS } from './readingExamples.ts'

/**
 * The examples of the API description. A test sends each request to the service with the sample catalogue and holds
 * the answers below against what comes back, so that none of them can go stale.
 */
const smallestHousehold = {
  devices: [{ category: 'television', year: 2018 }],
} satisfies z.input<typeof estimateRequestSchema>

/** One device read with a wattmeter, one with a clamp meter through a splitter, one from its label, one assumed. */
const visitedHousehold = {
  supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
  tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
  emissionFactor: { kgCo2ePerKwh: 0.25, gridLoss: 0.05 },
  meters: [{ id: 'wattmeter', percentOfReading: 1.5, counts: 3, resolution: 0.01 }],
  devices: [
    {
      id: 'tv',
      label: 'Television in the living room',
      category: 'television',
      modes: [
        { mode: 'standby', hoursPerWeek: 140, reading: { kind: 'power', watts: 0.8, meterId: 'wattmeter' } },
      ],
    },
    {
      id: 'console',
      category: 'game console',
      modes: [
        {
          mode: 'standby',
          hoursPerWeek: { low: 120, typical: 150, high: 160 },
          reading: { kind: 'current', amperes: 0.54, loops: 10 },
        },
      ],
    },
    {
      id: 'box',
      category: 'set-top-box',
      modes: [{ mode: 'networked-standby', reading: { kind: 'declared', watts: 6 } }],
    },
    { id: 'router', category: 'router', year: 2020 },
  ],
} satisfies z.input<typeof estimateRequestSchema>

type Examples = Readonly<Record<string, { readonly summary: string; readonly value: unknown }>>

/** Examples of request bodies, by operation. */
export const REQUEST_EXAMPLES: Readonly<Record<string, Examples>> = {
  ...ACCESS_REQUEST_EXAMPLES,
  ...INVENTORY_REQUESTS,
  ...CATALOGUE_REQUEST_EXAMPLES,
  ...REFERENCE_REQUESTS,
  ...OVERLAY_REQUEST_EXAMPLES,
  estimateHousehold: {
    smallest: { summary: 'One device, all of it from the catalogue', value: smallestHousehold },
    drawn: {
      summary: 'The same by drawing, to check by',
      value: { ...smallestHousehold, method: 'monte-carlo', draws: 10_000, seed: 7 } satisfies z.input<
        typeof estimateRequestSchema
      >,
    },
    visited: { summary: 'What a visit brings home', value: visitedHousehold },
  },
  evaluateReading: READING_REQUESTS,
  evaluateBaseLoad: BASE_LOAD_REQUESTS,
  compareTariffs: COMPARISON_REQUESTS,
  checkAgainstLimit: LIMIT_REQUESTS,
  planSavings: SAVINGS_REQUESTS,
  estimatePopulation: POPULATION_REQUESTS,
  answerQuiz: QUIZ_REQUESTS,
  verifySavings: VERIFICATION_REQUESTS,
}

/** The answer to the smallest household. */
export const exampleEstimate = {
  catalogueRevision: 1,
  referenceRevision: 1,
  overlayRevision: 0,
  coverageProbability: 0.9,
  currency: 'EUR',
  sampleData: true,
  used: {
    supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
    tariff: { kind: 'flat', pricePerKwh: 0.3, currency: 'EUR' },
    tariffSource: 'sample-flat-eur: invented sample',
    standbyPricePerKwh: 0.3,
    priceBasis:
      'A kWh costs the same however many came before it. Each device bears the total in proportion to its energy at the total’s price a kWh, so that no device depends on the order and all add up to the total.',
    emissionFactor: { kgCo2ePerKwh: 0.481 },
    emissionFactorSource:
      'world-2023 (World, life-cycle, 2023, average): Ember, via statista.com/statistics/943137: 481 g/kWh',
    weeksPerYear: 52.142857142857146,
    annualUseKwh: null,
    monthlyUseKwh: null,
    methodVersion: '1.0.0',
  },
  devices: [
    {
      id: 'device-1',
      label: null,
      category: 'television',
      categoryName: 'Television without network',
      catalogueLayer: 'shared',
      quantity: 1,
      confidence: 'assumed',
      sampleData: true,
      keepPowered: null,
      powerW: { expected: 0.327855, low: 0.15, high: 0.6 },
      energyKwhPerYear: { expected: 2.35915, low: 1.07936, high: 4.31743 },
      costPerYear: {
        expected: 0.707746,
        low: 0.323807,
        high: 1.29523,
        amounts: { expected: '0.71', low: '0.32', high: '1.30' },
      },
      emissionsKgCo2ePerYear: { expected: 1.13475, low: 0.519171, high: 2.07668 },
      shareOfTotal: 1,
      modes: [
        {
          mode: 'off',
          hoursPerYear: 0,
          hoursFrom: 'catalogue',
          confidence: 'assumed',
          origin: {
            kind: 'catalogue',
            detail: 'sample',
            explanation:
              'Typical draw of Television without network made in 2018 in off: 0.05 W, 0.2 W, 0.5 W (5th, 50th, 95th percentile); an invented sample figure, not a measurement.',
          },
          powerW: { expected: 0.22309, low: 0.05, high: 0.5 },
          energyKwhPerYear: { expected: 0, low: 0, high: 0 },
        },
        {
          mode: 'standby',
          hoursPerYear: 7195.71,
          hoursFrom: 'catalogue',
          confidence: 'assumed',
          origin: {
            kind: 'catalogue',
            detail: 'sample',
            explanation:
              'Typical draw of Television without network made in 2018 in standby: 0.15 W, 0.3 W, 0.6 W (5th, 50th, 95th percentile); an invented sample figure, not a measurement.',
          },
          powerW: { expected: 0.327855, low: 0.15, high: 0.6 },
          energyKwhPerYear: { expected: 2.35915, low: 1.07936, high: 4.31743 },
        },
      ],
      warnings: [],
    },
  ],
  total: {
    powerW: { expected: 0.26931, low: 0.123214, high: 0.492857 },
    energyKwhPerYear: { expected: 2.35915, low: 1.07936, high: 4.31743 },
    costPerYear: {
      expected: 0.707746,
      low: 0.323807,
      high: 1.29523,
      amounts: { expected: '0.71', low: '0.32', high: '1.30' },
    },
    emissionsKgCo2ePerYear: { expected: 1.13475, low: 0.519171, high: 2.07668 },
    confidence: 'assumed',
    confidenceShares: { measured: 0, 'partly-measured': 0, declared: 0, assumed: 1 },
  },
  nextReadings: [{ deviceId: 'device-1', mode: 'standby', varianceShare: 0.360983 }],
  warnings: [
    {
      code: 'sample-data',
      message:
        'Figures of the catalogue (typical draws, hours, power factors) are invented sample data; they show how the service works, not what devices draw.',
    },
    {
      code: 'sample-price',
      message:
        'The price is invented sample data (sample-flat-eur: invented sample); give the household’s own tariff.',
    },
  ],
  cautions: [
    {
      code: 'no-open-cords-or-panels',
      message:
        'Never open a cord, plug, device or distribution panel to take a reading. Work behind covers is for licensed electricians.',
      source: 'common practice, no source',
    },
    {
      code: 'purpose-made-splitter-only',
      message:
        'Clamp a single conductor only through a purpose-made line splitter; never separate the conductors of a cord yourself.',
      source: 'common practice, no source',
    },
    {
      code: 'meter-category-rating',
      message:
        'Use a meter only within its measurement category: CAT II for devices on a socket, CAT III for fixed wiring, CAT IV at the service entrance.',
      source: 'IEC 61010-2-030 measurement categories, as given in instrument makers’ manuals',
    },
    {
      code: 'power-strip-load',
      message:
        'Keep the sum of the devices on a power strip below its rated load, plug it straight into a fixed outlet, and never plug one strip into another.',
      source: '29 CFR 1910.304(b)(4) and UL 1363 listing practice',
    },
    {
      code: 'never-switch-off',
      message:
        'Never switch off medical, alarm, life-safety or refrigeration equipment, frost protection, or network equipment that others depend on.',
      source: 'common practice, no source',
    },
    {
      code: 'defer-to-manufacturer',
      message:
        'The manufacturer’s instructions, local codes and licensed practice come before anything this service suggests.',
      source: 'common practice, no source',
    },
  ],
} satisfies z.output<typeof estimateSchema>

/** The answer to /v1/categories/television. */
export const exampleCategory = {
  code: 'television',
  name: 'Television without network',
  group: 'video',
  aliases: ['TV', 'TV set', 'telly', 'flat screen', 'LCD television', 'television set', 'old TV'],
  defaultQuantity: 1,
  retired: false,
  keepPowered: null,
  powerFactor: { low: 0.3, typical: 0.45, high: 0.65 },
  modes: [
    {
      mode: 'off',
      defaultHoursPerWeek: 0,
      draws: [
        {
          yearFrom: null,
          yearTo: null,
          lowW: 0.05,
          typicalW: 0.2,
          highW: 0.5,
          provenance: { kind: 'sample', citation: null, n: null },
        },
      ],
    },
    {
      mode: 'standby',
      defaultHoursPerWeek: 138,
      draws: [
        {
          yearFrom: null,
          yearTo: 2009,
          lowW: 0.8,
          typicalW: 3.5,
          highW: 9,
          provenance: { kind: 'sample', citation: null, n: null },
        },
        {
          yearFrom: 2010,
          yearTo: 2012,
          lowW: 0.3,
          typicalW: 0.7,
          highW: 1.5,
          provenance: { kind: 'sample', citation: null, n: null },
        },
        {
          yearFrom: 2013,
          yearTo: null,
          lowW: 0.15,
          typicalW: 0.3,
          highW: 0.6,
          provenance: { kind: 'sample', citation: null, n: null },
        },
      ],
    },
  ],
  sampleData: true,
  layer: 'shared',
} satisfies z.output<typeof categoryAnswerSchema>

/** The answer to /v1/categories?search=old+tv. */
export const exampleCategoryList = {
  items: [exampleCategory],
  nextCursor: null,
  catalogueRevision: 1,
  overlayRevision: 0,
} satisfies z.output<typeof categoryListSchema>
