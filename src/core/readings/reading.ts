import type { Range } from '../catalogue/category.ts'
import type { MeterAccuracy, ReadingUnit } from './meterAccuracy.ts'
import type { MeterPresetCode } from './meterPreset.ts'

export type { MeterAccuracy } from './meterAccuracy.ts'

/** A class of meter, for whoever does not have the manual. */
export interface PresetAccuracy {
  readonly preset: MeterPresetCode
}

export type GivenAccuracy = MeterAccuracy | PresetAccuracy

export type Meter = { readonly id: string } & GivenAccuracy

interface Metered {
  /** Readings with the same meterId share the meter's gain error. */
  readonly meterId?: string
  readonly accuracy?: GivenAccuracy
}

export interface PowerReading extends Metered {
  readonly kind: 'power'
  readonly watts: number
}

export interface EnergyReading extends Metered {
  readonly kind: 'energy'
  readonly wattHours: number
  readonly durationHours: number
}

/** Real power, read again and again at one interval while nobody touches the device. */
export interface SamplesReading extends Metered {
  readonly kind: 'samples'
  readonly watts: readonly number[]
  readonly intervalSeconds: number
}

export interface CurrentReading extends Metered {
  readonly kind: 'current'
  readonly amperes: number
  /** How often the conductor passes the clamp; a line splitter's x10 window is 10. */
  readonly loops?: number
  /** Voltage read at the same time; without it the supply's nominal voltage and tolerance count. */
  readonly volts?: number
  readonly powerFactor?: number | Range
}

export interface ApparentPowerReading extends Metered {
  readonly kind: 'apparent-power'
  readonly voltAmperes: number
  readonly powerFactor?: number | Range
}

export interface DeclaredReading {
  readonly kind: 'declared'
  readonly watts: number
}

export const ORIENTATIONS = ['vertical', 'facing-up', 'facing-down'] as const
export type Orientation = (typeof ORIENTATIONS)[number]

/** How warm a device's surface is, as a thermal camera or a contact thermometer shows it. */
export interface ThermalReading {
  readonly kind: 'thermal'
  readonly surfaceTemperatureC: number
  readonly ambientTemperatureC: number
  readonly areaM2: number
  /** Height of a vertical surface, or one side of a horizontal one; without it the surface counts as square. */
  readonly heightM?: number
  readonly orientation: Orientation
  /** 0 to 1; 0.9 where it is left out. */
  readonly emissivity?: number
}

/** What somebody measured or read off a label, before any conversion. */
export type Reading =
  | PowerReading
  | EnergyReading
  | SamplesReading
  | CurrentReading
  | ApparentPowerReading
  | DeclaredReading
  | ThermalReading

export const READING_KINDS = [
  'power',
  'energy',
  'samples',
  'current',
  'apparent-power',
  'declared',
  'thermal',
] as const satisfies readonly Reading['kind'][]

/** A reading that a meter showed. */
export type MeteredReading = Exclude<Reading, DeclaredReading | ThermalReading>

/** The unit that each kind's meter counts in; a meter's resolution and counts are in it. */
export const UNIT_OF_READING = {
  power: 'W',
  samples: 'W',
  energy: 'Wh',
  current: 'A',
  'apparent-power': 'VA',
} as const satisfies Readonly<Record<MeteredReading['kind'], ReadingUnit>>
