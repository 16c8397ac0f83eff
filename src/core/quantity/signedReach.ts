import type { Distribution } from './distribution.ts'
import { type Reach, reachOf } from './reach.ts'
import type { Block, SignedSum } from './signedSum.ts'

/** As reachOf, for a sum with both signs. */
export function signedReachOf(sum: SignedSum, pLow: number, pHigh: number): Reach {
  const up = reachOf(sum.up, pLow, pHigh)
  const down = reachOf(sum.down, pLow, pHigh)
  let middle = up.middle - down.middle
  let [below, above] = [up.below ** 2 + down.above ** 2, up.above ** 2 + down.below ** 2]
  for (const block of sum.blocks) {
    const one = reachOfBlock(block, pLow, pHigh)
    middle += one.middle
    below += one.below ** 2
    above += one.above ** 2
  }
  return { middle, below: Math.sqrt(below), above: Math.sqrt(above) }
}

function reachOfBlock({ by, of }: Block, pLow: number, pHigh: number): Reach {
  const inner = signedReachOf(of, pLow, pHigh)
  const mean = meanOf(by)
  const size = Math.abs(mean * inner.middle)
  const less = size * relative(by, (x) => x.mean - x.quantile(pLow))
  const more = size * relative(by, (x) => x.quantile(pHigh) - x.mean)
  const [below, above] = inner.middle >= 0 ? [less, more] : [more, less]
  return {
    middle: mean * inner.middle,
    below: Math.hypot(mean * inner.below, below),
    above: Math.hypot(mean * inner.above, above),
  }
}

export const meanOf = (factors: readonly Distribution[]): number =>
  factors.reduce((product, { mean }) => product * mean, 1)

const relative = (factors: readonly Distribution[], distance: (x: Distribution) => number) =>
  Math.hypot(...factors.map((x) => distance(x) / x.mean))
