import { analyseSeries } from '../readings/series/analyseSeries.ts'
import type { RealPowerReading } from './storedReading.ts'

/**
 * Real power that a reading shows, W: as it was read, energy over time, or the mean of the stable part of a series. The meter's
 * accuracy is left out: it is small beside what devices of one kind differ by.
 * @returns null where a series of samples is not stable, so that the reading would count as partly measured only
 */
export function realPower(reading: RealPowerReading): number | null {
  if (reading.kind === 'power') return reading.watts
  if (reading.kind === 'energy') return reading.wattHours / reading.durationHours
  const { verdict, meanW } = analyseSeries(reading.watts, reading.intervalSeconds)
  return verdict === 'stable' ? meanW : null
}
