import { meteredValue } from './meteredValue.ts'
import type { PowerOfReading, ReadingContext } from './powerModel.ts'
import type { EnergyReading } from './reading.ts'

/**
 * Mean real power from energy metered over a time.
 *
 *   P = E / t          E in Wh, t in h, P in W
 *
 * The meter's accuracy is that of its energy register, counts in Wh.
 * Source: IEC 62301 (averages are energy over time, never a mean of figures read by eye).
 */
export function powerOfEnergy(reading: EnergyReading, context: ReadingContext): PowerOfReading {
  const { metered, warnings } = meteredValue(reading.wattHours, reading, context)
  const explanation = `P = E / t = ${reading.wattHours} Wh / ${reading.durationHours} h.`
  return {
    power: { coefficient: 1 / reading.durationHours, factors: [], metered },
    flag: 'measured',
    explanation,
    warnings,
  }
}
