import type { z } from 'zod'
import type { readingEvaluationSchema, readingToEvaluateSchema } from '../../schemas/readingEvaluation.ts'

type Request = z.input<typeof readingToEvaluateSchema>

const clampReading = {
  category: 'game-console',
  mode: 'standby',
  year: 2016,
  reading: { kind: 'current', amperes: 0.54, loops: 10, accuracy: { preset: 'clamp-true-rms' } },
} satisfies Request

const warmCharger = {
  reading: {
    kind: 'thermal',
    surfaceTemperatureC: 34,
    ambientTemperatureC: 21,
    areaM2: 0.006,
    heightM: 0.08,
    orientation: 'vertical',
  },
} satisfies Request

const wattmeterReading = {
  coverageProbability: 0.95,
  meters: [{ id: 'wattmeter', percentOfReading: 1.5, counts: 3, resolution: 0.01 }],
  reading: { kind: 'power', watts: 4.2, meterId: 'wattmeter' },
  quantity: 3,
} satisfies Request

/** Examples of request bodies of POST /v1/readings/evaluate; a test sends each. */
export const READING_REQUESTS = {
  clamp: { summary: 'A clamp meter round the x10 window of a line splitter', value: clampReading },
  wattmeter: { summary: 'A wattmeter that is named, at one of three equal devices', value: wattmeterReading },
  warmth: { summary: 'A warm plug pack', value: warmCharger },
} as const

/** The answer to the reading with a clamp meter. */
export const exampleReadingEvaluation = {
  catalogueRevision: 1,
  overlayRevision: 0,
  methodVersion: '1.0.0',
  coverageProbability: 0.9,
  kind: 'current',
  supply: { volts: 230, tolerancePercent: 6, hertz: 50 },
  quantity: 1,
  category: 'game-console',
  categoryName: 'Game console',
  catalogueLayer: 'shared',
  sampleData: true,
  confidence: 'partly-measured',
  powerW: { expected: 6.003, low: 4.32745, high: 7.94553 },
  apparentPowerVa: { expected: 12.42, low: 11.1209, high: 13.7764 },
  reactivePowerVar: { expected: 10.8082, low: 9.28401, high: 12.3258 },
  powerFactor: { low: 0.3, typical: 0.45, high: 0.7 },
  uncertaintyRules: [
    {
      edition: 'IEC 62301:2005 (edition 1), 4.4',
      mark: 'V',
      limitW: 0.12006,
      expandedUncertaintyW: 2.08834,
      goodEnough: false,
    },
    {
      edition: 'IEC 62301:2011 (edition 2), 4.4.1',
      mark: 'M',
      limitW: 0.12006,
      expandedUncertaintyW: 2.08834,
      goodEnough: false,
    },
  ],
  assumptions: [
    'The voltage is 230 V +-6 %.',
    'The power factor is between 0.3 and 0.7, as is usual for Game console in a low-power mode.',
    'The meter is as good as its class, clamp meter, true-RMS: +-(2 % + 5 x 0.01 A); common practice, no source.',
  ],
  steps: [
    {
      what: 'A meter is right only within its limits of error: a share of the reading, and some steps of its last digit. This meter’s own are not given, so those of its class count: clamp meter, true-RMS.',
      formula: '+-(2 % of 0.54 A + 5 x 0.01 A)',
      result: '0.54 A +-0.0608 A',
    },
    {
      what: 'In this window of the line splitter the conductor passes the jaw 10 times. The fields of all turns add up, so the meter shows 10 times the current, and its last digits weigh 10 times less.',
      formula: 'I = reading / turns = 0.54 A / 10',
      result: '0.054 A',
    },
    {
      what: 'The voltage was not read, so the supply’s nominal voltage counts, anywhere within its tolerance.',
      formula: 'V = 230 V +-6 %',
      result: '216 to 244 V',
    },
    {
      what: 'Volts times amperes is apparent power, in volt-amperes (VA): what the wires have to carry. It is not yet watts.',
      formula: 'S = V I = 230 V x 0.054 A',
      result: '12.4 VA (11.1 to 13.8)',
    },
    {
      what: 'The power factor says which share of the VA are watts. Small supplies draw their current in short bursts, and filter capacitors draw current that does no work at all, so it is far below 1 in standby. It was not read, so the range that is usual for Game console counts, and a range of watts follows, never one figure.',
      formula: 'PF = P / S, between 0 and 1',
      result: 'PF = 0.3 to 0.7, most likely 0.45',
    },
    {
      what: 'Only the power factor’s share of the VA are watts: that is what the device uses up, what becomes heat, and what the energy meter counts.',
      formula: 'P = S PF',
      result: '6 W (4.33 to 7.95) of 12.4 VA',
    },
    {
      what: 'The rest loads the wires without being used up: it swings to and fro between device and supply, or comes from the distorted shape of the current. It is called non-active (for sine waves: reactive) power.',
      formula: 'Q = sqrt(S^2 - P^2) = S sqrt(1 - PF^2)',
      result: '10.8 var (9.28 to 12.3)',
    },
    {
      what: 'So 230 V x 0.054 A is not 12.4 W: that would take a power factor of 1, as a heater has.',
      formula: 'P = V I PF = 12.4 VA x PF',
      result: '6 W (4.33 to 7.95)',
    },
    {
      what: 'All errors together: the value lies between the two ends with a probability of 90 %.',
      formula: 'the errors combined (JCGM 101:2008)',
      result: '6 W, between 4.33 W and 7.95 W',
    },
  ],
  warnings: [
    {
      code: 'meter-class-assumed',
      message:
        'The meter’s own accuracy is not given, so that of its class, clamp meter, true-RMS, counts (common practice, no source). Give percentOfReading, counts and resolution from its manual.',
    },
    {
      code: 'power-factor-assumed',
      message:
        'Volts times amperes is apparent power (VA), not watts: without a power factor the reading gives a range of watts, never one figure. Read it again with a plug-in wattmeter, or read the power factor too.',
    },
  ],
  guidance: [
    {
      code: 'one-conductor-only',
      message:
        'Put one conductor alone through the jaw. With both, their fields cancel and the meter shows about zero.',
      source: 'Instrument makers’ application notes',
    },
    {
      code: 'use-the-ten-turn-window',
      message:
        'Below about 1 A use the x10 window of a line splitter, and give loops: 10 with the figure as the meter shows it.',
      source: 'Instrument makers’ application notes',
    },
    {
      code: 'use-true-rms',
      message:
        'Use a true-RMS meter: an average-responding one is wrong for the bursts that small supplies draw.',
      source: 'Instrument makers’ application notes',
    },
    {
      code: 'read-the-power-factor',
      message:
        'Standby loads of 1 to 10 W have a very poor power factor, sometimes below 0.25: read watts with a plug-in wattmeter wherever the plug can be reached.',
      source: 'LBNL, standby.lbl.gov/meters.html',
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
} satisfies z.output<typeof readingEvaluationSchema>
