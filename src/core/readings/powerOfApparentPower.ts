import { nonActiveFactor } from '../quantity/nonActiveFactor.ts'
import type { Term } from '../quantity/term.ts'
import { meteredValue } from './meteredValue.ts'
import { powerFactorOf } from './powerFactor.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import type { ApparentPowerReading } from './reading.ts'

/**
 * Real power of a load whose apparent power was read.
 *
 *   P = S PF,   Q = sqrt(S^2 - P^2) = S sqrt(1 - PF^2)          S in VA, PF in 0..1, P in W, Q in var
 *
 * Source: IEEE Std 1459-2010, 3.1 (active, apparent and non-active power), from memory.
 */
export function powerOfApparentPower(reading: ApparentPowerReading, context: ReadingContext): PowerOfReading {
  const { metered, warnings } = meteredValue(reading.voltAmperes, reading, context)
  const factor = powerFactorOf(reading.powerFactor, context.powerFactor)
  const apparentPower: Term = { coefficient: 1, factors: [], metered }
  return {
    power: { ...apparentPower, factors: [factor.distribution] },
    apparentPower,
    reactivePower: () => ({ ...apparentPower, factors: [nonActiveFactor(factor.range)] }),
    flag: factor.flag,
    explanation: `P = S PF = ${reading.voltAmperes} VA x PF, with ${factor.words}.`,
    warnings: [...warnings, ...factor.warnings],
  }
}
