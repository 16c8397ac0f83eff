import type { Range } from '../catalogue/category.ts'
import { drawDistribution } from '../catalogue/drawDistribution.ts'
import { DEVICE_FLAGS } from '../estimate/estimate.ts'
import type { Distribution } from '../quantity/distribution.ts'
import { scaleTerm, type Term } from '../quantity/term.ts'
import type { ModeAtVisit, ModePair } from './matchDevices.ts'

/** The power of one mode at two visits, W, with what both have in common. */
export type PowerPart =
  /** One uncertain quantity, so many times before and so many times after. */
  | { readonly kind: 'shared'; readonly power: Term; readonly before: number; readonly after: number }
  /** Factors that are the same, times two powers. */
  | {
      readonly kind: 'both'
      readonly common: readonly Distribution[]
      readonly before: Term
      readonly after: Term
    }
  /** A power that one visit alone has, and whether that changed the power or only the hours. */
  | {
      readonly kind: 'one'
      readonly visit: 'before' | 'after'
      readonly effect: 'power' | 'hours'
      readonly power: Term
    }

/** Whether somebody read the power; a typical draw or a label is no reading. */
export const isRead = ({ terms: { confidence } }: ModeAtVisit): boolean =>
  confidence === 'measured' || confidence === 'partly-measured'

/**
 * What is one and the same quantity at both visits:
 *
 * - the typical draw of an unchanged device; of n devices and m devices, the smaller number of draws
 * - what a label that says the same leaves open
 * - the power itself, where it was read at one visit and not at the other, declared and not assumed, or assumed with the
 *   year of manufacture and not without: the better figure stands for both, since a device that nobody changed did not
 *   change by being known better
 * - an assumed power factor of the same range, of readings of current or apparent power
 *
 * Two readings are two readings: they share their meter's gain and the supply's voltage, which their terms name.
 */
export function pairPowers({ before, after }: ModePair, isSame: boolean, isReplaced: boolean): PowerPart[] {
  if (!before || !after) {
    const only = before ?? after!
    const effect = isReplaced ? 'power' : 'hours'
    return [{ kind: 'one', visit: before ? 'before' : 'after', effect, power: only.terms.power }]
  }
  const better = isSame ? betterFigure(before, after) : null
  if (better) return [shared(before, after, better)]
  if (isSame && before.terms.draw && after.terms.draw) return sharedDraws(before, after)
  if (isSame && sameLabel(before, after)) return [shared(before, after, after)]
  const common = isSame ? sameFactor(before, after) : null
  const bare = ({ terms }: ModeAtVisit): Term => (common ? { ...terms.power, factors: [] } : terms.power)
  return [{ kind: 'both', common: common ?? [], before: bare(before), after: bare(after) }]
}

/** The visit that knows the power better by its kind; null where both know it alike, or both read it. */
export function betterFigure(before: ModeAtVisit, after: ModeAtVisit): ModeAtVisit | null {
  if (isRead(before) && isRead(after)) return null
  const [first, second] = [before, after].map(({ terms }) => DEVICE_FLAGS.indexOf(terms.confidence))
  if (first !== second) return first! < second! ? before : after
  if (before.terms.draw === after.terms.draw) return null
  return before.resolved.device.year === undefined ? after : before
}

function shared(before: ModeAtVisit, after: ModeAtVisit, figure: ModeAtVisit): PowerPart {
  return {
    kind: 'shared',
    power: scaleTerm(figure.terms.power, 1 / figure.resolved.quantity),
    before: before.resolved.quantity,
    after: after.resolved.quantity,
  }
}

function sharedDraws(before: ModeAtVisit, after: ModeAtVisit): PowerPart[] {
  const [n, m] = [before.resolved.quantity, after.resolved.quantity]
  const draws = (count: number): Term => ({
    coefficient: 1,
    factors: [drawDistribution(before.terms.draw!, count)],
  })
  const parts: PowerPart[] = [{ kind: 'shared', power: draws(Math.min(n, m)), before: 1, after: 1 }]
  if (n !== m)
    parts.push({
      kind: 'one',
      visit: n > m ? 'before' : 'after',
      effect: 'power',
      power: draws(Math.abs(n - m)),
    })
  return parts
}

function sameLabel({ given: before }: ModeAtVisit, { given: after }: ModeAtVisit): boolean {
  const [one, other] = [before.reading, after.reading]
  return one?.kind === 'declared' && other?.kind === 'declared' && one.watts === other.watts
}

function sameFactor(before: ModeAtVisit, after: ModeAtVisit): readonly Distribution[] | null {
  const [one, other] = [assumedFactor(before), assumedFactor(after)]
  if (!one || !other) return null
  const isOne = one.low === other.low && one.typical === other.typical && one.high === other.high
  return isOne ? before.terms.power.factors : null
}

function assumedFactor({ given: { reading }, resolved }: ModeAtVisit): Range | null {
  if (reading?.kind !== 'current' && reading?.kind !== 'apparent-power') return null
  if (typeof reading.powerFactor === 'number') return null
  return reading.powerFactor ?? resolved.category.powerFactor
}
