import { absorbSmall } from './absorbSmall.ts'
import { NEGLIGIBLE_SPREAD } from './distribution.ts'
import { latticeQuantile } from './latticeQuantile.ts'
import { mixture } from './mixture.ts'
import { normalQuantile } from './normal.ts'
import { type Reach, reachOf } from './reach.ts'
import { spreadOfSum } from './spreadOfSum.ts'
import type { Sum } from './sumNode.ts'

/** Ends of an interval. */
export interface Ends {
  readonly low: number
  readonly high: number
}

/**
 * Quantiles of equal parts of sums, on a lattice whose step suits them.
 * @param expected mean of the whole
 * @param pHigh at least 1/2
 * @throws Error where a part is not a number
 */
export function latticeEnds(sums: readonly Sum[], expected: number, pLow: number, pHigh: number): Ends {
  // The last stratum is that of the factor's largest values, and so the widest.
  const reach = reachOf(sums.at(-1)!, pLow, pHigh)
  // What would show in no digit would be lost beside the rest.
  if (reach.below + reach.above < NEGLIGIBLE_SPREAD * expected) return { low: expected, high: expected }
  const score = normalQuantile(pHigh)
  const parts = sums.map((sum) => absorbSmall(sum, ((reach.below + reach.above) / 2 / score) ** 2))
  const step = stepFor(reach, score) / Math.sqrt(Math.max(1, countParts(parts[0]!) / PARTS))
  const middle = Math.max(expected, reach.middle)
  for (let beyond = 1.5; beyond < FARTHEST; beyond *= 2) {
    const ends = quantiles(parts, step, middle + beyond * reach.above, pLow, pHigh)
    if (ends) return ends
  }
  throw new Error(
    `The upper end of an interval about ${expected} lies beyond all reach: a part is not a number.`,
  )
}

/** No finite sum needs a twentieth of it; a figure that is none would search for ever. */
const FARTHEST = 200

/**
 * Lattice steps over an interval's width and over its lower side, for each unit of the normal score that belongs to its
 * coverage; see the table in README.md.
 */
const STEPS_ACROSS = 12
const STEPS_BELOW = 4.7
const MOST_STEPS = 400
/** Above this many parts the step shrinks, since each adds its smear. */
const PARTS = 16

export function stepFor({ below, above }: Reach, score: number): number {
  const width = below + above
  // However narrow the interval, it needs a few steps.
  const scores = Math.max(1, score)
  return Math.min(
    width / (STEPS_ACROSS * scores),
    Math.max(below / (STEPS_BELOW * scores), width / MOST_STEPS),
  )
}

/** What is scaled counts twice: it is narrower than the whole, and needs finer steps to be as exact. */
function countParts(sum: Sum): number {
  let count = 0
  for (const node of sum.nodes) count += node.kind === 'product' ? 1 : 1 + 2 * countParts(node.of)
  return count
}

/** Both quantiles, or null where `highest` is below the upper one. */
function quantiles(
  sums: readonly Sum[],
  step: number,
  highest: number,
  pLow: number,
  pHigh: number,
): Ends | null {
  const single = sums.length === 1 ? sums[0] : undefined
  const constant = single?.constant ?? 0
  const lattice = single
    ? spreadOfSum(single, step, Math.ceil((highest - constant) / step))
    : mixture(sums, step, highest)
  const high = latticeQuantile(lattice, pHigh)
  if (high === null) return null
  return { low: Math.max(0, constant + latticeQuantile(lattice, pLow)! * step), high: constant + high * step }
}
