import type { Contrast } from '../quantity/contrast.ts'
import { type Distribution, isExact } from '../quantity/distribution.ts'
import { multiplyTerm, scaleTerm, type Term } from '../quantity/term.ts'
import type { PowerPart } from './pairPowers.ts'

/** What a power counts for at one visit: scale x hours. */
export interface Weight {
  readonly hours: Distribution
  readonly scale: number
}

export interface Weights {
  readonly before: Weight
  readonly after: Weight
}

const UNIT: Term = { coefficient: 1, factors: [] }

/**
 * Power before x weight before - power after x weight after, as parts of a difference; none where both are the same.
 * Hours that are stated alike at both visits are one quantity: they are what the household says of one habit.
 */
export function contrastsOf(part: PowerPart, { before, after }: Weights): Contrast[] {
  switch (part.kind) {
    case 'one': {
      const [weight, sign] = part.visit === 'before' ? [before, 1] : [after, -1]
      return [{ common: UNIT, terms: [weighed(part.power, weight, sign)] }]
    }
    case 'both':
      return [ofBoth(part, before, after)]
    case 'shared':
      return ofShared(part.power, scaled(before, part.before), scaled(after, part.after))
  }
}

function ofBoth(part: Extract<PowerPart, { kind: 'both' }>, before: Weight, after: Weight): Contrast {
  const [one, other] = [part.before, part.after]
  if (!sameHours(before.hours, after.hours))
    return {
      common: { coefficient: 1, factors: part.common },
      terms: [weighed(one, before, 1), weighed(other, after, -1)],
    }
  return {
    common: { coefficient: 1, factors: [...part.common, before.hours] },
    terms: [scaleTerm(one, before.scale), scaleTerm(other, -after.scale)],
  }
}

function ofShared(power: Term, before: Weight, after: Weight): Contrast[] {
  if (sameHours(before.hours, after.hours))
    return constantTimes(multiplyTerm(power, before.hours), before.scale - after.scale)
  if (isExact(before.hours) && isExact(after.hours))
    return constantTimes(power, before.scale * before.hours.mean - after.scale * after.hours.mean)
  return [{ common: power, terms: [weighed(UNIT, before, 1), weighed(UNIT, after, -1)] }]
}

const constantTimes = (power: Term, by: number): Contrast[] =>
  by === 0 ? [] : [{ common: power, terms: [{ coefficient: by, factors: [] }] }]

const scaled = ({ hours, scale }: Weight, by: number): Weight => ({ hours, scale: scale * by })
const weighed = (power: Term, { hours, scale }: Weight, sign: number): Term =>
  multiplyTerm(scaleTerm(power, sign * scale), hours)

/** Hours are exact or triangular, so that ends and mean say all. */
export const sameHours = (one: Distribution, other: Distribution): boolean =>
  one.min === other.min && one.max === other.max && one.mean === other.mean
