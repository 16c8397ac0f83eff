import type { MeterAccuracy, ReadingUnit } from './meterAccuracy.ts'

/** Classes of meter that a reading may name where its manual is not at hand. */
export const METER_PRESETS = [
  'plug-in-wattmeter',
  'clamp-true-rms',
  'clamp-average-responding',
  'smart-plug',
] as const
export type MeterPresetCode = (typeof METER_PRESETS)[number]

/** What a class of meter can do, by the unit that it reads; a unit that is left out is one that it does not read. */
export interface MeterPreset {
  readonly code: MeterPresetCode
  readonly name: string
  readonly accuracies: Readonly<Partial<Record<ReadingUnit, MeterAccuracy>>>
  /** "common practice, no source" for what the service is shipped with; the operator's own words otherwise. */
  readonly source: string
}

/** The class that a next reading is supposed to be taken with, so it has a figure in W. */
type Wattmeter = MeterPreset & { readonly accuracies: { readonly W: MeterAccuracy } }

/** All classes; the numbers are the operator's to edit. */
export type MeterPresets = Readonly<Record<MeterPresetCode, MeterPreset>> & {
  readonly 'plug-in-wattmeter': Wattmeter
}
