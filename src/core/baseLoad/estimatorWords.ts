import type { Estimator } from './estimators.ts'
import type { NightWindow } from './localDays.ts'

interface Words {
  readonly definition: (window: NightWindow) => string
  readonly why: string
  readonly formula: string
  readonly source: string
}

const T_INTERVAL =
  'JCGM 100:2008, G.3 (t-interval), with the effective number of days after Bayley and Hammersley 1946 (from memory)'
const WOODRUFF = 'Hyndman and Fan 1996, definition 7; Woodruff 1952 with days as clusters (both from memory)'
const PERCENTILE_FORMULA =
  'Q(p) with h = (n - 1) p between order statistics; low, high = Q(p -+ t u), u of the mean over days of the share of readings at or below Q(p)'
const MEAN_FORMULA =
  'mean of one value a day -+ t u, u^2 = variance/(n_eff - 1), n_eff = n/(1 + 2 sum (1 - k/n) r_k), t with n_eff - 1 degrees of freedom'

/** What each estimator is, and why one would choose it. All of them are in use, and none is a standard (M). */
export const ESTIMATOR_WORDS: Readonly<Record<Estimator, Words>> = {
  'minimum-hour': {
    definition: () => 'The least mean over any one hour.',
    why: '',
    formula: 'min over clock hours of the mean power',
    source: 'in use, no standard definition found (from memory)',
  },
  'mean-of-daily-minima': {
    definition: () => 'The mean of the least reading of each day.',
    why: 'It asks each day for the moment with the least going on, so an evening with guests or a night with the dishwasher on changes little, and one odd reading is only one day among many.',
    formula: MEAN_FORMULA,
    source: T_INTERVAL,
  },
  'percentile-5': {
    definition: () => 'The power that 5 % of the readings stay below.',
    why: 'It rests on all readings and is hardly moved by single ones, but it takes what is low most often, such as a quiet season.',
    formula: PERCENTILE_FORMULA,
    source: WOODRUFF,
  },
  'percentile-10': {
    definition: () => 'The power that 10 % of the readings stay below.',
    why: 'It rests on all readings and is hardly moved by single ones, but it takes what is low most often, such as a quiet season.',
    formula: PERCENTILE_FORMULA,
    source: WOODRUFF,
  },
  'night-window-mean': {
    definition: ({ fromHour, toHour }) =>
      `The mean of the readings that start between ${clock(fromHour)} and ${clock(toHour)} local time.`,
    why: 'It averages over whole cycles of refrigerators and pumps and over the steps of a coarse meter, and no sun shines on panels then; but it counts whatever runs at night.',
    formula: MEAN_FORMULA,
    source: T_INTERVAL,
  },
}

const clock = (hour: number) => `${String(Math.floor(hour)).padStart(2, '0')}:00`
