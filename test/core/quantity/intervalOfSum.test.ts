import { describe, expect, test } from 'vitest'
import { exact } from '../../../src/core/quantity/exact.ts'
import { independentCopies } from '../../../src/core/quantity/independentCopies.ts'
import { type Interval, intervalOfSum, scaleInterval } from '../../../src/core/quantity/intervalOfSum.ts'
import { normalQuantile } from '../../../src/core/quantity/normal.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import type { Term } from '../../../src/core/quantity/term.ts'
import { timesFactor } from '../../../src/core/quantity/timesFactor.ts'
import { triangular } from '../../../src/core/quantity/triangular.ts'
import { lognormalOf, twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'
import { randomRecipe } from './accuracy/randomRecipe.ts'
import { distributionOf, termsOf } from './accuracy/recipe.ts'

const of = (...factors: Term['factors']): Term => ({ coefficient: 1, factors })
const draw = twoPieceLognormal({ low: 0.4, typical: 1, high: 3 })
const copies = <T>(count: number, value: T): T[] => Array.from({ length: count }, () => value)

/** Ends within a share of the wanted interval's width. */
function near(found: Interval, wanted: { low: number; high: number }, share = 0.01): void {
  const width = wanted.high - wanted.low
  expect(Math.abs(found.low - wanted.low)).toBeLessThan(share * width)
  expect(Math.abs(found.high - wanted.high)).toBeLessThan(share * width)
}

describe('the interval of a sum of known form', () => {
  test('of two equal rectangles is the triangle’s', () => {
    const found = intervalOfSum(copies(2, of(rectangularSum(1, 1))), 0.9)
    const triangle = triangular({ low: 0, typical: 2, high: 4 })
    expect(found.expected).toBeCloseTo(2, 12)
    near(found, { low: triangle.quantile(0.05), high: triangle.quantile(0.95) }, 0.003)
  })

  test('of two unequal rectangles is the trapezoid’s', () => {
    const found = intervalOfSum([of(rectangularSum(5, 1)), of(rectangularSum(5, 0.6))], 0.5)
    const trapezoid = rectangularSum(10, 1, 0.6)
    near(found, { low: trapezoid.quantile(0.25), high: trapezoid.quantile(0.75) }, 0.003)
  })

  test('of a product of log-normals is the log-normal’s', () => {
    const spread = Math.hypot(0.6, 0.3, 0.2)
    const found = intervalOfSum(
      [of(lognormalOf(2, 0.6, 0.6), lognormalOf(3, 0.3, 0.3), lognormalOf(0.5, 0.2, 0.2))],
      0.9,
    )
    const score = normalQuantile(0.95)
    expect(found.expected).toBeCloseTo(3 * Math.exp(spread ** 2 / 2), 10)
    near(found, { low: 3 * Math.exp(-score * spread), high: 3 * Math.exp(score * spread) }, 0.01)
  })

  test('of a hundred equal parts is near the normal distribution’s', () => {
    const found = intervalOfSum(copies(100, of(rectangularSum(1, 0.5))), 0.9)
    const spread = Math.sqrt(100 / 12)
    near(found, {
      low: 100 + normalQuantile(0.05) * spread,
      high: 100 + normalQuantile(0.95) * spread,
    })
  })

  test('with a shared factor on all is the product with it', () => {
    const shared = { key: 'voltage', distribution: rectangularSum(1, 0.06) }
    const terms = copies(3, { ...of(exact(2)), shared })
    expect(intervalOfSum(terms, 0.9).high).toBeCloseTo(6 * 1.054, 10)
  })

  test('of a meter’s readings holds its gain once, whatever their number', () => {
    const terms = copies(50, { ...of(), metered: { value: 2, gain: 0.05, counts: 0, meter: 'm' } })
    near(intervalOfSum(terms, 0.9), { low: 95.5, high: 104.5 }, 0.001)
    const own = copies(50, { ...of(), metered: { value: 2, gain: 0.05, counts: 0, meter: null } })
    const narrow = intervalOfSum(own, 0.9)
    expect(narrow.high - narrow.low).toBeLessThan(9 / 6)
  })

  test('of a meter that reads inside and outside of a shared factor is that of its closed form', () => {
    // G (V + 1) 100 with one gain G and one voltage V: the width of the product of the two about 200.
    const metered = { value: 100, gain: 0.03, counts: 0, meter: 'm' }
    const shared = { key: 'voltage', distribution: rectangularSum(1, 0.06) }
    const half = { ...of(), coefficient: 0.5, metered, shared }
    const found = intervalOfSum([half, half, { ...of(), metered }], 0.9)
    const trapezoid = rectangularSum(200, 6, 6)
    expect(found.expected).toBeCloseTo(200, 9)
    near(found, { low: trapezoid.quantile(0.05), high: trapezoid.quantile(0.95) }, 0.01)
  })
})

describe('the interval of a sum that is hard on a lattice', () => {
  test('of nothing, of certain parts and of zeros is a point', () => {
    expect(intervalOfSum([], 0.9)).toEqual({ expected: 0, low: 0, high: 0 })
    expect(intervalOfSum([of(exact(2)), of(exact(3), exact(4))], 0.9)).toEqual({
      expected: 14,
      low: 14,
      high: 14,
    })
    expect(intervalOfSum(copies(3, of(exact(0), draw)), 0.9)).toEqual({ expected: 0, low: 0, high: 0 })
    expect(intervalOfSum([{ coefficient: 0, factors: [draw] }], 0.9)).toEqual({
      expected: 0,
      low: 0,
      high: 0,
    })
  })

  test.each([0.5, 0.9, 0.99])('holds every quantile inside of the distribution’s range at %d', (coverage) => {
    const meterAtZero = { ...of(), metered: { value: 0, gain: 0.02, counts: 0.1, meter: 'm' } }
    const extremes: Term[][] = [
      copies(2, meterAtZero),
      [of(lognormalOf(0.01, 0, 3)), of(lognormalOf(5, 3, 0))],
      [of(lognormalOf(1, 2.4, 2.4)), of(exact(1e9))],
      [of(lognormalOf(1e-6, 1, 1)), of(lognormalOf(1e6, 1e-6, 1e-6))],
      [of(lognormalOf(1, 0, 1)), of(lognormalOf(1, 1, 0))],
      [{ ...of(), metered: { value: 1e-9, gain: 1e-9, counts: 1e-12, meter: 'm' } }, meterAtZero],
      copies(100, of(draw)),
      [of(independentCopies(draw, 100)), of(draw)],
      [of(draw, triangular({ low: 0, typical: 0, high: 168 }), rectangularSum(1, 1)), of(draw)],
    ]
    for (const terms of extremes) {
      const { expected, low, high } = intervalOfSum(terms, coverage)
      expect(Number.isFinite(low + high + expected)).toBe(true)
      expect(low).toBeGreaterThanOrEqual(0)
      expect(high).toBeGreaterThan(low)
      expect(expected).toBeGreaterThan(low)
    }
  })

  test('is a point where nothing of its width would show', () => {
    const tiny = of(
      twoPieceLognormal({ low: 0.1, typical: 1, high: 5 }),
      triangular({ low: 0, typical: 1e-40, high: 3e-30 }),
    )
    const found = intervalOfSum([of(exact(0.01)), tiny], 0.9)
    expect(found).toEqual({ expected: found.expected, low: found.expected, high: found.expected })
    expect(found.expected).toBeCloseTo(0.01, 12)
  })

  test.each([1e-300, 1e-150, 1e-61, 1e-59, 1e-20])('holds figures as small as %d', (small) => {
    const shared = { key: 'voltage', distribution: rectangularSum(1, 0.06) }
    const nearZero: Term = {
      ...of(),
      metered: { value: small, gain: 0.02, counts: 0.001, meter: 'm' },
      shared,
    }
    const terms = [nearZero, nearZero, of(triangular({ low: 0, typical: small, high: 2 * small }), draw)]
    const found = intervalOfSum(terms, 0.9)
    expect(found.expected).toBeCloseTo(0.0005, 9)
    expect(found.low).toBeGreaterThanOrEqual(0)
    expect(found.high).toBeGreaterThan(found.expected)
    expect(found.high).toBeLessThan(0.0022)
    const alone = intervalOfSum(terms.slice(2), 0.9)
    expect(alone.high).toBeGreaterThanOrEqual(alone.low)
  })

  test('of what is not a number is refused, and not searched for ever', () => {
    const broken: Term = { coefficient: Number.NaN, factors: [draw, rectangularSum(1, 0.5)] }
    expect(() => intervalOfSum([broken, of(draw)], 0.9)).toThrow('not a number')
  })

  test('reaches as far as a wide part’s upper end needs', () => {
    // The 99.5th percentile of one part whose median is a fiftieth of the other's.
    const wide = lognormalOf(0.2, 1.8, 1.8)
    const found = intervalOfSum([of(wide), of(rectangularSum(10, 0.001))], 0.99)
    near(found, { low: 10 + wide.quantile(0.005), high: 10 + wide.quantile(0.995) })
  })

  test('with a tiny gain is that without one', () => {
    const reading = (gain: number): Term => ({
      ...of(triangular({ low: 90, typical: 100, high: 130 })),
      metered: { value: 3, gain, counts: 0.05, meter: 'm' },
    })
    near(intervalOfSum(copies(2, reading(1e-9)), 0.9), intervalOfSum(copies(2, reading(0)), 0.9), 0.003)
  })
})

describe('the same bytes', () => {
  const households = [2, 8, 40, 87, 3].map((index) => {
    const { devices, coverage, outer, voltageHalfWidth } = randomRecipe(index)
    const terms = termsOf(devices.flat(), voltageHalfWidth)
    return () => intervalOfSum(terms, coverage, outer ? distributionOf(outer) : undefined)
  })

  test('come out whatever was asked before', () => {
    const first = households.map((ask) => ask())
    const backwards = households
      .toReversed()
      .map((ask) => ask())
      .toReversed()
    expect(backwards).toEqual(first)
    intervalOfSum(copies(200, of(draw)), 0.99)
    intervalOfSum([], 0.5)
    expect(households.map((ask) => ask())).toEqual(first)
  })

  test('come out of figures that are made anew', () => {
    const make = () => intervalOfSum(termsOf(randomRecipe(8).devices.flat(), 0.06), 0.9)
    expect(make()).toEqual(make())
  })
})

describe('a sum times an uncertain factor', () => {
  const terms = [of(draw), of(rectangularSum(5, 1))]
  const own = intervalOfSum(terms, 0.9)

  test('without uncertainty is the sum’s interval on another scale, and of a factor of zero nothing', () => {
    expect(timesFactor(own, terms, 0.9, 0.3, 0)).toEqual(scaleInterval(own, 0.3))
    expect(timesFactor(own, terms, 0.9, 0, 0.5)).toEqual({ expected: 0, low: 0, high: 0 })
  })

  test('is wider than the sum and has its mean', () => {
    const priced = timesFactor(own, terms, 0.9, 0.3, 0.4)
    expect(priced.expected).toBeCloseTo(0.3 * own.expected, 12)
    expect(priced.low).toBeLessThan(0.3 * own.low)
    expect(priced.high).toBeGreaterThan(0.3 * own.high)
  })

  test('of a certain sum is the factor’s own interval', () => {
    const certain = [of(exact(10))]
    const found = timesFactor(intervalOfSum(certain, 0.9), certain, 0.9, 2, 0.1)
    expect(found.low).toBeCloseTo(20 * (1 - 0.09), 10)
    expect(found.high).toBeCloseTo(20 * (1 + 0.09), 10)
  })
})
