import type { z } from 'zod'
import type { baseLoadRequestSchema } from '../../schemas/baseLoad.ts'
import type { baseLoadEvaluationSchema } from '../../schemas/baseLoadEvaluation.ts'

/** One invented day, Wh for each hour, and how much more there was on each of eight days. */
const HOURS = [
  142, 121, 118, 116, 119, 134, 210, 340, 290, 230, 215, 260, 380, 300, 240, 225, 260, 420, 610, 580, 470,
  390, 280, 190,
]
const DAYS = [0, 3, -2, 5, 1, -4, 2, 4]

const week = {
  timeZone: 'Europe/Berlin',
  blocks: [
    {
      start: '2025-02-03T00:00:00+01:00',
      intervalSeconds: 3600,
      wattHours: DAYS.flatMap((more) => HOURS.map((wattHours) => wattHours + more)),
    },
  ],
  inventory: { devices: [{ category: 'router' }, { category: 'television', year: 2018 }] },
} satisfies z.input<typeof baseLoadRequestSchema>

/** Examples of request bodies of POST /v1/base-load/evaluate; a test sends each. */
export const BASE_LOAD_REQUESTS = {
  hourly: { summary: 'Eight days of hourly energy, and two devices of the inventory', value: week },
} as const

/** The answer to the eight days. */
export const exampleBaseLoadEvaluation = {
  methodVersion: '1.0.0',
  catalogueRevision: 1,
  overlayRevision: 0,
  coverageProbability: 0.9,
  night: { fromHour: 1, toHour: 5 },
  data: {
    form: 'json',
    timeZone: 'Europe/Berlin',
    from: '2025-02-02T23:00:00Z',
    to: '2025-02-10T23:00:00Z',
    intervalSeconds: 3600,
    readings: 192,
    days: 8,
    completeDays: 8,
    clockChanges: [],
    coveredShare: 1,
    gaps: 0,
    longestGapHours: 0,
    duplicates: 0,
    conflicts: 0,
    overlaps: 0,
    joined: 0,
    estimated: 0,
    energyKwh: 53.336,
    meanW: 277.792,
    leastReadingW: 112,
  },
  estimators: [
    {
      estimator: 'minimum-hour',
      definition: 'The least mean over any one hour.',
      powerW: 112,
      low: null,
      high: null,
      days: 1,
      reason: null,
    },
    {
      estimator: 'mean-of-daily-minima',
      definition: 'The mean of the least reading of each day.',
      powerW: 117.125,
      low: 115.086,
      high: 119.164,
      days: 8,
      reason: null,
    },
    {
      estimator: 'percentile-5',
      definition: 'The power that 5 % of the readings stay below.',
      powerW: 118,
      low: 114,
      high: 120.578,
      days: 8,
      reason: null,
    },
    {
      estimator: 'percentile-10',
      definition: 'The power that 10 % of the readings stay below.',
      powerW: 121,
      low: 119,
      high: 123,
      days: 8,
      reason: null,
    },
    {
      estimator: 'night-window-mean',
      definition: 'The mean of the readings that start between 01:00 and 05:00 local time.',
      powerW: 119.625,
      low: 117.586,
      high: 121.664,
      days: 8,
      reason: null,
    },
  ],
  chosen: {
    estimator: 'mean-of-daily-minima',
    powerW: { expected: 117.125, low: 115.086, high: 119.164 },
    energyKwhPerYear: { expected: 1026.01, low: 1008.15, high: 1043.88 },
    shareOfUse: 0.421628,
    days: 8,
    effectiveDays: 8,
    degreesOfFreedom: 7,
    explanation:
      'Chosen by the service: the mean of the least reading of each day. It asks each day for the moment with the least going on, so an evening with guests or a night with the dishwasher on changes little, and one odd reading is only one day among many. It rests on 8 days; since neighbouring days are alike, they tell as much as 8.0 independent ones. The base load is between 115 W and 119 W with a probability of 90 %, as far as the scatter between these days tells. The meter’s own error and seasons that were not seen are not in it.',
    formula:
      'mean of one value a day -+ t u, u^2 = variance/(n_eff - 1), n_eff = n/(1 + 2 sum (1 - k/n) r_k), t with n_eff - 1 degrees of freedom',
    source:
      'JCGM 100:2008, G.3 (t-interval), with the effective number of days after Bayley and Hammersley 1946 (from memory)',
  },
  daysAway: { named: [], suspected: [], meanW: null },
  outages: [],
  generation: false,
  inventory: {
    from: 'inventory',
    devices: 2,
    sampleData: true,
    powerW: { expected: 9.4633, low: 4.31634, high: 18.3314 },
    explainedShare: { expected: 0.0807966, low: 0.0368694, high: 0.156688 },
    restW: { expected: 107.662, low: 98.5622, high: 113.328 },
    correlation:
      'Base load and inventory are taken as independent: one comes from the home’s meter, the other from its devices. Within the inventory, readings with one meter share its gain, and current readings share the voltage.',
    couldBe: [
      {
        code: 'refrigeration',
        isStandby: false,
        message:
          'Refrigerators and freezers run in cycles by themselves; on average they draw tens of watts. That is not standby, and they must stay on.',
        source: 'common practice, no source',
      },
      {
        code: 'circulation-pumps',
        isStandby: false,
        message:
          'Pumps of heating, hot water, ponds and aquaria run for hours or always. That is not standby; a heating technician can set their times.',
        source: 'common practice, no source',
      },
      {
        code: 'ventilation',
        isStandby: false,
        message: 'Ventilation, dehumidifiers and fans that run always. That is not standby.',
        source: 'common practice, no source',
      },
      {
        code: 'heating-by-itself',
        isStandby: false,
        message:
          'Electric water heaters, frost protection, trace heating and heat pumps that heat at night. That is not standby.',
        source: 'common practice, no source',
      },
      {
        code: 'night-charging',
        isStandby: false,
        message: 'Vehicles, storage heaters and batteries that charge at night. That is not standby.',
        source: 'common practice, no source',
      },
      {
        code: 'hard-wired',
        isStandby: true,
        message:
          'What has no plug to pull: door bells, intercoms, alarm panels, garage doors, smoke detectors, shutters, the transformers of lights, the meter’s own gateway. Leave what protects people on, and leave wiring to licensed electricians.',
        source: 'common practice, no source',
      },
      {
        code: 'devices-not-listed',
        isStandby: true,
        message:
          'Devices that the inventory does not list yet: look in the cellar, the attic, the garage, behind furniture, and for supplies without a device.',
        source: 'common practice, no source',
      },
    ],
  },
  warnings: [
    {
      code: 'short-series',
      message:
        'The data covers 8 days. Heating, cooling and holidays change a base load through the year; the interval does not know of seasons that were not seen.',
    },
    {
      code: 'sample-data',
      message:
        'Typical draws of the catalogue are invented sample data; they show how the service works, not what devices draw.',
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
} satisfies z.output<typeof baseLoadEvaluationSchema>
