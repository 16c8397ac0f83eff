import type { Interval } from '../estimate/estimate.ts'
import type { DayFigure } from './dayFigure.ts'
import type { InventoryPower } from './inventoryPower.ts'
import { percentile } from './percentile.ts'

/** Each of the two distributions is cut into this many parts of equal probability. */
const PARTS = 240

export interface Comparison {
  readonly explainedShare: Interval
  readonly restW: Interval
  /** Probability that the inventory draws more than the base load. */
  readonly inventoryIsMore: number
}

/**
 * How much of a base load B an inventory I explains, and what is left, with the uncertainty of both:
 *
 *   share = I / B,   rest = B - I
 *
 * Every pair of PARTS x PARTS parts of equal probability counts once, as if a full factorial of draws had been made; the
 * middle of each part stands for it. The same arguments give the same result.
 * Assumption: the two are independent, since one comes from the home's meter and the other from the devices.
 * Source: propagation of distributions, JCGM 101:2008, 5.2; the grid in place of random draws is the service's own.
 */
export function compareWithInventory(
  base: DayFigure,
  inventory: InventoryPower,
  coverage: number,
): Comparison {
  const middles = Array.from({ length: PARTS }, (_, i) => (i + 0.5) / PARTS)
  const baseW = middles.map((p) => base.quantile(p))
  const inventoryW = middles.map((p) => inventory.quantile(p))
  const rests = new Float64Array(PARTS * PARTS)
  const shares = new Float64Array(PARTS * PARTS)
  let more = 0
  baseW.forEach((b, i) =>
    inventoryW.forEach((own, j) => {
      rests[i * PARTS + j] = b - own
      shares[i * PARTS + j] = b > 0 ? own / b : MOST_SHARE
      if (own > b) more++
    }),
  )
  const tail = (1 - coverage) / 2
  const ends = (sorted: Float64Array) => ({
    low: percentile(sorted, tail),
    high: percentile(sorted, 1 - tail),
  })
  const expected = inventory.powerW.expected
  return {
    restW: { expected: base.watts - expected, ...ends(rests.sort()) },
    explainedShare: {
      expected: base.watts > 0 ? expected / base.watts : MOST_SHARE,
      ...ends(shares.sort()),
    },
    inventoryIsMore: more / rests.length,
  }
}

/** Shown in place of a division by a base load of zero. */
const MOST_SHARE = 1_000
