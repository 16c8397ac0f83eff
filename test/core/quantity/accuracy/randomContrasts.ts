import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Contrast } from '../../../../src/core/quantity/contrast.ts'
import { distributionOf, type Figure, type Product, type Recipe, termsOf } from './recipe.ts'

/** One part of a difference by its numbers: what both states share, and products of either sign. */
export interface ContrastRecipe {
  readonly common: readonly Figure[]
  readonly products: readonly Product[]
}

const VOLTAGE = 0.06
const PER_HOUR = 365 / 7 / 1000

/** The same as the core has it. */
export function contrastsOf(recipes: readonly ContrastRecipe[]): Contrast[] {
  return recipes.map(({ common, products }) => ({
    common: { coefficient: 1, factors: common.map(distributionOf) },
    terms: termsOf(products, VOLTAGE),
  }))
}

/** The same multiplied out, for the oracle: what is common goes by its name. */
export function productsOf(
  recipes: readonly ContrastRecipe[],
  outer: Recipe['outer'],
  coverage: number,
): Recipe {
  const devices = recipes.map(({ common, products }, part) => {
    const named = common.map((figure, i) => ({ ...figure, name: `${part} ${i}` }))
    return products.map((product) => ({ ...product, figures: [...named, ...product.figures] }))
  })
  return { devices, voltageHalfWidth: VOLTAGE, outer, coverage }
}

/** Invented difference number `index`: 1 to 20 parts, as two visits to a household give them. */
export function randomContrasts(index: number): readonly ContrastRecipe[] {
  const generator = xoroshiro128plus(0xd1ff + index)
  for (let i = 0; i < 20; i++) generator.next()
  const next = () => (generator.next() >>> 0) / 0x1_0000_0000
  const between = (low: number, high: number) => low + (high - low) * next()
  const triangle = (low: number, high: number): Figure => {
    const [a, c, b] = [next(), next(), next()].sort((x, y) => x - y) as [number, number, number]
    const at = (share: number) => low + (high - low) * share
    return { kind: 'triangular', low: at(a), typical: at(c), high: at(b) }
  }
  const draw = (): Figure => {
    const typical = 0.1 * 100 ** next()
    const spread = index % 3 === 0 ? 12 : 3
    const [below, above] = [1.2 + spread * next(), 1.2 + spread * next()]
    return { kind: 'draw', low: typical / below, typical, high: typical * above, quantity: 1 }
  }
  const read = (
    coefficient: number,
    value: number,
    figures: readonly Figure[],
    isCurrent: boolean,
  ): Product => ({
    coefficient: coefficient * PER_HOUR * (isCurrent ? 230 : 1),
    figures,
    reading: isCurrent
      ? { value: value / 100, gain: 0.02, counts: 0.005, meter: 'clamp' }
      : { value, gain: 0.03, counts: 0.1, meter: 'wattmeter' },
    sharesVoltage: isCurrent,
  })
  const plain = (coefficient: number, figures: readonly Figure[]): Product => ({
    coefficient: coefficient * PER_HOUR,
    figures,
    reading: null,
    sharesVoltage: false,
  })
  const kinds: readonly (() => ContrastRecipe)[] = [
    // An assumed device whose hours changed, for certain or not.
    () => ({ common: [draw()], products: [plain(between(-100, 100), [])] }),
    () => ({ common: [draw()], products: [plain(1, [triangle(60, 168)]), plain(-1, [triangle(0, 120)])] }),
    // Read twice with a wattmeter, at hours that are not known for certain.
    () => ({
      common: [triangle(60, 168)],
      products: [read(1, between(1, 12), [], false), read(-1, between(0, 8), [], false)],
    }),
    // Read twice with a clamp meter: power factor and hours are the same.
    () => ({
      common: [triangle(0.1, 0.6), triangle(60, 168)],
      products: [read(1, between(1, 12), [], true), read(-1, between(0, 8), [], true)],
    }),
    // Removed, added, replaced.
    () => ({ common: [], products: [plain(between(20, 168), [draw()])] }),
    () => ({ common: [], products: [read(-between(20, 168), between(0, 8), [], false)] }),
    () => ({ common: [], products: [plain(120, [draw()]), read(-120, between(0, 8), [], true)] }),
  ]
  const count = index % 5 === 0 ? 1 : 1 + Math.floor(20 * next())
  return Array.from({ length: count }, () => kinds[Math.floor(next() * kinds.length)]!())
}
