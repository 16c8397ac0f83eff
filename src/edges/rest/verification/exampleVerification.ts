import type { z } from 'zod'
import type { verificationSchema } from '../../../schemas/verificationAnswer.ts'

/** The answer to the two visits. */
export const exampleVerification = {
  catalogueRevision: 1,
  overlayRevision: 0,
  referenceRevision: 1,
  coverageProbability: 0.9,
  currency: 'EUR',
  sampleData: true,
  used: {
    supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
    tariff: { kind: 'flat', pricePerKwh: 0.3, currency: 'EUR' },
    tariffSource: 'given in the request',
    standbyPricePerKwh: 0.3,
    priceBasis:
      'A kWh costs the same however many came before it. Each device bears the total in proportion to its energy at the total’s price a kWh, so that no device depends on the order and all add up to the total.',
    emissionFactor: { kgCo2ePerKwh: 0.25 },
    emissionFactorSource: 'given in the request',
    weeksPerYear: 52.142857142857146,
    annualUseKwh: null,
    monthlyUseKwh: null,
    methodVersion: '1.0.0',
  },
  devices: [
    {
      id: 'box',
      label: null,
      category: 'cable-set-top-box',
      categoryName: 'Cable television box',
      status: 'changed',
      changes: [
        {
          code: 'hours-changed',
          mode: 'networked-standby',
          message: 'In networked-standby: 140 h a week before, 40 h a week after.',
        },
        {
          code: 'reading-changed',
          mode: 'networked-standby',
          message: 'The reading in networked-standby is another one than before.',
        },
      ],
      before: {
        quantity: 1,
        confidence: 'measured',
        powerW: { expected: 9.4, low: 9.27013, high: 9.52987 },
        energyKwhPerYear: { expected: 68.62, low: 67.672, high: 69.568 },
      },
      after: {
        quantity: 1,
        confidence: 'measured',
        powerW: { expected: 9.1, low: 8.97397, high: 9.22603 },
        energyKwhPerYear: { expected: 18.98, low: 18.7171, high: 19.2429 },
      },
      saving: {
        powerW: { expected: 0.3, low: 0.258795, high: 0.341205 },
        energyKwhPerYear: { expected: 49.64, low: 48.9292, high: 50.3508 },
        costPerYear: {
          expected: 14.892,
          low: 14.6788,
          high: 15.1052,
          amounts: { expected: '14.89', low: '14.68', high: '15.11' },
        },
        emissionsKgCo2ePerYear: { expected: 12.41, low: 12.2323, high: 12.5877 },
        largerThanNoise: true,
        fractionalSavingsUncertainty: 0.0143184,
        at68Percent: { fractionalSavingsUncertainty: 0.0102035, below50Percent: true },
      },
      parts: {
        powerEffect: { expected: 2.19, low: 1.8892, high: 2.4908 },
        hoursEffect: { expected: 47.45, low: 46.7929, high: 48.1071 },
      },
      ipmvp: {
        option: 'A',
        reason: 'The power, the key parameter, was read at both visits; the hours are as stated.',
      },
      warnings: [],
    },
    {
      id: 'console',
      label: null,
      category: 'game-console',
      categoryName: 'Game console',
      status: 'changed',
      changes: [
        {
          code: 'now-measured',
          mode: 'standby',
          message: 'The power in standby was read at the second visit only.',
        },
      ],
      before: {
        quantity: 1,
        confidence: 'assumed',
        powerW: { expected: 1.35399, low: 0.2, high: 4 },
        energyKwhPerYear: { expected: 10.5902, low: 1.56429, high: 31.2857 },
      },
      after: {
        quantity: 1,
        confidence: 'measured',
        powerW: { expected: 0.6, low: 0.571392, high: 0.628608 },
        energyKwhPerYear: { expected: 4.69286, low: 4.4691, high: 4.91661 },
      },
      saving: {
        powerW: { expected: 0, low: 0, high: 0 },
        energyKwhPerYear: { expected: 0, low: 0, high: 0 },
        costPerYear: {
          expected: 0,
          low: 0,
          high: 0,
          amounts: { expected: '0.00', low: '0.00', high: '0.00' },
        },
        emissionsKgCo2ePerYear: { expected: 0, low: 0, high: 0 },
        largerThanNoise: false,
        fractionalSavingsUncertainty: null,
        at68Percent: { fractionalSavingsUncertainty: null, below50Percent: null },
      },
      parts: { powerEffect: { expected: 0, low: 0, high: 0 }, hoursEffect: { expected: 0, low: 0, high: 0 } },
      ipmvp: {
        option: null,
        reason:
          'The power was not read in every mode at both visits, so this is an estimate and no verification. Read it with a plug-in wattmeter at both visits.',
      },
      warnings: [
        {
          code: 'not-a-saving',
          message:
            'One visit knew the power better than the other, by a reading, a label or the year of manufacture, and that figure stands for both: what it moves is better knowledge, no saving, and is in betterKnown. Where the device was replaced in between, give the new one an id of its own.',
        },
        {
          code: 'year-unknown',
          message:
            'The typical draw in standby depends on the year of manufacture; without a year the figures of all years count as one wide range. Give the year to narrow it.',
        },
      ],
    },
  ],
  total: {
    beforeKwhPerYear: { expected: 79.2102, low: 70.0675, high: 99.9222 },
    afterKwhPerYear: { expected: 23.6729, low: 23.2621, high: 24.0837 },
    all: {
      powerW: { expected: 5.66667, low: 5.58553, high: 5.7478 },
      energyKwhPerYear: { expected: 49.64, low: 48.9292, high: 50.3508 },
      costPerYear: {
        expected: 14.892,
        low: 14.6788,
        high: 15.1052,
        amounts: { expected: '14.89', low: '14.68', high: '15.11' },
      },
      emissionsKgCo2ePerYear: { expected: 12.41, low: 12.2323, high: 12.5877 },
      largerThanNoise: true,
      fractionalSavingsUncertainty: 0.0143184,
      at68Percent: { fractionalSavingsUncertainty: 0.0102035, below50Percent: true },
    },
    kept: {
      powerW: { expected: 5.66667, low: 5.58553, high: 5.7478 },
      energyKwhPerYear: { expected: 49.64, low: 48.9292, high: 50.3508 },
      costPerYear: {
        expected: 14.892,
        low: 14.6788,
        high: 15.1052,
        amounts: { expected: '14.89', low: '14.68', high: '15.11' },
      },
      emissionsKgCo2ePerYear: { expected: 12.41, low: 12.2323, high: 12.5877 },
      largerThanNoise: true,
      fractionalSavingsUncertainty: 0.0143184,
      at68Percent: { fractionalSavingsUncertainty: 0.0102035, below50Percent: true },
    },
    keptParts: {
      powerEffect: { expected: 2.19, low: 1.8892, high: 2.4908 },
      hoursEffect: { expected: 47.45, low: 46.7929, high: 48.1071 },
    },
    removed: {
      powerW: { expected: 0, low: 0, high: 0 },
      energyKwhPerYear: { expected: 0, low: 0, high: 0 },
      costPerYear: { expected: 0, low: 0, high: 0, amounts: { expected: '0.00', low: '0.00', high: '0.00' } },
      emissionsKgCo2ePerYear: { expected: 0, low: 0, high: 0 },
      largerThanNoise: false,
      fractionalSavingsUncertainty: null,
      at68Percent: { fractionalSavingsUncertainty: null, below50Percent: null },
    },
    added: {
      powerW: { expected: 0, low: 0, high: 0 },
      energyKwhPerYear: { expected: 0, low: 0, high: 0 },
      costPerYear: { expected: 0, low: 0, high: 0, amounts: { expected: '0.00', low: '0.00', high: '0.00' } },
      emissionsKgCo2ePerYear: { expected: 0, low: 0, high: 0 },
      largerThanNoise: false,
      fractionalSavingsUncertainty: null,
      at68Percent: { fractionalSavingsUncertainty: null, below50Percent: null },
    },
  },
  betterKnown: {
    items: [
      {
        deviceId: 'console',
        mode: 'standby',
        from: 'assumed',
        to: 'measured',
        rebasedVisit: 'before',
        estimatedKwhPerYear: { expected: 10.5902, low: 1.56429, high: 31.2857 },
        rebasedKwhPerYear: { expected: 4.69286, low: 4.4691, high: 4.91661 },
        differenceKwhPerYear: { expected: 5.89731, low: -3.13622, high: 26.5938 },
      },
    ],
    differenceKwhPerYear: { expected: 5.89731, low: -3.13622, high: 26.5938 },
  },
  plan: {
    measures: [
      {
        name: 'Switchable strip for the set-top box',
        deviceIds: ['box'],
        expectedKwhPerYear: 45,
        status: 'carried-out',
        reason: 'Its devices save energy, and what was expected is within the interval or below it.',
        savedKwhPerYear: { expected: 49.64, low: 48.9292, high: 50.3508 },
        realisation: { expected: 1.10311, low: 1.08732, high: 1.11891 },
      },
      {
        name: 'Energy saving setting of the console',
        deviceIds: ['console'],
        expectedKwhPerYear: 8,
        status: 'not-carried-out',
        reason: 'Nothing about its devices is different from the first visit but how well they are known.',
        savedKwhPerYear: { expected: 0, low: 0, high: 0 },
        realisation: { expected: 0, low: 0, high: 0 },
      },
    ],
    expectedKwhPerYear: 53,
    savedKwhPerYear: { expected: 49.64, low: 48.9292, high: 50.3508 },
    realisation: { expected: 0.936604, low: 0.923193, high: 0.950014 },
    carriedOutShare: 0.849057,
    savedOutsidePlanKwhPerYear: { expected: 0, low: 0, high: 0 },
  },
  sources: [
    {
      document:
        'International Performance Measurement and Verification Protocol (IPMVP), Core Concepts, EVO 10000-1',
      year: 2016,
      says: 'Retrofit isolation: option A measures the key parameter and estimates the rest from a documented source, option B measures all parameters.',
      mark: 'V',
    },
    {
      document:
        'International Performance Measurement and Verification Protocol (IPMVP), Core Concepts, EVO 10000-1',
      year: 2016,
      says: 'Option A: saving = estimated value x (parameter before - parameter after). Option B: saving = energy before - energy after, adjusted to the same conditions.',
      mark: 'M',
    },
    {
      document: 'ASHRAE Guideline 14, Measurement of Energy, Demand, and Water Savings',
      year: 2014,
      says: 'The uncertainty must be below 50 % of the saving at a confidence of 68 %.',
      mark: 'V',
    },
    {
      document: 'ASHRAE Guideline 14, Measurement of Energy, Demand, and Water Savings',
      year: 2014,
      says: 'Fractional savings uncertainty: half of the width of the saving’s interval over the saving.',
      mark: 'M',
    },
    {
      document: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM), 5.2',
      year: 2008,
      says: 'Quantities that depend on the same meter or reference are correlated, and their common part counts once.',
      mark: 'M',
    },
  ],
  warnings: [
    {
      code: 'sample-data',
      message:
        'Figures of the catalogue (typical draws, hours, power factors) are invented sample data; they show how the service works, not what devices draw.',
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
      code: 'meter-category-rating',
      message:
        'Use a meter only within its measurement category: CAT II for devices on a socket, CAT III for fixed wiring, CAT IV at the service entrance.',
      source: 'IEC 61010-2-030 measurement categories, as given in instrument makers’ manuals',
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
} satisfies z.output<typeof verificationSchema>
