import type { Range } from '../catalogue/category.ts'

/** A meter's stated limits of error: +-(percentOfReading % + counts x resolution), resolution in the reading's unit. */
export interface MeterAccuracy {
  readonly percentOfReading: number
  readonly counts: number
  readonly resolution: number
}

export interface Meter extends MeterAccuracy {
  readonly id: string
}

interface Metered {
  /** Readings with the same meterId share the meter's gain error. */
  readonly meterId?: string
  readonly accuracy?: MeterAccuracy
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

/** What somebody measured or read off a label, before any conversion. */
export type Reading = PowerReading | EnergyReading | CurrentReading | ApparentPowerReading | DeclaredReading
