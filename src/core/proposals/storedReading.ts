import type { Mode } from '../catalogue/category.ts'
import type { EnergyReading, PowerReading, SamplesReading } from '../readings/reading.ts'

/** Kinds of reading that are real power without an assumption: nothing else may move a catalogue figure. */
export type RealPowerReading = PowerReading | EnergyReading | SamplesReading

/** A reading of real power as it lies in an organisation's inventory. */
export interface StoredReading {
  readonly organisation: string
  readonly inventory: string
  /** Day of the visit, YYYY-MM-DD. */
  readonly visit: string
  /** The device's place in its visit's list, 0 first. */
  readonly place: number
  /** The device's own id, which it has on every visit; null where it was given none. */
  readonly device: string | null
  /** The category as the organisation named it. */
  readonly category: string
  readonly mode: Mode
  /** Year of manufacture. */
  readonly year: number | null
  /** Null where the category's default holds. */
  readonly quantity: number | null
  readonly reading: RealPowerReading
}
