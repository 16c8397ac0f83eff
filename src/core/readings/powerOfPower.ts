import { meteredValue } from './meteredValue.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import type { PowerReading } from './reading.ts'

/** Real power that a wattmeter showed, W. */
export function powerOfPower(reading: PowerReading, context: ReadingContext): PowerOfReading {
  const { metered, warnings } = meteredValue(reading.watts, reading, context)
  const explanation = `P = ${reading.watts} W, read as real power.`
  return { power: { coefficient: 1, factors: [], metered }, flag: 'measured', explanation, warnings }
}
