import type { Interval } from '../quantity/intervalOfSum.ts'
import { significant } from '../quantity/significant.ts'
import type { Limit } from './limit.ts'
import type { ComparedLimit, LimitReason, LimitVerdict } from './limitCheck.ts'

/** The limit and the larger of its tolerances in W and in percent, W. */
function allowedW({ limitW, toleranceW, tolerancePercent }: Limit): number {
  return limitW + Math.max(toleranceW ?? 0, (limitW * (tolerancePercent ?? 0)) / 100)
}

/**
 * A power with its interval against one limit.
 *
 *   below            high <= limit: wholly below, with nothing to spare needed
 *   above            low > limit + verification tolerance: an authority's test would not let it pass either
 *   cannot-be-told   in between: the interval crosses the limit, or what is above it is within the tolerance
 */
export function compareLimit(limit: Limit, power: Interval): ComparedLimit {
  const allowed = significant(allowedW(limit))
  const { verdict, code } = judged(limit.limitW, allowed, power)
  return {
    limit,
    aboveFromW: allowed,
    verdict,
    reason: { code, message: MESSAGES[code](limit, allowed, power) },
  }
}

type Code = Exclude<LimitReason['code'], 'limits-disagree' | 'no-limit-applies'>

function judged(
  limit: number,
  allowed: number,
  { low, high }: Interval,
): { verdict: LimitVerdict; code: Code } {
  if (high <= limit) return { verdict: 'below', code: 'wholly-below' }
  if (low > allowed) return { verdict: 'above', code: 'wholly-above' }
  return {
    verdict: 'cannot-be-told',
    code: low > limit ? 'within-verification-tolerance' : 'interval-crosses-limit',
  }
}

const shown = (watts: number) => Number(watts.toPrecision(3))
const name = ({ regulation, limitW }: Limit) => `the limit of ${limitW} W in ${regulation}`
const between = ({ low, high }: Interval) => `between ${shown(low)} W and ${shown(high)} W`

const MESSAGES: Readonly<Record<Code, (limit: Limit, allowed: number, power: Interval) => string>> = {
  'wholly-below': (limit, _allowed, power) => `The power, ${between(power)}, is below ${name(limit)}.`,
  'wholly-above': (limit, allowed, power) =>
    allowed > limit.limitW
      ? `The power, ${between(power)}, is above ${name(limit)} by more than the verification tolerance, which ends at ${shown(allowed)} W.`
      : `The power, ${between(power)}, is above ${name(limit)}; no verification tolerance is known for it.`,
  'interval-crosses-limit': (limit, _allowed, power) =>
    `The power, ${between(power)}, may be below or above ${name(limit)}. A reading with a finer meter, or the energy over some hours, may tell.`,
  'within-verification-tolerance': (limit, allowed, power) =>
    `The power, ${between(power)}, is above ${name(limit)}, but an authority’s test of one device may come out as high as ${shown(allowed)} W, and the reading does not lie wholly above that.`,
}
