import { powerOfCurrent } from './powerOfCurrent.ts'
import { powerOfApparentPower } from './powerOfApparentPower.ts'
import { powerOfDeclared } from './powerOfDeclared.ts'
import { powerOfEnergy } from './powerOfEnergy.ts'
import { powerOfPower } from './powerOfPower.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import type { Reading } from './reading.ts'

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
