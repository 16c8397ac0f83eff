import type { MeterPreset } from './meterPreset.ts'
import type { ReadingContext } from './powerModel.ts'
import type { MeterAccuracy, ReadingUnit } from './meterAccuracy.ts'
import { type MeteredReading, UNIT_OF_READING } from './reading.ts'

export interface KnownAccuracy {
  readonly unit: ReadingUnit
  /** Null where none is given, or the class of meter that was named does not read this unit. */
  readonly limits: MeterAccuracy | null
  /** The class that the limits were taken from. */
  readonly preset: MeterPreset | null
  /** What readings of one meter have in common: its gain. Null for a meter that is not named. */
  readonly meter: string | null
}

/**
 * The limits of error of the meter behind a reading: those of the meter that it names, or its own; as stated, or those
 * of a class of meters. A class has limits of its own for each unit, so its gain is shared within one unit only.
 */
export function accuracyOf(
  reading: Pick<MeteredReading, 'kind' | 'meterId' | 'accuracy'>,
  { meters, presets }: Pick<ReadingContext, 'meters' | 'presets'>,
): KnownAccuracy {
  const unit = UNIT_OF_READING[reading.kind]
  const named = reading.meterId === undefined ? undefined : meters.get(reading.meterId)
  const given = named ?? reading.accuracy
  const meter = named?.id ?? null
  if (!given) return { unit, limits: null, preset: null, meter }
  if (!('preset' in given)) return { unit, limits: given, preset: null, meter }
  const preset = presets[given.preset]
  const limits = preset.accuracies[unit] ?? null
  return { unit, limits, preset, meter: meter === null ? null : `${meter} in ${unit}` }
}
