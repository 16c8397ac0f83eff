import { type Term, termMean } from '../quantity/term.ts'
import type { MeterAccuracy } from '../readings/reading.ts'
import type { ModeTerms } from './estimateMode.ts'

/**
 * The energy of a mode, kWh/yr, once a wattmeter had read its power: the reading shows the present mean with the meter's
 * accuracy, and the hours stay as uncertain as they are.
 * @param meter whose gain the reading shares with the other readings of that meter; null where it shares it with none
 */
export function onceRead(
  { power, hoursPerWeek }: Pick<ModeTerms, 'power' | 'hoursPerWeek'>,
  weeksPerYear: number,
  { percentOfReading, counts, resolution }: MeterAccuracy,
  meter: string | null,
): Term {
  const value = termMean(power)
  return {
    coefficient: weeksPerYear / 1000,
    factors: [hoursPerWeek],
    metered: { value, gain: percentOfReading / 100, counts: counts * resolution, meter },
  }
}
