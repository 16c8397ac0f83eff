import type { Distribution } from '../quantity/distribution.ts'
import { independentCopies } from '../quantity/independentCopies.ts'
import { twoPieceLognormal } from '../quantity/twoPieceLognormal.ts'
import type { ChosenDraw } from './drawFor.ts'

const known = new WeakMap<ChosenDraw, Map<number, Distribution>>()
/** Enough for what households own; a caller who tries every quantity fills no memory. */
const MOST_QUANTITIES = 16

/**
 * The power of `quantity` devices of a typical draw, W: the sum of as many independent draws. Kept with the draw, so
 * that a household with eight lamps costs no more than one with one.
 */
export function drawDistribution(draw: ChosenDraw, quantity: number): Distribution {
  const byQuantity = known.get(draw) ?? new Map<number, Distribution>()
  known.set(draw, byQuantity)
  const distribution = byQuantity.get(quantity) ?? independentCopies(twoPieceLognormal(draw.range), quantity)
  if (byQuantity.size < MOST_QUANTITIES) byQuantity.set(quantity, distribution)
  return distribution
}
