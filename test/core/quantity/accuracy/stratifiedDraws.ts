import { normalQuantile } from '../../../../src/core/quantity/normal.ts'
import type { MeterReadingValue } from '../../../../src/core/quantity/term.ts'
import type { Figure, Product, Recipe } from './recipe.ts'

const BITS = 20
/** A little over 10^6. */
const DRAWS = 2 ** BITS
const Z95 = normalQuantile(0.95)
const SMALLEST_W = 0.01

/**
 * The oracle: 2^20 draws of a household's total and of its first device, by the model to the letter.
 *
 * Latin hypercube sampling: each input takes the middle of each of 2^20 equally probable strata once, in an order of its
 * own. What an input does by itself is then free of noise, and only what inputs do together is left to chance: the noise
 * of the interval's ends falls to a few thousandths of a per cent of the width for few inputs and some hundredths for
 * many (README.md of core/quantity), where plain draws would have 0.06 to 1 %.
 *
 * Source: M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239-245, from memory.
 * @param seed of the orders
 */
export function stratifiedDraws(
  recipe: Recipe,
  seed: number,
): { readonly total: Float64Array; readonly first: Float64Array } {
  const inputs = inputsOf(seed)
  const devices = recipe.devices.map((products) =>
    products.map((product) => stepsOf(product, recipe.voltageHalfWidth, inputs)),
  )
  const outer = recipe.outer && timesFigure(recipe.outer, inputs)
  const total = new Float64Array(DRAWS)
  const first = new Float64Array(DRAWS)
  const values = new Float64Array(BLOCK)
  // In blocks that fit into a processor's cache.
  for (let from = 0; from < DRAWS; from += BLOCK) {
    const sum = total.subarray(from, from + BLOCK)
    devices.forEach((products, device) => {
      for (const steps of products) {
        for (const step of steps) step(values, from)
        for (let i = 0; i < BLOCK; i++) sum[i]! += values[i]!
        if (device === 0) for (let i = 0; i < BLOCK; i++) first[from + i]! += values[i]!
      }
    })
    outer?.(sum, from)
  }
  return { total, first }
}

const BLOCK = 4096

/** Changes the values that belong to the draws from `from` on. */
type Step = (values: Float64Array, from: number) => void

/** Gives every input its order: a new one to what stands alone, the same one to what goes by the same name. */
interface Inputs {
  alone(): Order
  named(name: string): Order
}

function inputsOf(seed: number): Inputs {
  const alone = orders(seed)
  const known = new Map<string, Order>()
  const named = (name: string) => {
    const order = known.get(name) ?? alone()
    known.set(name, order)
    return order
  }
  return { alone, named }
}

function stepsOf(product: Product, voltageHalfWidth: number, inputs: Inputs): Step[] {
  const { coefficient, figures, reading, sharesVoltage } = product
  const steps: Step[] = [(values) => values.fill(coefficient)]
  for (const figure of figures) steps.push(timesFigure(figure, inputs))
  if (sharesVoltage) steps.push(timesRectangular(1, voltageHalfWidth, inputs.named('voltage')))
  if (reading) steps.push(timesReading(reading, inputs))
  return steps
}

function timesFigure(figure: Figure, inputs: Inputs): Step {
  let part = 0
  const order = () =>
    figure.name === undefined ? inputs.alone() : inputs.named(`figure ${figure.name} ${part++}`)
  switch (figure.kind) {
    case 'exact':
      return (values) => {
        for (let i = 0; i < BLOCK; i++) values[i]! *= figure.value
      }
    case 'rectangular':
      return timesRectangular(figure.middle, figure.halfWidth, order())
    case 'triangular':
      return timesTriangular(figure, order())
    case 'draw':
      return timesDraws(figure, order)
  }
}

const timesRectangular =
  (middle: number, halfWidth: number, of: Order): Step =>
  (values, from) => {
    for (let i = 0; i < BLOCK; i++) values[i]! *= middle + halfWidth * signed(of, from + i)
  }

function timesTriangular(
  { low: a, typical: c, high: b }: Extract<Figure, { kind: 'triangular' }>,
  of: Order,
): Step {
  const [rising, falling, atMode] = [(b - a) * (c - a), (b - a) * (b - c), (c - a) / (b - a)]
  return (values, from) => {
    for (let i = 0; i < BLOCK; i++) {
      const p = (place(of, from + i) + 0.5) / DRAWS
      values[i]! *= p < atMode ? a + Math.sqrt(p * rising) : b - Math.sqrt((1 - p) * falling)
    }
  }
}

/** Every one of the quantity is drawn for itself. */
function timesDraws(
  { low, typical, high, quantity }: Extract<Figure, { kind: 'draw' }>,
  order: () => Order,
): Step {
  const median = Math.max(typical, SMALLEST_W)
  const below = Math.log(median / Math.max(low, SMALLEST_W)) / Z95
  const above = Math.log(Math.max(high, median) / median) / Z95
  const each = Array.from({ length: quantity }, () => order())
  const sums = new Float64Array(BLOCK)
  return (values, from) => {
    sums.fill(0)
    for (const of of each)
      for (let i = 0; i < BLOCK; i++) {
        const z = SCORES[place(of, from + i)]!
        sums[i]! += Math.exp(z * (z < 0 ? below : above))
      }
    for (let i = 0; i < BLOCK; i++) values[i]! *= median * sums[i]!
  }
}

function timesReading({ value, gain, counts, meter }: MeterReadingValue, inputs: Inputs): Step {
  const ofGain = meter === null ? inputs.alone() : inputs.named(`meter ${meter}`)
  const ofCounts = inputs.alone()
  return (values, from) => {
    for (let i = 0; i < BLOCK; i++) {
      const shown = value * (1 + gain * signed(ofGain, from + i)) + counts * signed(ofCounts, from + i)
      values[i]! *= Math.max(0, shown)
    }
  }
}

/** Normal score of the middle of each stratum. */
const SCORES = Float32Array.from({ length: DRAWS }, (_, i) => normalQuantile((i + 0.5) / DRAWS))

/** The order in which an input takes its strata: a permutation of 0 .. 2^20 - 1 as two multiplications and shifts. */
interface Order {
  readonly start: number
  readonly first: number
  readonly second: number
}

const MASK = DRAWS - 1

/** The stratum of the i-th draw; each step is a bijection of 20-bit numbers. */
function place({ start, first, second }: Order, i: number): number {
  let k = Math.imul(i ^ start, first) & MASK
  k = Math.imul(k ^ (k >>> 11), second) & MASK
  k = Math.imul(k ^ (k >>> 9), first) & MASK
  return k ^ (k >>> 10)
}

/** From -1 to 1. */
const signed = (of: Order, i: number): number => (2 * place(of, i) + 1) / DRAWS - 1

/** Orders one after the other, from a 32-bit mixing generator (splitmix, constants from memory). */
function orders(seed: number): () => Order {
  let state = Math.imul(seed + 1, 0x9e3779b9)
  const next = () => {
    state = (state + 0x9e3779b9) | 0
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad)
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97)
    return mixed ^ (mixed >>> 15)
  }
  // A product with an odd number can be undone.
  return () => ({ start: next() & MASK, first: next() | 1, second: next() | 1 })
}
