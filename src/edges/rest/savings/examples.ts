import type { z } from 'zod'
import type { measureListSchema } from '../../../schemas/savingsMeasure.ts'
import type { savingsPlanSchema, savingsRequestSchema } from '../../../schemas/savingsPlan.ts'

const mediaWall = {
  tariff: { kind: 'flat', currency: 'USD', pricePerKwh: 0.17 },
  emissionFactorCode: 'us-aznm-2022-co2',
  devices: [
    { id: 'receiver', category: 'satellite-receiver', year: 2012, outlet: 'media wall' },
    {
      id: 'amplifier',
      category: 'home-cinema-receiver',
      outlet: 'media wall',
      modes: [{ mode: 'standby', hoursPerWeek: 150, reading: { kind: 'power', watts: 3.2 } }],
    },
    { id: 'freezer', category: 'freezer', outlet: 'media wall' },
  ],
  plan: {
    budget: 15,
    measures: [{ code: 'switch-at-outlet' }, { code: 'strip-four', price: 11.5 }],
    devices: [{ deviceId: 'amplifier', ratedWatts: 400 }],
  },
} satisfies z.input<typeof savingsRequestSchema>

const smallest = {
  devices: [{ category: 'television', year: 2008 }],
} satisfies z.input<typeof savingsRequestSchema>

/** Examples of request bodies of POST /v1/savings-plans; a test sends each. */
export const SAVINGS_REQUESTS = {
  strip: { summary: 'Devices of one outlet, one of which must stay powered, and a budget', value: mediaWall },
  smallest: { summary: 'One device, all measures, no budget', value: smallest },
} as const

/** The answer to the devices of one outlet. */
export const exampleSavingsPlan = {
  catalogueRevision: 1,
  overlayRevision: 0,
  referenceRevision: 1,
  coverageProbability: 0.9,
  currency: 'USD',
  sampleData: true,
  methodVersion: '1.0.0',
  goal: 'most-energy',
  budget: 15,
  standbyPricePerKwh: 0.17,
  priceBasis:
    'A kWh costs the same however many came before it. Each device bears the total in proportion to its energy at the total’s price a kWh, so that no device depends on the order and all add up to the total.',
  savingsFactor: {
    factor: { kgCo2ePerKwh: 0.546669524324 },
    kind: 'marginal',
    source:
      'us-aznm-2022-non-baseload-co2 (United States, AZNM (Southwest), non-baseload (for avoided use), CO2 alone, 2022, marginal): US EPA eGRID2022, non-baseload, EPA method page Table 1: 1205.2 lb/MWh',
  },
  total: {
    powerW: { expected: 5.28731, low: 3.83284, high: 7.77321 },
    energyKwhPerYear: { expected: 46.3168, low: 33.5757, high: 68.0933 },
    costPerYear: {
      expected: 7.87386,
      low: 5.70787,
      high: 11.5759,
      amounts: { expected: '7.87', low: '5.71', high: '11.58' },
    },
    emissionsKgCo2ePerYear: { expected: 16.3029, low: 11.8182, high: 23.968 },
    confidence: 'mixed',
    confidenceShares: { measured: 0.540378, 'partly-measured': 0, declared: 0, assumed: 0.459622 },
  },
  measures: [
    {
      id: 'switch-at-outlet.1@receiver',
      measureCode: 'switch-at-outlet',
      name: 'Switch it off where it is plugged in',
      kind: 'outlet-switch',
      deviceIds: ['receiver'],
      outlet: null,
      count: 1,
      needsHabit: true,
      persistence: { low: 0.2, typical: 0.5, high: 0.8 },
      chosen: false,
      sampleData: true,
      source: 'invented sample',
      notes: [],
      figures: {
        price: 0,
        priceAmount: '0.00',
        savedKwhPerYear: { expected: 5.81262, low: 1.54832, high: 14.6662 },
        savedMoneyPerYear: {
          expected: 0.988146,
          low: 0.263214,
          high: 2.49326,
          amounts: { expected: '0.99', low: '0.26', high: '2.49' },
        },
        savedEmissionsKgCo2ePerYear: { expected: 3.17758, low: 0.846417, high: 8.01759 },
        simplePaybackYears: { expected: 0, low: 0, high: 0 },
        probabilityOfPayback: 1,
        lifeYears: 5,
      },
    },
    {
      id: 'switch-at-outlet.1@amplifier',
      measureCode: 'switch-at-outlet',
      name: 'Switch it off where it is plugged in',
      kind: 'outlet-switch',
      deviceIds: ['amplifier'],
      outlet: null,
      count: 1,
      needsHabit: true,
      persistence: { low: 0.2, typical: 0.5, high: 0.8 },
      chosen: false,
      sampleData: true,
      source: 'invented sample',
      notes: [],
      figures: {
        price: 0,
        priceAmount: '0.00',
        savedKwhPerYear: { expected: 12.5143, low: 7.30973, high: 17.6522 },
        savedMoneyPerYear: {
          expected: 2.12743,
          low: 1.24265,
          high: 3.00087,
          amounts: { expected: '2.13', low: '1.24', high: '3.00' },
        },
        savedEmissionsKgCo2ePerYear: { expected: 6.84118, low: 3.99601, high: 9.64991 },
        simplePaybackYears: { expected: 0, low: 0, high: 0 },
        probabilityOfPayback: 1,
        lifeYears: 5,
      },
    },
    {
      id: 'strip-four.2@media wall',
      measureCode: 'strip-four',
      name: 'Switchable strip with four outlets',
      kind: 'switchable-strip',
      deviceIds: ['receiver', 'amplifier'],
      outlet: 'media wall',
      count: 1,
      needsHabit: true,
      persistence: { low: 0.5, typical: 0.75, high: 0.95 },
      chosen: true,
      sampleData: true,
      source: 'invented sample',
      notes: [
        {
          code: 'rated-load-unknown',
          message:
            'Add up what the labels say of Satellite television receiver and the rest, and stay below 2300 W altogether; give each as ratedWatts to have it checked.',
        },
        {
          code: 'plug-elsewhere',
          message:
            'Plug Freezer, controls and display straight into a fixed outlet and not into the strip at "media wall": what must stay powered, and what heats, washes or cooks, does not belong on it.',
        },
      ],
      figures: {
        price: 11.5,
        priceAmount: '11.50',
        savedKwhPerYear: { expected: 25.5655, low: 17.0115, high: 38.8528 },
        savedMoneyPerYear: {
          expected: 4.34613,
          low: 2.89196,
          high: 6.60498,
          amounts: { expected: '4.35', low: '2.89', high: '6.60' },
        },
        savedEmissionsKgCo2ePerYear: { expected: 13.9759, low: 9.29967, high: 21.2396 },
        simplePaybackYears: { expected: 2.64603, low: 1.74111, high: 3.97655 },
        probabilityOfPayback: 1,
        lifeYears: 8,
      },
    },
  ],
  plan: {
    measureIds: ['strip-four.2@media wall'],
    figures: {
      price: 11.5,
      priceAmount: '11.50',
      savedKwhPerYear: { expected: 25.5655, low: 17.0115, high: 38.8528 },
      savedMoneyPerYear: {
        expected: 4.34613,
        low: 2.89196,
        high: 6.60498,
        amounts: { expected: '4.35', low: '2.89', high: '6.60' },
      },
      savedEmissionsKgCo2ePerYear: { expected: 13.9759, low: 9.29967, high: 21.2396 },
      simplePaybackYears: { expected: 2.64603, low: 1.74111, high: 3.97655 },
      probabilityOfPayback: 1,
      lifeYears: 8,
    },
  },
  notOffered: [],
  keptPowered: [
    {
      deviceId: 'freezer',
      label: null,
      category: 'freezer',
      categoryName: 'Freezer, controls and display',
      reason: 'refrigeration',
      note: 'Food spoils and medicines may be lost when it is off.',
    },
  ],
  warnings: [
    {
      code: 'sample-data',
      message:
        'Figures of the catalogue (typical draws, hours, power factors) are invented sample data; they show how the service works, not what devices draw.',
    },
    {
      code: 'factor-co2-alone',
      message:
        'The marginal emission factor of us-aznm for 2022 counts CO2 alone; other greenhouse gases come on top.',
    },
    {
      code: 'sample-measures',
      message:
        'Prices, lives, own draws and habits of the measures are invented sample data; give the household’s own figures in plan.measures before anything is bought.',
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
      code: 'power-strip-load',
      message:
        'Keep the sum of the devices on a power strip below its rated load, plug it straight into a fixed outlet, and never plug one strip into another.',
      source: '29 CFR 1910.304(b)(4) and UL 1363 listing practice',
    },
    {
      code: 'high-power-on-fixed-outlets',
      message:
        'Keep heaters, refrigerators and most kitchen appliances on fixed outlets of their own, not on power strips or extension cords, and hide no cords under carpets.',
      source: 'Fermilab, safety note on power strips and extension cords, March 2015 (news.fnal.gov/2015/03)',
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
} satisfies z.output<typeof savingsPlanSchema>

/** The answer to GET /v1/savings-measures?kind=timer. */
export const exampleMeasureList = {
  items: [
    {
      code: 'plug-in-timer',
      name: 'Plug-in timer',
      kind: 'timer',
      price: 9,
      currency: 'EUR',
      lifeYears: 6,
      persistence: { low: 0.7, typical: 0.9, high: 1 },
      ownDrawW: { low: 0.3, typical: 0.5, high: 1 },
      ratedLoadW: null,
      ratedLoadA: null,
      outlets: null,
      hoursOffPerWeek: 56,
      fromMode: null,
      toMode: null,
      newDrawW: null,
      categories: [],
      source: 'invented sample',
      sampleData: true,
    },
  ],
} satisfies z.output<typeof measureListSchema>
