import { plausibility } from './plausibility/plausibility.ts'
import { powerOfApparentPower } from './powerOfApparentPower.ts'
import { powerOfCurrent } from './powerOfCurrent.ts'
import { powerOfDeclared } from './powerOfDeclared.ts'
import { powerOfEnergy } from './powerOfEnergy.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import { powerOfPower } from './powerOfPower.ts'
import { powerOfSamples } from './powerOfSamples.ts'
import { powerOfThermal } from './powerOfThermal.ts'
import type { Reading } from './reading.ts'

/** Real power of a reading of any kind, with what makes the reading hard to believe among the warnings. */
export function powerOfReading(reading: Reading, context: ReadingContext): PowerOfReading {
  const read = byKind(reading, context)
  const doubts = plausibility(reading, read.power, context)
  return doubts.length === 0 ? read : { ...read, warnings: [...read.warnings, ...doubts] }
}

/** A new kind gets a file of its own and a case here. */
function byKind(reading: Reading, context: ReadingContext): PowerOfReading {
  switch (reading.kind) {
    case 'power':
      return powerOfPower(reading, context)
    case 'energy':
      return powerOfEnergy(reading, context)
    case 'samples':
      return powerOfSamples(reading, context)
    case 'current':
      return powerOfCurrent(reading, context)
    case 'apparent-power':
      return powerOfApparentPower(reading, context)
    case 'declared':
      return powerOfDeclared(reading)
    case 'thermal':
      return powerOfThermal(reading)
  }
}
