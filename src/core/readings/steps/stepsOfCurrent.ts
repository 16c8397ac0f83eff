import type { CurrentReading } from '../reading.ts'
import { shown } from '../shown.ts'
import { apparentToReal } from './apparentToReal.ts'
import { meterStep } from './meterStep.ts'
import { type Evaluated, span, step, type Step } from './step.ts'

/** Why volts times amperes are not watts, and what a splitter's window does. */
export function stepsOfCurrent(reading: CurrentReading, evaluated: Evaluated): Step[] {
  const { context, apparentPowerVa } = evaluated
  const loops = reading.loops ?? 1
  const volts = reading.volts ?? context.supply.volts
  const amperes = reading.amperes / loops
  return [
    meterStep(reading.amperes, reading, context),
    turns(reading.amperes, loops),
    voltage(reading, context.supply),
    step(
      'Volts times amperes is apparent power, in volt-amperes (VA): what the wires have to carry. It is not yet watts.',
      `S = V I = ${volts} V x ${shown(amperes)} A`,
      span(apparentPowerVa!, 'VA'),
    ),
    ...apparentToReal(reading.powerFactor, evaluated),
    step(
      `So ${volts} V x ${shown(amperes)} A is not ${shown(volts * amperes)} W: that would take a power factor of 1, as a heater has.`,
      `P = V I PF = ${shown(volts * amperes)} VA x PF`,
      span(evaluated.powerW, 'W'),
    ),
  ]
}

function turns(amperes: number, loops: number): Step {
  if (loops === 1)
    return step(
      'The conductor passes the clamp’s jaw once, so the meter shows the current itself.',
      'I = reading',
      `${shown(amperes)} A`,
    )
  return step(
    `In this window of the line splitter the conductor passes the jaw ${loops} times. The fields of all turns add up, so the meter shows ${loops} times the current, and its last digits weigh ${loops} times less.`,
    `I = reading / turns = ${shown(amperes)} A / ${loops}`,
    `${shown(amperes / loops)} A`,
  )
}

function voltage(
  reading: CurrentReading,
  supply: { readonly volts: number; readonly tolerancePercent: number },
): Step {
  if (reading.volts !== undefined)
    return step('The voltage was read together with the current.', 'V = reading', `${reading.volts} V`)
  const slack = (supply.volts * supply.tolerancePercent) / 100
  return step(
    'The voltage was not read, so the supply’s nominal voltage counts, anywhere within its tolerance.',
    `V = ${supply.volts} V +-${supply.tolerancePercent} %`,
    `${shown(supply.volts - slack)} to ${shown(supply.volts + slack)} V`,
  )
}
