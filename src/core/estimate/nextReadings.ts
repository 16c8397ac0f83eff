import { ASSUMED_WATTMETER } from '../readings/assumedWattmeter.ts'
import { significant } from '../quantity/significant.ts'
import {
  multiplyTerm,
  readingDistribution,
  type Term,
  termMean,
  termVariance,
  varianceOfSum,
} from '../quantity/term.ts'
import { exact } from '../quantity/exact.ts'
import type { NextReading } from './estimate.ts'
import type { ModeTerms } from './estimateMode.ts'

export interface ModeOfDevice {
  readonly deviceId: string
  readonly terms: ModeTerms
}

/** As many as a visit can use; the rest of a long list is noise. */
const MOST = 10

/**
 * For each device and mode, the share of the total energy's variance that a plug-in wattmeter reading there would
 * remove, largest first:
 *
 *   share = (Var(T) - Var(T with this mode's power read)) / Var(T)
 *
 * The reading keeps the mean and has the accuracy of ASSUMED_WATTMETER; the hours stay as uncertain as they are.
 * Modes where a reading would remove less than a thousandth are left out. At most ten.
 */
export function nextReadings(modes: readonly ModeOfDevice[], weeksPerYear: number): NextReading[] {
  const terms = modes.map(({ terms: { energy } }) => energy)
  const total = varianceOfSum(terms)
  if (total === 0) return []
  return modes
    .map(({ deviceId, terms: mode }, index) => ({
      deviceId,
      mode: mode.mode,
      varianceShare: significant(removedBy(mode, index, terms, weeksPerYear) / total),
    }))
    .filter(({ varianceShare }) => varianceShare >= 0.001)
    .sort((a, b) => b.varianceShare - a.varianceShare)
    .slice(0, MOST)
}

function removedBy(mode: ModeTerms, index: number, terms: readonly Term[], weeksPerYear: number): number {
  const watts = termMean(mode.power)
  const { percentOfReading, counts, resolution } = ASSUMED_WATTMETER
  const reading = { value: watts, gain: percentOfReading / 100, counts: counts * resolution, meter: null }
  const read = multiplyTerm(
    { coefficient: weeksPerYear / 1000, factors: [readingDistribution(reading)] },
    mode.hoursPerWeek,
  )
  return termVariance(terms[index]!) + covarianceWithOthers(terms, index) - termVariance(read)
}

/** What is left of the total's variance beside the term's own when the term becomes a constant: twice its covariances. */
function covarianceWithOthers(terms: readonly Term[], index: number): number {
  const { metered, shared } = terms[index]!
  if (!metered?.meter && !shared) return 0
  const constant: Term = { coefficient: 1, factors: [exact(0)] }
  const without = terms.map((term, i) => (i === index ? constant : term))
  return varianceOfSum(terms) - varianceOfSum(without) - termVariance(terms[index]!)
}
