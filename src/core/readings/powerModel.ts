import type { Range } from '../catalogue/category.ts'
import type { Flag, Warning } from '../estimate/estimate.ts'
import type { Supply } from '../inventory/household.ts'
import type { Term } from '../quantity/term.ts'
import type { Meter } from './reading.ts'

/** What a reading is read against. */
export interface ReadingContext {
  readonly supply: Supply
  readonly meters: ReadonlyMap<string, Meter>
  /** The category's power factor in its low-power modes, for a current or VA reading without one. */
  readonly powerFactor: Range
}

/** A reading turned into real power in W, for one reading (not yet times the devices behind it). */
export interface PowerOfReading {
  readonly power: Term
  /** In VA, where the reading has it. */
  readonly apparentPower?: Term
  readonly flag: Flag
  /** One sentence: the formula with its figures, and what was assumed. */
  readonly explanation: string
  readonly warnings: readonly Warning[]
}
