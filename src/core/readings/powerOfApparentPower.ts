import type { Term } from '../quantity/term.ts'
import { meteredValue } from './meteredValue.ts'
import { powerFactorOf } from './powerFactor.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import type { ApparentPowerReading } from './reading.ts'

/**
 * Real power of a load whose apparent power was read.
 *
 *   P = S PF          S in VA, PF in 0..1, P in W
 *
 * Source: IEEE Std 1459-2010, 3.1 (active and apparent power), from memory.
 */
export function powerOfApparentPower(reading: ApparentPowerReading, context: ReadingContext): PowerOfReading {
  const { metered, warnings } = meteredValue(reading.voltAmperes, reading, context)
  const factor = powerFactorOf(reading.powerFactor, context.powerFactor)
  const apparentPower: Term = { coefficient: 1, factors: [], metered }
  return {
    power: { ...apparentPower, factors: [factor.distribution] },
    apparentPower,
    flag: factor.flag,
    explanation: `P = S PF = ${reading.voltAmperes} VA x PF, with ${factor.words}.`,
    warnings: [...warnings, ...factor.warnings],
  }
}
