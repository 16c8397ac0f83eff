import type { Range } from '../../catalogue/category.ts'
import { type KnownPowerFactor, powerFactorOf } from '../powerFactor.ts'
import { shown } from '../shown.ts'
import { type Evaluated, span, step, type Step } from './step.ts'

/** From VA to W: what the power factor is, and why the two are not the same. */
export function apparentToReal(given: number | Range | undefined, evaluated: Evaluated): Step[] {
  const { powerW, apparentPowerVa, reactivePowerVar, context } = evaluated
  const factor = powerFactorOf(given, context.powerFactor)
  return [
    step(WHY[factor.from](context.usual?.name), 'PF = P / S, between 0 and 1', range(factor)),
    step(
      `Only the power factor’s share of the VA are watts: that is what the device uses up, what becomes heat, and what the energy meter counts.`,
      'P = S PF',
      `${span(powerW, 'W')} of ${shown(apparentPowerVa!.expected)} VA`,
    ),
    step(
      'The rest loads the wires without being used up: it swings to and fro between device and supply, or comes from the distorted shape of the current. It is called non-active (for sine waves: reactive) power.',
      'Q = sqrt(S^2 - P^2) = S sqrt(1 - PF^2)',
      span(reactivePowerVar!, 'var'),
    ),
  ]
}

const WHY: Readonly<Record<KnownPowerFactor['from'], (category?: string) => string>> = {
  reading: () => 'The power factor says which share of the VA are watts. It was read, so one figure follows.',
  'stated-range': () =>
    'The power factor says which share of the VA are watts. It is known as a range only, so a range of watts follows.',
  'usual-range': (category) =>
    `The power factor says which share of the VA are watts. Small supplies draw their current in short bursts, and filter capacitors draw current that does no work at all, so it is far below 1 in standby. It was not read, so ${category === undefined ? 'a wide range that fits nearly any device' : `the range that is usual for ${category}`} counts, and a range of watts follows, never one figure.`,
}

const range = ({ range: { low, typical, high } }: KnownPowerFactor) =>
  low === high ? `PF = ${low}` : `PF = ${low} to ${high}, most likely ${typical}`
