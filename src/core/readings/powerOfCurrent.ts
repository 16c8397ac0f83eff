import { nonActiveFactor } from '../quantity/nonActiveFactor.ts'
import { rectangularSum } from '../quantity/rectangularSum.ts'
import type { SharedFactor, Term } from '../quantity/term.ts'
import { meteredValue } from './meteredValue.ts'
import { powerFactorOf } from './powerFactor.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import type { CurrentReading } from './reading.ts'

/**
 * Real, apparent and non-active power of a load whose current was read with a clamp meter.
 *
 *   S = V (I / loops),   P = S PF,   Q = sqrt(S^2 - P^2) = S sqrt(1 - PF^2)
 *
 * V in V (rms), I in A (rms), PF in 0..1, S in VA, P in W, Q in var. A splitter's ten-turn window shows ten times the
 * current, so loops is 10 there. Where the voltage was not read, the supply's nominal voltage counts, rectangular on its
 * tolerance, the same for all such readings of the household.
 * Source: IEEE Std 1459-2010, 3.1 (active, apparent and non-active power), from memory.
 */
export function powerOfCurrent(reading: CurrentReading, context: ReadingContext): PowerOfReading {
  const { supply } = context
  const loops = reading.loops ?? 1
  const volts = reading.volts ?? supply.volts
  const { metered, warnings } = meteredValue(reading.amperes, reading, context)
  const factor = powerFactorOf(reading.powerFactor, context.powerFactor)
  const shared: SharedFactor | undefined =
    reading.volts === undefined ? supplyVoltage(supply.tolerancePercent) : undefined
  const apparentPower: Term = { coefficient: volts / loops, factors: [], metered, ...(shared && { shared }) }
  return {
    power: { ...apparentPower, factors: [factor.distribution] },
    apparentPower,
    reactivePower: () => ({ ...apparentPower, factors: [nonActiveFactor(factor.range)] }),
    flag: factor.flag,
    explanation: `P = V I PF = ${volts} V (${reading.volts === undefined ? `nominal, +-${supply.tolerancePercent} %` : 'read'}) x ${reading.amperes} A${loops > 1 ? ` / ${loops} turns` : ''} x PF, with ${factor.words}.`,
    warnings: [...warnings, ...factor.warnings],
  }
}

/** The supply's voltage over its nominal value; nothing to share where it has no tolerance. */
const supplyVoltage = (tolerancePercent: number): SharedFactor | undefined =>
  tolerancePercent === 0
    ? undefined
    : { key: 'supply-voltage', distribution: rectangularSum(1, tolerancePercent / 100) }
