import type { z } from 'zod'
import type { stockEstimateSchema, stockSchema } from '../../../schemas/population.ts'
import type { surveySchema } from '../../../schemas/survey.ts'

const stock = {
  method: 'stock',
  items: [
    { category: 'game-console', ownership: { low: 0.25, typical: 0.35, high: 0.45 } },
    { category: 'television', year: 2018, ownership: 0.92, countPerOwner: 1.4 },
    {
      name: 'Invented foot warmer',
      drawW: { low: 0.3, typical: 0.8, high: 2 },
      hoursPerWeek: 120,
      ownership: { low: 0.02, typical: 0.05, high: 0.1 },
    },
  ],
  ladder: [
    { name: 'one home', homes: 1 },
    { name: 'Lower Example Street', homes: 48 },
    { name: 'Exampleton', homes: 62_000 },
    { name: 'the country of Exampleland', homes: 9_400_000 },
  ],
  cutShare: 0.3,
  price: { currency: 'EUR', pricePerKwh: 0.3 },
  emissionFactor: { kgCo2ePerKwh: 0.25, gridLoss: 0.05 },
} satisfies z.input<typeof stockSchema>

const survey = {
  method: 'survey',
  unit: 'kWh/yr',
  coverageProbability: 0.95,
  strata: [
    { name: 'flats', homes: 4200, sample: { homes: 60, mean: 310, variance: 22_500 } },
    { name: 'houses', homes: 1800, sample: { homes: 40, mean: 520, variance: 48_400 } },
  ],
} satisfies z.input<typeof surveySchema>

const clusters = {
  method: 'survey',
  unit: 'W',
  strata: [{ name: 'blocks of flats', clusters: 120, homes: 360 }],
  homes: [
    { cluster: 'block 7', value: 41, domain: 'heated by electricity' },
    { cluster: 'block 7', value: 33 },
    { cluster: 'block 31', value: 58, domain: 'heated by electricity' },
    { cluster: 'block 31', value: 37 },
    { cluster: 'block 31', value: 29 },
    { cluster: 'block 88', value: 62 },
    { cluster: 'block 88', value: 44 },
    { cluster: 'block 88', value: 51, domain: 'heated by electricity' },
  ],
} satisfies z.input<typeof surveySchema>

/** Examples of request bodies of POST /v1/population-estimates, all invented; a test sends each. */
export const POPULATION_REQUESTS = {
  stock: { summary: 'Kinds of device by ownership, from one home to a country', value: stock },
  survey: { summary: 'Two strata in summary', value: survey },
  clusters: { summary: 'Whole blocks of flats, with a domain', value: clusters },
} as const

/** The answer to the stock. */
export const exampleStockEstimate = {
  method: 'stock',
  methodVersion: '1.0.0',
  catalogueRevision: 1,
  referenceRevision: 1,
  overlayRevision: 0,
  coverageProbability: 0.9,
  sampleData: true,
  used: {
    price: { currency: 'EUR', pricePerKwh: 0.3 },
    priceSource: 'given in the request',
    emissionFactor: { kgCo2ePerKwh: 0.25, gridLoss: 0.05 },
    emissionFactorSource: 'given in the request',
    weeksPerYear: 52.142857142857146,
  },
  items: [
    {
      name: 'Game console',
      category: 'game-console',
      catalogueLayer: 'shared',
      keepPowered: null,
      ownership: { low: 0.25, typical: 0.35, high: 0.45 },
      countPerOwner: 1,
      meanDrawUncertainty: 0.5,
      meanDrawUncertaintyFrom: 'sample',
      energyKwhPerYearPerHome: 21.56,
      shareOfTotal: 0.864906,
    },
    {
      name: 'Television without network',
      category: 'television',
      catalogueLayer: 'shared',
      keepPowered: null,
      ownership: { low: 0.92, typical: 0.92, high: 0.92 },
      countPerOwner: 1.4,
      meanDrawUncertainty: 0.5,
      meanDrawUncertaintyFrom: 'sample',
      energyKwhPerYearPerHome: 3.03859,
      shareOfTotal: 0.121897,
    },
    {
      name: 'Invented foot warmer',
      category: null,
      catalogueLayer: null,
      keepPowered: null,
      ownership: { low: 0.02, typical: 0.05, high: 0.1 },
      countPerOwner: 1,
      meanDrawUncertainty: 0.2,
      meanDrawUncertaintyFrom: 'given-draw',
      energyKwhPerYearPerHome: 0.328965,
      shareOfTotal: 0.0131969,
    },
  ],
  switchableShare: 1,
  cutShare: 0.3,
  ladder: [
    {
      name: 'one home',
      homes: 1,
      powerW: { expected: 2.84561, low: 0.0287464, high: 11.7728 },
      powerMw: { expected: 0.00000284561, low: 2.87464e-8, high: 0.0000117728 },
      energyKwhPerYear: { expected: 24.9275, low: 0.251819, high: 103.13 },
      energyGwhPerYear: { expected: 0.0000249275, low: 2.51819e-7, high: 0.00010313 },
      costPerYear: { expected: 7.47826, low: 0.0755456, high: 30.939 },
      emissionsKgCo2ePerYear: { expected: 6.55988, low: 0.0662681, high: 27.1395 },
      emissionsTonnesCo2ePerYear: { expected: 0.00655988, low: 0.0000662681, high: 0.0271395 },
      perHome: {
        powerW: { expected: 2.84561, low: 0.0287464, high: 11.7728 },
        energyKwhPerYear: { expected: 24.9275, low: 0.251819, high: 103.13 },
      },
      sharedVarianceShare: 0.0257282,
      cut: {
        powerW: { expected: 0.853682, low: 0.00862393, high: 3.53185 },
        powerMw: { expected: 8.53682e-7, low: 8.62393e-9, high: 0.00000353185 },
        energyKwhPerYear: { expected: 7.47826, low: 0.0755456, high: 30.939 },
        energyGwhPerYear: { expected: 0.00000747826, low: 7.55456e-8, high: 0.000030939 },
        costPerYear: { expected: 2.24348, low: 0.0226637, high: 9.28171 },
        emissionsKgCo2ePerYear: { expected: 1.96796, low: 0.0198804, high: 8.14185 },
        emissionsTonnesCo2ePerYear: { expected: 0.00196796, low: 0.0000198804, high: 0.00814185 },
      },
    },
    {
      name: 'Lower Example Street',
      homes: 48,
      powerW: { expected: 136.589, low: 69.6427, high: 229.21 },
      powerMw: { expected: 0.000136589, low: 0.0000696427, high: 0.00022921 },
      energyKwhPerYear: { expected: 1196.52, low: 610.07, high: 2007.88 },
      energyGwhPerYear: { expected: 0.00119652, low: 0.00061007, high: 0.00200788 },
      costPerYear: { expected: 358.956, low: 183.021, high: 602.364 },
      emissionsKgCo2ePerYear: { expected: 314.874, low: 160.545, high: 528.389 },
      emissionsTonnesCo2ePerYear: { expected: 0.314874, low: 0.160545, high: 0.528389 },
      perHome: {
        powerW: { expected: 2.84561, low: 1.45089, high: 4.77521 },
        energyKwhPerYear: { expected: 24.9275, low: 12.7098, high: 41.8308 },
      },
      sharedVarianceShare: 0.558998,
      cut: {
        powerW: { expected: 40.9768, low: 20.8928, high: 68.763 },
        powerMw: { expected: 0.0000409768, low: 0.0000208928, high: 0.000068763 },
        energyKwhPerYear: { expected: 358.956, low: 183.021, high: 602.364 },
        energyGwhPerYear: { expected: 0.000358956, low: 0.000183021, high: 0.000602364 },
        costPerYear: { expected: 107.687, low: 54.9063, high: 180.709 },
        emissionsKgCo2ePerYear: { expected: 94.4622, low: 48.1634, high: 158.517 },
        emissionsTonnesCo2ePerYear: { expected: 0.0944622, low: 0.0481634, high: 0.158517 },
      },
    },
    {
      name: 'Exampleton',
      homes: 62000,
      powerW: { expected: 176428, low: 104254, high: 258039 },
      powerMw: { expected: 0.176428, low: 0.104254, high: 0.258039 },
      energyKwhPerYear: { expected: 1545510, low: 913266, high: 2260420 },
      energyGwhPerYear: { expected: 1.54551, low: 0.913266, high: 2.26042 },
      costPerYear: { expected: 463652, low: 273980, high: 678127 },
      emissionsKgCo2ePerYear: { expected: 406712, low: 240333, high: 594848 },
      emissionsTonnesCo2ePerYear: { expected: 406.712, low: 240.333, high: 594.848 },
      perHome: {
        powerW: { expected: 2.84561, low: 1.68152, high: 4.16192 },
        energyKwhPerYear: { expected: 24.9275, low: 14.7301, high: 36.4584 },
      },
      sharedVarianceShare: 0.99939,
      cut: {
        powerW: { expected: 52928.3, low: 31276.2, high: 77411.8 },
        powerMw: { expected: 0.0529283, low: 0.0312762, high: 0.0774118 },
        energyKwhPerYear: { expected: 463652, low: 273980, high: 678127 },
        energyGwhPerYear: { expected: 0.463652, low: 0.27398, high: 0.678127 },
        costPerYear: { expected: 139096, low: 82193.9, high: 203438 },
        emissionsKgCo2ePerYear: { expected: 122014, low: 72099.9, high: 178455 },
        emissionsTonnesCo2ePerYear: { expected: 122.014, low: 72.0999, high: 178.455 },
      },
    },
    {
      name: 'the country of Exampleland',
      homes: 9400000,
      powerW: { expected: 26748700, low: 15807600, high: 39116200 },
      powerMw: { expected: 26.7487, low: 15.8076, high: 39.1162 },
      energyKwhPerYear: { expected: 234319000, low: 138474000, high: 342658000 },
      energyGwhPerYear: { expected: 234.319, low: 138.474, high: 342.658 },
      costPerYear: { expected: 70295600, low: 41542300, high: 102797000 },
      emissionsKgCo2ePerYear: { expected: 61662800, low: 36440700, high: 90173100 },
      emissionsTonnesCo2ePerYear: { expected: 61662.8, low: 36440.7, high: 90173.1 },
      perHome: {
        powerW: { expected: 2.84561, low: 1.68166, high: 4.16129 },
        energyKwhPerYear: { expected: 24.9275, low: 14.7313, high: 36.4529 },
      },
      sharedVarianceShare: 0.999996,
      cut: {
        powerW: { expected: 8024620, low: 4742280, high: 11734800 },
        powerMw: { expected: 8.02462, low: 4.74228, high: 11.7348 },
        energyKwhPerYear: { expected: 70295600, low: 41542300, high: 102797000 },
        energyGwhPerYear: { expected: 70.2956, low: 41.5423, high: 102.797 },
        costPerYear: { expected: 21088700, low: 12462700, high: 30839200 },
        emissionsKgCo2ePerYear: { expected: 18498800, low: 10932200, high: 27051900 },
        emissionsTonnesCo2ePerYear: { expected: 18498.8, low: 10932.2, high: 27051.9 },
      },
    },
  ],
  assumptions: [
    'Each home has a kind of device or not, independently of other homes and of other kinds, with the probability of its mean ownership.',
    'A home that has any has the whole number of devices next to the mean count; each device is an independent draw of its typical draw.',
    'Ownership is triangular between its bounds and the same for all homes: what is not known of it does not average out.',
    'The mean draw of each kind is known only to its meanDrawUncertainty, rectangular, the same error in every home: it does not average out. Where the request gives none it is the service’s own assumption, no source: sample ±50 %, published and given draws ±20 %, programme from its number of readings.',
    'Errors of different kinds of device are independent of each other. Were the catalogue wrong in one direction throughout, the intervals would be too narrow.',
    'Hours a week are means over homes, and taken as exact.',
  ],
  formulas: [
    'energy(H) = sum over kinds of [ownership/mean ownership] x [mean draw/catalogue’s mean draw] x [sum over H homes of count x draw x hours]',
    'variance(H) = H x variance of one home + H (H - 1) x variance of what all homes share; relative to the mean the first part falls with 1/H, the second does not',
    'power(H) = energy(H)/hours of the year;   cost = energy x price;   emissions = energy x factor/(1 - gridLoss);   cut = cutShare x each',
  ],
  warnings: [
    {
      code: 'sample-data',
      message:
        'Typical draws of the catalogue are invented sample data; they show how the service works, not what devices draw.',
    },
  ],
  cautions: [
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
} satisfies z.output<typeof stockEstimateSchema>
