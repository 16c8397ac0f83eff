import type { Reading } from '../reading.ts'
import { shown } from '../shown.ts'
import { apparentToReal } from './apparentToReal.ts'
import { meterStep } from './meterStep.ts'
import { type Evaluated, step, type Step } from './step.ts'
import { stepsOfCurrent } from './stepsOfCurrent.ts'
import { stepsOfSamples } from './stepsOfSamples.ts'
import { stepsOfThermal } from './stepsOfThermal.ts'

/** The way from what was read to real power, step by step, in words that a layman learns from. */
export function stepsOf(reading: Reading, evaluated: Evaluated): Step[] {
  const { context } = evaluated
  switch (reading.kind) {
    case 'power':
      return [
        step(
          'A wattmeter multiplies voltage and current at every instant and takes the mean, so it shows real power, whatever the shape of the current.',
          'P = mean of v i',
          `${shown(reading.watts)} W`,
        ),
        meterStep(reading.watts, reading, context),
      ]
    case 'energy':
      return [
        meterStep(reading.wattHours, reading, context),
        step(
          'Energy over time is the mean power; no peak and no pause is missed.',
          `P = E / t = ${shown(reading.wattHours)} Wh / ${shown(reading.durationHours)} h`,
          `${shown(reading.wattHours / reading.durationHours)} W`,
        ),
      ]
    case 'samples':
      return stepsOfSamples(reading, evaluated)
    case 'current':
      return stepsOfCurrent(reading, evaluated)
    case 'apparent-power':
      return [
        meterStep(reading.voltAmperes, reading, context),
        ...apparentToReal(reading.powerFactor, evaluated),
      ]
    case 'declared':
      return [
        step(
          'A declared figure is a ceiling, not a measurement: makers stay below it. The service counts anything between half of it and all of it as equally likely (its own assumption).',
          `${shown(reading.watts / 2)} W <= P <= ${shown(reading.watts)} W`,
          `${shown(0.75 * reading.watts)} W on average`,
        ),
      ]
    case 'thermal':
      return stepsOfThermal(reading, evaluated)
  }
}
