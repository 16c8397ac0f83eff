import type { z } from 'zod'
import type { quizAnswersSchema } from '../../../schemas/quizAnswers.ts'
import type { quizResultSchema } from '../../../schemas/quizResult.ts'

const home = {
  catalogueRevision: 1,
  answers: [
    { category: 'television', count: 1, year: 2016, hours: 'between-uses' },
    { category: 'router', count: 1 },
  ],
} satisfies z.input<typeof quizAnswersSchema>

/** One device read in watts, one in volt-amperes, one in amperes, one by a day's energy, and one that is not there. */
const withReadings = {
  catalogueRevision: 1,
  answers: [
    { category: 'game-console', count: 1, hours: 'evenings', reading: { kind: 'power', watts: 1.4 } },
    { category: 'soundbar', count: 1, reading: { kind: 'apparent-power', voltAmperes: 4.5 } },
    { category: 'boiler-control', count: 1, reading: { kind: 'current', amperes: 0.05 } },
    {
      category: 'smart-television',
      count: 2,
      hours: 'nearly-always',
      reading: { kind: 'energy', kilowattHours: 0.05, durationHours: 24 },
      readingMode: 'networked-standby',
    },
    { category: 'fax-machine', count: 0 },
  ],
} satisfies z.input<typeof quizAnswersSchema>

/** Examples of request bodies of POST /v1/quiz/answers; a test sends each. */
export const QUIZ_REQUESTS = {
  home: { summary: 'A television and a router, nothing read', value: home },
  readings: { summary: 'Readings of every kind', value: withReadings },
} as const

/** The answer to the home. */
export const exampleQuizResult = {
  language: 'en',
  catalogueRevision: 1,
  overlayRevision: 0,
  sampleData: true,
  sampleDataNotice:
    'Figures behind this are invented sample data: they show how the check works, not what devices draw.',
  household: {
    catalogueRevision: 1,
    devices: [
      {
        id: 'answer-1',
        label: 'Television without internet',
        category: 'television',
        quantity: 1,
        year: 2016,
        modes: [{ mode: 'standby', hoursPerWeek: { low: 112, typical: 136.5, high: 154 } }],
      },
      { id: 'answer-2', label: 'Router', category: 'router', quantity: 1 },
    ],
  },
  estimate: {
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
        id: 'answer-1',
        label: 'Television without internet',
        category: 'television',
        categoryName: 'Television without network',
        catalogueLayer: 'shared',
        quantity: 1,
        confidence: 'assumed',
        sampleData: true,
        keepPowered: null,
        powerW: { expected: 0.327855, low: 0.15, high: 0.6 },
        energyKwhPerYear: { expected: 2.29362, low: 1.03869, high: 4.22193 },
        costPerYear: {
          expected: 0.688087,
          low: 0.311608,
          high: 1.26658,
          amounts: { expected: '0.69', low: '0.31', high: '1.27' },
        },
        emissionsKgCo2ePerYear: { expected: 1.10323, low: 0.499612, high: 2.03075 },
        shareOfTotal: 0.0278622,
        modes: [
          {
            mode: 'standby',
            hoursPerYear: 6995.83,
            hoursFrom: 'request',
            confidence: 'assumed',
            origin: {
              kind: 'catalogue',
              detail: 'sample',
              explanation:
                'Typical draw of Television without network made in 2016 in standby: 0.15 W, 0.3 W, 0.6 W (5th, 50th, 95th percentile); an invented sample figure, not a measurement.',
            },
            powerW: { expected: 0.327855, low: 0.15, high: 0.6 },
            energyKwhPerYear: { expected: 2.29362, low: 1.03869, high: 4.22193 },
          },
        ],
        warnings: [],
      },
      {
        id: 'answer-2',
        label: 'Router',
        category: 'router',
        categoryName: 'Router',
        catalogueLayer: 'shared',
        quantity: 1,
        confidence: 'assumed',
        sampleData: true,
        keepPowered: {
          reason: 'network-for-others',
          note: 'Telephone, alarms, heating and everyone’s devices reach the outside through it.',
        },
        powerW: { expected: 9.13544, low: 4, high: 18 },
        energyKwhPerYear: { expected: 80.0265, low: 35.04, high: 157.68 },
        costPerYear: {
          expected: 24.0079,
          low: 10.512,
          high: 47.304,
          amounts: { expected: '24.01', low: '10.51', high: '47.30' },
        },
        emissionsKgCo2ePerYear: { expected: 38.4927, low: 16.8542, high: 75.8441 },
        shareOfTotal: 0.972138,
        modes: [
          {
            mode: 'idle',
            hoursPerYear: 8760,
            hoursFrom: 'catalogue',
            confidence: 'assumed',
            origin: {
              kind: 'catalogue',
              detail: 'sample',
              explanation:
                'Typical draw of Router in idle: 4 W, 7.94 W, 18 W (5th, 50th, 95th percentile); an invented sample figure, not a measurement.',
            },
            powerW: { expected: 9.13544, low: 4, high: 18 },
            energyKwhPerYear: { expected: 80.0265, low: 35.04, high: 157.68 },
          },
        ],
        warnings: [
          {
            code: 'year-unknown',
            message:
              'The typical draw in idle depends on the year of manufacture; without a year the figures of all years count as one wide range. Give the year to narrow it.',
          },
        ],
      },
    ],
    total: {
      powerW: { expected: 9.39727, low: 4.25129, high: 18.2649 },
      energyKwhPerYear: { expected: 82.3201, low: 37.2413, high: 160.001 },
      costPerYear: {
        expected: 24.696,
        low: 11.1724,
        high: 48.0002,
        amounts: { expected: '24.70', low: '11.17', high: '48.00' },
      },
      emissionsKgCo2ePerYear: { expected: 39.596, low: 17.9131, high: 76.9603 },
      confidence: 'assumed',
      confidenceShares: { measured: 0, 'partly-measured': 0, declared: 0, assumed: 1 },
    },
    nextReadings: [{ deviceId: 'answer-2', mode: 'idle', varianceShare: 0.998226 }],
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
  },
  worthDoing: [
    {
      deviceId: 'answer-1',
      category: 'television',
      label: 'Television without internet',
      labelLanguage: 'en',
      advice:
        'Switch it off at the outlet while nobody uses it; an outlet strip with a switch does it for several at once. This is a typical figure and not yours: read it with a wattmeter first, if you can borrow one.',
      confidence: 'assumed',
      energyKwhPerYear: { expected: 2.29362, low: 1.03869, high: 4.22193 },
      costPerYear: {
        expected: 0.688087,
        low: 0.311608,
        high: 1.26658,
        amounts: { expected: '0.69', low: '0.31', high: '1.27' },
      },
      shareOfTotal: 0.0278622,
    },
  ],
  mustStayOn: [
    {
      deviceId: 'answer-2',
      category: 'router',
      label: 'Router',
      labelLanguage: 'en',
      reason: 'network-for-others',
      reasonText: 'Other people’s devices, and perhaps alarms and telephones, are connected through it.',
      note: 'Telephone, alarms, heating and everyone’s devices reach the outside through it.',
      noteLanguage: 'en',
    },
  ],
  beforeSwitchingOff:
    'Before you switch something off: ask everybody in the home what hangs on it, look in its manual, and never switch off anything medical, an alarm, a refrigerator or freezer, or what keeps pipes from freezing.',
} satisfies z.output<typeof quizResultSchema>
