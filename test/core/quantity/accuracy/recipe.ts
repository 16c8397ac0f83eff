import { type Distribution } from '../../../../src/core/quantity/distribution.ts'
import { exact } from '../../../../src/core/quantity/exact.ts'
import { independentCopies } from '../../../../src/core/quantity/independentCopies.ts'
import { rectangularSum } from '../../../../src/core/quantity/rectangularSum.ts'
import type { MeterReadingValue, SharedFactor, Term } from '../../../../src/core/quantity/term.ts'
import { triangular } from '../../../../src/core/quantity/triangular.ts'
import { twoPieceLognormal } from '../../../../src/core/quantity/twoPieceLognormal.ts'

/** One uncertain figure by its numbers, so that the oracle draws it by its own formulas and not by the core's. */
export type Figure = FigureByKind & {
  /** Figures of one name are one quantity. */
  readonly name?: string
}
type FigureByKind =
  | { readonly kind: 'exact'; readonly value: number }
  | {
      readonly kind: 'draw'
      readonly low: number
      readonly typical: number
      readonly high: number
      readonly quantity: number
    }
  | { readonly kind: 'triangular'; readonly low: number; readonly typical: number; readonly high: number }
  | { readonly kind: 'rectangular'; readonly middle: number; readonly halfWidth: number }

/** One product: coefficient x figures x reading x the supply's voltage over its nominal, as in core/quantity/term.ts. */
export interface Product {
  readonly coefficient: number
  readonly figures: readonly Figure[]
  readonly reading: MeterReadingValue | null
  readonly sharesVoltage: boolean
}

/** A household by its numbers: products of each device, and a price that multiplies the whole. */
export interface Recipe {
  readonly devices: readonly (readonly Product[])[]
  /** Half-width of the voltage's rectangular distribution about its nominal. */
  readonly voltageHalfWidth: number
  readonly outer: (Figure & { readonly kind: 'rectangular' }) | null
  readonly coverage: number
}

export function distributionOf(figure: Figure): Distribution {
  switch (figure.kind) {
    case 'exact':
      return exact(figure.value)
    case 'draw':
      return independentCopies(twoPieceLognormal(figure), figure.quantity)
    case 'triangular':
      return triangular(figure)
    case 'rectangular':
      return rectangularSum(figure.middle, figure.halfWidth)
  }
}

/** The same as the core has it. */
export function termsOf(products: readonly Product[], voltageHalfWidth: number): Term[] {
  const voltage: SharedFactor = { key: 'voltage', distribution: rectangularSum(1, voltageHalfWidth) }
  return products.map(({ coefficient, figures, reading, sharesVoltage }) => ({
    coefficient,
    factors: figures.map(distributionOf),
    ...(reading && { metered: reading }),
    ...(sharesVoltage && { shared: voltage }),
  }))
}
