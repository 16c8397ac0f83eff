import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Range } from '../../../src/core/catalogue/category.ts'
import { exact } from '../../../src/core/quantity/exact.ts'
import { triangular } from '../../../src/core/quantity/triangular.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'

/** One kind of device with one mode. */
export interface SimulatedItem {
  readonly drawW: Range
  readonly ownership: Range
  readonly countPerOwner: number
  readonly meanDrawUncertainty: number
}

/** Interpolated quantiles: as good as the exact ones beside what drawing itself scatters, and quicker. */
function table(x: { quantile(p: number): number }): (p: number) => number {
  const cells = 4096
  const values = Array.from({ length: cells + 1 }, (_, i) =>
    x.quantile(Math.min(1 - 1e-5, Math.max(1e-5, i / cells))),
  )
  return (p) => {
    const place = p * cells
    const i = Math.min(cells - 1, Math.floor(place))
    return values[i]! + (place - i) * (values[i + 1]! - values[i]!)
  }
}

/**
 * The stock model to the letter, home by home: in each draw the ownership and the mean draw are drawn once for all homes,
 * and every home is drawn on its own. Sums of watts, sorted.
 */
export function simulateStock(
  items: readonly SimulatedItem[],
  homes: number,
  draws: number,
  seed: number,
): number[] {
  const generator = xoroshiro128plus(seed)
  const uniform = () => ((generator.next() >>> 0) + 0.5) / 0x1_0000_0000
  const kinds = items.map((item) => ({
    ...item,
    ownershipAt: table(
      item.ownership.low === item.ownership.high ? exact(item.ownership.low) : triangular(item.ownership),
    ),
    drawAt: table(twoPieceLognormal(item.drawW)),
  }))
  const totals = Array.from({ length: draws }, () => {
    let total = 0
    for (const { ownershipAt, drawAt, countPerOwner, meanDrawUncertainty } of kinds) {
      const ownership = ownershipAt(uniform())
      const factor = 1 + meanDrawUncertainty * (2 * uniform() - 1)
      const [below, rest] = [Math.floor(countPerOwner), countPerOwner % 1]
      for (let home = 0; home < homes; home++) {
        if (uniform() >= ownership) continue
        const count = below + (rest > 0 && uniform() < rest ? 1 : 0)
        for (let device = 0; device < count; device++) total += factor * drawAt(uniform())
      }
    }
    return total
  })
  return totals.sort((a, b) => a - b)
}
