import { significant } from '../quantity/significant.ts'
import { termVariance } from '../quantity/term.ts'
import { varianceOfSum } from '../quantity/varianceOfSum.ts'
import type { MeterAccuracy } from '../readings/reading.ts'
import type { NextReading } from './estimate.ts'
import type { ModeTerms } from './estimateMode.ts'
import { onceRead } from './onceRead.ts'

export interface ModeOfDevice {
  readonly deviceId: string
  readonly terms: ModeTerms
}

/** As many as a visit can use; the rest of a long list is noise. */
const MOST = 10
/** A reading that would remove less than a thousandth of the variance is not worth naming. */
export const LEAST_SHARE = 0.001

/**
 * For each device and mode, the share of the total energy's variance that a plug-in wattmeter reading there would
 * remove, largest first, at most ten:
 *
 *   share = (Var(T) - Var(T with this mode's power read)) / Var(T)
 *
 * The reading keeps the mean and has the accuracy of `wattmeter`; the hours stay as uncertain as they are.
 */
export function nextReadings(
  modes: readonly ModeOfDevice[],
  weeksPerYear: number,
  wattmeter: MeterAccuracy,
): NextReading[] {
  const { total, removedBy } = varianceOfSum(modes.map(({ terms }) => terms.energy))
  if (total === 0) return []
  const worthNaming: NextReading[] = []
  modes.forEach(({ deviceId, terms }, index) => {
    // Most modes could not be worth a reading even by a perfect meter.
    if (removedBy[index]! < LEAST_SHARE * total) return
    const varianceShare =
      (removedBy[index]! - termVariance(onceRead(terms, weeksPerYear, wattmeter, null))) / total
    if (varianceShare >= LEAST_SHARE) worthNaming.push({ deviceId, mode: terms.mode, varianceShare })
  })
  return worthNaming
    .sort((a, b) => b.varianceShare - a.varianceShare)
    .slice(0, MOST)
    .map((reading) => ({ ...reading, varianceShare: significant(reading.varianceShare) }))
}
