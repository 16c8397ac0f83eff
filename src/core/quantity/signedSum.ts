import type { Contrast } from './contrast.ts'
import { type Distribution, isExact } from './distribution.ts'
import { rectangularSum } from './rectangularSum.ts'
import { GrowingSum } from './sumNode.ts'
import { readingDistribution, type Term } from './term.ts'

/** Non-negative factors times a signed sum, all of which shares them. */
export interface Block {
  readonly by: readonly Distribution[]
  readonly of: SignedSum
}

/** A sum less another, and blocks that may be either; everything independent of everything else. */
export class SignedSum {
  readonly up: GrowingSum = new GrowingSum()
  readonly down: GrowingSum = new GrowingSum()
  readonly blocks: Block[] = []

  get constant(): number {
    return this.up.constant - this.down.constant
  }

  add(coefficient: number, factors: readonly Distribution[]): void {
    if (coefficient >= 0) this.up.addProduct(coefficient, factors)
    else this.down.addProduct(-coefficient, factors)
  }

  /** A rectangular quantity about zero. */
  addSymmetric(halfWidth: number): void {
    if (halfWidth === 0) return
    this.up.constant -= halfWidth
    this.up.addProduct(1, [rectangularSum(halfWidth, halfWidth)])
  }

  /** @param shares whether a meter's gain stands elsewhere, so that a reading has only its counts part left */
  addContrast({ common, terms }: Contrast, shares: (meter: string | null) => boolean): void {
    const by = productOf(common, shares)
    const inner = terms.map((term) => productOf(term, shares))
    if (inner.every(({ factors }) => factors.length === 0)) {
      this.add(inner.reduce((sum, { coefficient }) => sum + coefficient, 0) * by.coefficient, by.factors)
    } else if (by.factors.length === 0 || inner.length === 1) {
      for (const { coefficient, factors } of inner)
        this.add(by.coefficient * coefficient, [...by.factors, ...factors])
    } else {
      const of = new SignedSum()
      for (const { coefficient, factors } of inner) of.add(by.coefficient * coefficient, factors)
      this.blocks.push({ by: by.factors, of })
    }
  }
}

/** A term as a coefficient and its uncertain factors. */
function productOf(
  { coefficient, factors, metered, shared }: Term,
  shares: (meter: string | null) => boolean,
) {
  const all = [...factors]
  if (shared) all.push(shared.distribution)
  if (metered)
    all.push(
      shares(metered.meter) ? rectangularSum(metered.value, metered.counts) : readingDistribution(metered),
    )
  return {
    coefficient: all.reduce(
      (product, factor) => (isExact(factor) ? product * factor.mean : product),
      coefficient,
    ),
    factors: all.filter((factor) => !isExact(factor)),
  }
}

/** A factor that multiplies all of a sum. */
export function timesOuter(sum: SignedSum, outer: Distribution | undefined): SignedSum {
  if (!outer || isExact(outer)) return sum
  const product = new SignedSum()
  const { up, down, blocks, constant } = sum
  const nodes = [...up.nodes, ...down.nodes]
  const [only] = nodes
  if (blocks.length === 0 && nodes.length === 0) product.add(constant, [outer])
  else if (blocks.length === 0 && nodes.length === 1 && constant === 0 && only?.kind === 'product')
    product.add(up.nodes.length > 0 ? only.coefficient : -only.coefficient, [...only.factors, outer])
  else product.blocks.push({ by: [outer], of: sum })
  return product
}
