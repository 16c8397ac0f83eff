import type { Range } from '../catalogue/category.ts'
import type { Flag, Warning } from '../estimate/estimate.ts'
import type { Supply } from '../inventory/household.ts'
import type { Term } from '../quantity/term.ts'
import type { MeterPresets } from './meterPreset.ts'
import type { Meter } from './reading.ts'
import type { SeriesAnalysis } from './series/analyseSeries.ts'
import type { HeatLoss } from './heatLoss.ts'
import type { UsualDraw } from './usualDraw.ts'

/** What a reading is read against. */
export interface ReadingContext {
  readonly supply: Supply
  readonly meters: ReadonlyMap<string, Meter>
  readonly presets: MeterPresets
  /** The category's power factor in its low-power modes, for a current or VA reading without one. */
  readonly powerFactor: Range
  /** Null where no category is known, so that a reading can't be held against anything. */
  readonly usual: UsualDraw | null
}

/** A reading turned into real power in W, for one reading (not yet times the devices behind it). */
export interface PowerOfReading {
  readonly power: Term
  /** In VA, where the reading has it. */
  readonly apparentPower?: Term
  /** Non-active power in var, where the reading has it. */
  readonly reactivePower?: () => Term
  /** How a series of samples was judged. */
  readonly series?: SeriesAnalysis
  /** Where the heat of a warm surface goes. */
  readonly heat?: HeatLoss
  readonly flag: Flag
  /** One sentence: the formula with its figures, and what was assumed. */
  readonly explanation: string
  readonly warnings: readonly Warning[]
}
