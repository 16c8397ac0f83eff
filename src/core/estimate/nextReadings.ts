import { significant } from '../quantity/significant.ts'
import { multiplyTerm, readingDistribution, type Term, termMean, termVariance } from '../quantity/term.ts'
import { varianceOfSum } from '../quantity/varianceOfSum.ts'
import type { MeterAccuracy } from '../readings/reading.ts'
import type { NextReading } from './estimate.ts'
import type { ModeTerms } from './estimateMode.ts'

export interface ModeOfDevice {
  readonly deviceId: string
  readonly terms: ModeTerms
}

/** As many as a visit can use; the rest of a long list is noise. */
const MOST = 10
/** A reading that would remove less than a thousandth of the variance is not worth naming. */
const LEAST_SHARE = 0.001

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
    const varianceShare = (removedBy[index]! - varianceOnceRead(terms, weeksPerYear, wattmeter)) / total
    if (varianceShare >= LEAST_SHARE) worthNaming.push({ deviceId, mode: terms.mode, varianceShare })
  })
  return worthNaming
    .sort((a, b) => b.varianceShare - a.varianceShare)
    .slice(0, MOST)
    .map((reading) => ({ ...reading, varianceShare: significant(reading.varianceShare) }))
}

/** What a wattmeter reading of the same power would leave of the mode's own variance. */
function varianceOnceRead(
  { power, hoursPerWeek }: ModeTerms,
  weeksPerYear: number,
  { percentOfReading, counts, resolution }: MeterAccuracy,
): number {
  const reading = {
    value: termMean(power),
    gain: percentOfReading / 100,
    counts: counts * resolution,
    meter: null,
  }
  const read: Term = { coefficient: weeksPerYear / 1000, factors: [readingDistribution(reading)] }
  return termVariance(multiplyTerm(read, hoursPerWeek))
}
