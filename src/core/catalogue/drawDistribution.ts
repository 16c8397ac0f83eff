import type { Distribution } from '../quantity/distribution.ts'
import { independentCopies } from '../quantity/independentCopies.ts'
import { twoPieceLognormal } from '../quantity/twoPieceLognormal.ts'
import type { ChosenDraw } from './drawFor.ts'

const known = new WeakMap<ChosenDraw, Map<number, Distribution>>()
/** Enough for what households own; the oldest makes room, so that a caller who tries every quantity fills no memory. */
const MOST_QUANTITIES = 16

/**
 * The power of `quantity` devices of a typical draw, W: the sum of as many independent draws. Kept with the draw, so
 * that a household with eight lamps costs no more than one with one.
 */
export function drawDistribution(draw: ChosenDraw, quantity: number): Distribution {
  const byQuantity = known.get(draw) ?? keptFor(draw)
  const kept = byQuantity.get(quantity)
  if (kept) return kept
  const distribution = independentCopies(twoPieceLognormal(draw.range), quantity)
  if (byQuantity.size === MOST_QUANTITIES) byQuantity.delete(byQuantity.keys().next().value!)
  byQuantity.set(quantity, distribution)
  return distribution
}

function keptFor(draw: ChosenDraw): Map<number, Distribution> {
  const byQuantity = new Map<number, Distribution>()
  known.set(draw, byQuantity)
  return byQuantity
}
