import type { z } from 'zod'
import type { cautionListSchema } from '../../../schemas/caution.ts'
import type { limitListSchema } from '../../../schemas/limit.ts'
import type { limitAnswerSchema, limitQuestionSchema } from '../../../schemas/limitCheck.ts'

const television = {
  jurisdiction: 'EU',
  mode: 'standby',
  placedOnMarket: '2018',
  showsStatus: false,
  reading: {
    kind: 'power',
    watts: 0.38,
    accuracy: { percentOfReading: 1.5, counts: 3, resolution: 0.01 },
  },
} satisfies z.input<typeof limitQuestionSchema>

const charger = {
  jurisdiction: 'EU',
  mode: 'no-load',
  placedOnMarket: '2022-03-15',
  supplyType: 'ac-dc',
  ratedOutputW: 20,
  powerW: { expected: 0.12, low: 0.09, high: 0.15 },
} satisfies z.input<typeof limitQuestionSchema>

/** Examples of request bodies of POST /v1/limits/check; a test sends each. */
export const LIMIT_REQUESTS = {
  television: { summary: 'A television read with a wattmeter', value: television },
  charger: { summary: 'A charger with nothing attached, by its power', value: charger },
} as const

/** The answer to the television. */
export const exampleLimitCheck = {
  methodVersion: '1.0.0',
  catalogueRevision: 1,
  overlayRevision: 0,
  coverageProbability: 0.9,
  verdict: 'below',
  reason: {
    code: 'wholly-below',
    message: 'The power, between 0.353 W and 0.407 W, is below the limit of 0.5 W in (EC) No 1275/2008.',
  },
  notice:
    'A household reading is no compliance test. That takes a laboratory, a supply of stated quality, the methods of a standard such as IEC 62301, and up to four units of the model; and a device in use may have been repaired, changed or set otherwise since it was sold.',
  powerW: { expected: 0.38, low: 0.35257, high: 0.40743 },
  confidence: 'measured',
  compared: [
    {
      limit: {
        code: 'eu-2013-standby',
        jurisdiction: 'EU',
        purpose: 'placing-on-the-market',
        regulation: '(EC) No 1275/2008',
        annex: 'II',
        point: '2(b)',
        appliesFrom: '2013-01-07',
        appliesUntil: '2025-05-08',
        mode: 'standby',
        condition: 'reactivation-only',
        supplyType: null,
        outputAboveW: null,
        outputUpToW: null,
        limitW: 0.5,
        toleranceW: 0.1,
        tolerancePercent: null,
        toleranceSource: '(EC) No 1275/2008, Annex III: 0.10 W for limits up to 1.00 W',
        toleranceMark: 'V',
        source: '(EC) No 1275/2008, Annex II, point 2(b); official text, CELEX 32008R1275',
        mark: 'V',
      },
      aboveFromW: 0.6,
      verdict: 'below',
      reason: {
        code: 'wholly-below',
        message: 'The power, between 0.353 W and 0.407 W, is below the limit of 0.5 W in (EC) No 1275/2008.',
      },
    },
  ],
  warnings: [],
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
      code: 'defer-to-manufacturer',
      message:
        'The manufacturer’s instructions, local codes and licensed practice come before anything this service suggests.',
      source: 'common practice, no source',
    },
  ],
} satisfies z.output<typeof limitAnswerSchema>

/** The answer to GET /v1/limits?jurisdiction=EU&mode=off&placedOnMarket=2028-01-01. */
export const exampleLimitList = {
  items: [
    {
      code: 'eu-2027-off',
      jurisdiction: 'EU',
      purpose: 'placing-on-the-market',
      regulation: '(EU) 2023/826',
      annex: 'III',
      point: '1(a)',
      appliesFrom: '2027-05-09',
      appliesUntil: null,
      mode: 'off',
      condition: 'any',
      supplyType: null,
      outputAboveW: null,
      outputUpToW: null,
      limitW: 0.3,
      toleranceW: 0.1,
      tolerancePercent: null,
      toleranceSource: '(EU) 2023/826, Annex V, table 1: 0.10 W',
      toleranceMark: 'V',
      source: '(EU) 2023/826, Annex III, point 1(a); official text, CELEX 32023R0826',
      mark: 'V',
    },
  ],
  nextCursor: null,
} satisfies z.output<typeof limitListSchema>

/** The answer to GET /v1/cautions?appliesTo=reading-declared. */
export const exampleCautionList = {
  items: [
    {
      code: 'defer-to-manufacturer',
      message:
        'The manufacturer’s instructions, local codes and licensed practice come before anything this service suggests.',
      appliesTo: [
        'estimate',
        'reading-power',
        'reading-energy',
        'reading-samples',
        'reading-current',
        'reading-apparent-power',
        'reading-declared',
        'reading-thermal',
        'savings',
        'report',
        'limit-check',
        'base-load',
        'population',
        'verification',
      ],
      source: 'common practice, no source',
      mark: null,
    },
  ],
} satisfies z.output<typeof cautionListSchema>
