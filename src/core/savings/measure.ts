import type { Mode, Range } from '../catalogue/category.ts'

/**
 * What a household can do about standby:
 * - `outlet-switch`: switch one device off where it is plugged in, by hand
 * - `switchable-strip`: one switch for all devices of an outlet
 * - `timer`: switches one device off for some hours a week by itself
 * - `setting`: the device spends hours in another mode
 * - `replacement`: another device that draws less
 */
export const MEASURE_KINDS = ['outlet-switch', 'switchable-strip', 'timer', 'setting', 'replacement'] as const
export type MeasureKind = (typeof MEASURE_KINDS)[number]

/** Kinds that save only as often as somebody remembers them. */
export const HABIT_KINDS: readonly MeasureKind[] = ['outlet-switch', 'switchable-strip']

/** One measure with its figures. What its kind does not have is null, or zero. */
export interface Measure {
  readonly code: string
  readonly name: string
  readonly kind: MeasureKind
  /** Of one piece, in the currency; for a replacement of one device. */
  readonly price: number
  /** Null where it costs nothing, or where the price is in the tariff's currency. */
  readonly currency: string | null
  readonly lifeYears: number
  /** Share of what it could save that it saves over its life: habits lapse, settings are undone. 0 to 1, triangular. */
  readonly persistence: Range
  /** What it draws itself, all hours of the year, W; triangular. */
  readonly ownDrawW: Range
  /** Of a strip: the load that it may carry, W or A, and how many plugs it takes. */
  readonly ratedLoadW: number | null
  readonly ratedLoadA: number | null
  readonly outlets: number | null
  /** Of a timer: hours of the week that it keeps the device off, while nobody uses it. */
  readonly hoursOffPerWeek: number | null
  /** Of a setting. */
  readonly fromMode: Mode | null
  readonly toMode: Mode | null
  /** Of a replacement: what the new device draws in the modes of the old one, W; triangular. */
  readonly newDrawW: Range | null
  /** Codes of the categories that it suits; all where none is named. */
  readonly categories: readonly string[]
  readonly source: string
  readonly sampleData: boolean
}

/** Figures that a kind must have, and that no other kind may have. */
export const OWN_FIELDS = {
  'outlet-switch': [],
  'switchable-strip': ['outlets'],
  timer: ['hoursOffPerWeek'],
  setting: ['fromMode', 'toMode'],
  replacement: ['newDrawW'],
} as const satisfies Readonly<Record<MeasureKind, readonly (keyof Measure)[]>>
