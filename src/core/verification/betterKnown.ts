import { intervalOfDifference } from '../quantity/intervalOfDifference.ts'
import type { Contrast } from '../quantity/contrast.ts'
import { intervalOfSum } from '../quantity/intervalOfSum.ts'
import { significantInterval } from '../quantity/significant.ts'
import { multiplyTerm, scaleTerm, type Term } from '../quantity/term.ts'
import type { DevicePair } from './matchDevices.ts'
import { betterFigure } from './pairPowers.ts'
import type { BetterKnown } from './verification.ts'

export interface Rebased {
  readonly item: BetterKnown
  /** What it takes out of the difference of the two estimates, kWh/yr. */
  readonly contrast: Contrast
}

/**
 * The modes of an unchanged device whose power one visit knew better. The other visit's energy counts with that power at
 * its own hours; what that moves is better knowledge and no saving.
 */
export function betterKnown(
  { id, isSame, modes }: DevicePair,
  weeksPerYear: number,
  coverage: number,
): Rebased[] {
  if (!isSame) return []
  return modes.flatMap(({ mode, before, after }) => {
    const better = before && after && betterFigure(before, after)
    if (!better) return []
    const worse = better === before ? after : before
    const estimated = worse.terms.energy
    const perWatt = (weeksPerYear / 1000) * (worse.resolved.quantity / better.resolved.quantity)
    const rebased = multiplyTerm(scaleTerm(better.terms.power, perWatt), worse.terms.hoursPerWeek)
    const sign = worse === before ? 1 : -1
    const contrast: Contrast = {
      common: { coefficient: sign, factors: [worse.terms.hoursPerWeek] },
      terms: [
        scaleTerm(worse.terms.power, weeksPerYear / 1000),
        negated(scaleTerm(better.terms.power, perWatt)),
      ],
    }
    const item: BetterKnown = {
      deviceId: id,
      mode,
      from: worse.terms.confidence,
      to: better.terms.confidence,
      rebasedVisit: worse === before ? 'before' : 'after',
      estimatedKwhPerYear: significantInterval(intervalOfSum([estimated], coverage)),
      rebasedKwhPerYear: significantInterval(intervalOfSum([rebased], coverage)),
      differenceKwhPerYear: significantInterval(intervalOfDifference([contrast], coverage)),
    }
    return [{ item, contrast }]
  })
}

const negated = (term: Term): Term => scaleTerm(term, -1)
