import type { Range } from '../catalogue/category.ts'
import type { Flag, Warning } from '../estimate/estimate.ts'
import type { Term } from '../quantity/term.ts'
import { powerOfCurrent } from './powerOfCurrent.ts'
import { powerOfApparentPower } from './powerOfApparentPower.ts'
import { powerOfDeclared } from './powerOfDeclared.ts'
import { powerOfEnergy } from './powerOfEnergy.ts'
import { powerOfPower } from './powerOfPower.ts'
import type { Meter, Reading } from './reading.ts'
import type { Supply } from '../inventory/household.ts'

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

/** Real power of a reading of any kind; a new kind gets a file of its own and a case here. */
export function powerOfReading(reading: Reading, context: ReadingContext): PowerOfReading {
  switch (reading.kind) {
    case 'power':
      return powerOfPower(reading, context)
    case 'energy':
      return powerOfEnergy(reading, context)
    case 'current':
      return powerOfCurrent(reading, context)
    case 'apparent-power':
      return powerOfApparentPower(reading, context)
    case 'declared':
      return powerOfDeclared(reading)
  }
}
