import { absorbSmall } from './absorbSmall.ts'
import { closedForm } from './closedForm.ts'
import { type Contrast, contrastMean, contrastSize } from './contrast.ts'
import type { Distribution } from './distribution.ts'
import type { Interval } from './interval.ts'
import { stepFor } from './latticeEnds.ts'
import { latticeQuantile } from './latticeQuantile.ts'
import { mixed } from './mixture.ts'
import { normalQuantile } from './normal.ts'
import type { Reach } from './reach.ts'
import { signedLattice } from './signedLattice.ts'
import { signedReachOf } from './signedReach.ts'
import { SignedSum, timesOuter } from './signedSum.ts'
import { signedSums } from './signedSums.ts'

/**
 * Mean and coverage interval of outer x (sum of contrasts): a quantity that may be of either sign, such as what a
 * household saved between two visits.
 *
 * intervalOfSum is for sums of what is never below zero; here what is taken away stands on a mirrored lattice, and what
 * both states share is one quantity and not two. The mean is exact, the ends are within 1 % of the interval's width (a
 * test holds them against draws). All contrasts with the opposite sign give the interval mirrored.
 *
 * @param coverage probability of the interval, above 0 and below 1
 * @param outer a factor that multiplies the whole, such as an uncertain price; independent of everything else
 */
export const intervalOfDifference = (
  contrasts: readonly Contrast[],
  coverage: number,
  outer?: Distribution,
): Interval => intervalsOfDifference(contrasts, [coverage], outer)[0]!

/** The same for several coverages at hardly more than the work of one. */
export function intervalsOfDifference(
  contrasts: readonly Contrast[],
  coverages: readonly number[],
  outer?: Distribution,
): Interval[] {
  let [expected, size] = [0, 0]
  for (const contrast of contrasts) {
    expected += contrastMean(contrast)
    size += contrastSize(contrast)
  }
  const rounded = (value: number) => (Math.abs(value) <= ROUNDING * size ? 0 : value)
  // One side is worked out and the other mirrored, so that which state comes first changes nothing but the sign.
  const ends =
    expected < 0
      ? endsOf(contrasts.map(opposite), coverages, outer).map(mirrored)
      : endsOf(contrasts, coverages, outer)
  return ends.map(({ low, high }) => ({
    expected: rounded(expected * (outer?.mean ?? 1)),
    low: rounded(low),
    high: rounded(high),
  }))
}

/** Share of what is added and taken away that is no more than the last bits of the sum: it counts as zero. */
const ROUNDING = 1e-12

const mirrored = ({ low, high }: Ends): Ends => ({ low: -high, high: -low })

const opposite = ({ common, terms }: Contrast): Contrast => ({
  common,
  terms: terms.map((term) => ({ ...term, coefficient: -term.coefficient })),
})

type Ends = Omit<Interval, 'expected'>

function endsOf(
  contrasts: readonly Contrast[],
  coverages: readonly number[],
  outer: Distribution | undefined,
): Ends[] {
  const sums = signedSums(contrasts).map((sum) => timesOuter(sum, outer))
  const tails = coverages.map((coverage) => (1 - coverage) / 2)
  if (sums.length > 1) return onLattice(sums, tails)
  const closed = tails.map((tail) => inClosedForm(sums[0]!, tail, 1 - tail))
  return closed.every((ends) => ends !== null) ? closed : onLattice(sums, tails)
}

function inClosedForm({ up, down, blocks }: SignedSum, pLow: number, pHigh: number): Ends | null {
  if (blocks.length > 0) return null
  if (down.nodes.length === 0)
    return closedForm({ constant: up.constant - down.constant, nodes: up.nodes }, pLow, pHigh)
  if (up.nodes.length > 0) return null
  const ends = closedForm({ constant: down.constant - up.constant, nodes: down.nodes }, pLow, pHigh)
  return ends && { low: -ends.high, high: -ends.low }
}

function onLattice(sums: readonly SignedSum[], tails: readonly number[]): Ends[] {
  const pLow = Math.min(...tails)
  const reaches = sums.map((sum) => signedReachOf(sum, pLow, 1 - pLow))
  const { below, above } = reaches.reduce(wider)
  const score = normalQuantile(1 - pLow)
  const shorter = { middle: 0, below: Math.min(below, above), above: Math.max(below, above) }
  const thinned = sums.map((sum) => withoutSmall(sum, ((below + above) / 2 / score) ** 2))
  const step = stepFor(shorter, score) / Math.sqrt(Math.max(1, countParts(thinned[0]!) / PARTS))
  const lattices = thinned.map((sum) => ({
    offset: sum.constant / step,
    lattice: signedLattice(sum, step, pLow),
  }))
  const [first] = lattices
  const { offset, lattice } = lattices.length === 1 ? first! : { offset: 0, lattice: mixed(lattices) }
  // Never beyond the lattice's end: what it cuts off of the probability is put on its last point.
  const at = (p: number) => (offset + latticeQuantile(lattice, p)!) * step
  return tails.map((tail) => ({ low: at(tail), high: at(1 - tail) }))
}

const wider = (a: Reach, b: Reach): Reach => (b.below + b.above > a.below + a.above ? b : a)

/** As in latticeEnds.ts. */
const PARTS = 16
const countParts = ({ up, down, blocks }: SignedSum): number =>
  blocks.reduce((sum, { of }) => sum + 1 + 2 * countParts(of), up.nodes.length + down.nodes.length)

function withoutSmall(sum: SignedSum, total: number): SignedSum {
  const thinned = new SignedSum()
  for (const side of ['up', 'down'] as const) {
    const { constant, nodes } = absorbSmall(sum[side], total)
    thinned[side].constant = constant
    thinned[side].nodes.push(...nodes)
  }
  thinned.blocks.push(...sum.blocks)
  return thinned
}
