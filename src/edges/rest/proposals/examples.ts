import type { z } from 'zod'
import type { proposalListSchema, proposalSchema } from '../../../schemas/proposal.ts'

/** The examples of the API description for proposals; the readings behind them are invented. A test holds them against answers. */
export const exampleProposal = {
  category: 'amplifier',
  categoryName: 'Amplifier',
  mode: 'standby',
  years: 'all',
  yearFrom: null,
  yearTo: null,
  version: '1-12-e01db241',
  status: 'open',
  n: 12,
  households: 12,
  organisations: 2,
  coverageProbability: 0.9,
  low: {
    percentile: 5,
    proposedW: 0.9,
    intervalLowW: null,
    intervalHighW: 1.2,
    intervalCoverage: 0.98,
    todayW: 0.5,
    ratio: 1.8,
    largerThanNoise: false,
  },
  typical: {
    percentile: 50,
    proposedW: 1.65,
    intervalLowW: 1.2,
    intervalHighW: 2.2,
    intervalCoverage: 0.961,
    todayW: 1,
    ratio: 1.65,
    largerThanNoise: true,
  },
  high: {
    percentile: 95,
    proposedW: 30,
    intervalLowW: 2.2,
    intervalHighW: null,
    intervalCoverage: 0.98,
    todayW: 3,
    ratio: 10,
    largerThanNoise: false,
  },
  largerThanNoise: true,
  today: {
    yearFrom: null,
    yearTo: null,
    lowW: 0.5,
    typicalW: 1,
    highW: 3,
    provenance: {
      kind: 'sample',
      citation: null,
      n: null,
    },
  },
  todayIsSampleData: true,
  outliers: {
    rule: 'Tukey’s inner fences on ln W: more than 1.5 interquartile ranges below the first or above the third quartile (J. W. Tukey, Exploratory Data Analysis, 1977). They stay in, since devices that draw much are a part of the truth; but of few readings one alone can make the 5th or the 95th percentile, so look at them before you accept.',
    leftIn: true,
    lowerFenceW: 0.602,
    upperFenceW: 4.49,
    count: 1,
    outsideW: [30],
  },
  leftOut: {
    severalDevices: 0,
    notStable: 0,
    noFittingYear: 0,
  },
  method:
    'Percentiles over devices by definition 8 of Hyndman and Fan (1996), each with the interval between two readings in their order that holds the percentile with the stated probability whatever the distribution is (order statistics, exact binomial); an end is open (null) where there are too few readings to say. One reading of real power for each device, that of the latest visit that read it. The intervals speak of chance alone: households that measure are not all households, and devices of one household are alike.',
  rejection: null,
  openAgainAt: null,
  openAgainRule:
    'A proposal that was accepted or rejected is open again once there are a quarter more readings than then, and at least eight more.',
} satisfies z.output<typeof proposalSchema>

export const exampleProposalList = {
  items: [exampleProposal],
  nextCursor: null,
} satisfies z.output<typeof proposalListSchema>

export const exampleRejectedProposal = {
  ...exampleProposal,
  version: '1-12-dfa18b6b',
  status: 'rejected',
  rejection: {
    n: 12,
    reason: 'Mostly of one maker; wait for more',
    author: {
      organisation: 'operator',
      keyId: 'mfrggzdfmztwq2lk',
    },
    at: '2026-01-31T12:00:00.000Z',
  },
  openAgainAt: 20,
} satisfies z.output<typeof proposalSchema>
