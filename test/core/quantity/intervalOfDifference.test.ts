import { describe, expect, test } from 'vitest'
import {
  intervalOfDifference,
  intervalsOfDifference,
} from '../../../src/core/quantity/intervalOfDifference.ts'
import { intervalOfSum } from '../../../src/core/quantity/intervalOfSum.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import type { Term } from '../../../src/core/quantity/term.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'
import { nthSmallest } from './accuracy/nthSmallest.ts'
import { contrastsOf, productsOf, randomContrasts } from './accuracy/randomContrasts.ts'
import { distributionOf } from './accuracy/recipe.ts'
import { stratifiedDraws } from './accuracy/stratifiedDraws.ts'

const UNIT: Term = { coefficient: 1, factors: [] }
const PRICE = { kind: 'rectangular', middle: 1, halfWidth: 0.15 } as const
/** What intervalOfDifference.ts claims, in shares of the interval's width. */
const ENDS = 0.01
const MEAN = 0.003

describe('the interval of a difference agrees with a million stratified draws', () => {
  // Single parts (0, 5, 30), skewed ones (3, and 33 with an uncertain price), all kinds together (14).
  test.each([0, 3, 5, 14, 30, 33])('random difference %i', (index) => {
    const recipes = randomContrasts(index)
    const outer = index % 4 === 1 ? PRICE : null
    const coverage = [0.9, 0.5, 0.99][index % 3]!
    const { total } = stratifiedDraws(productsOf(recipes, outer, coverage), index)
    const mean = total.reduce((sum, draw) => sum + draw, 0) / total.length
    const tail = (1 - coverage) / 2
    const low = nthSmallest(total, Math.floor(tail * total.length))
    const high = nthSmallest(total, Math.floor((1 - tail) * total.length))
    const factor = outer ? distributionOf(outer) : undefined
    const found = intervalOfDifference(contrastsOf(recipes), coverage, factor)
    const width = high - low
    expect(Math.abs(found.low - low) / width).toBeLessThan(ENDS)
    expect(Math.abs(found.high - high) / width).toBeLessThan(ENDS)
    expect(Math.abs(found.expected - mean) / width).toBeLessThan(MEAN)
  })
})

describe('by hand', () => {
  const rectangular: Term = { coefficient: 1, factors: [rectangularSum(5, 1)] }

  test('two independent rectangular quantities differ by a triangular one', () => {
    const terms = [rectangular, { ...rectangular, coefficient: -1 }]
    // P(D < -2 + x) = x^2/8 up to the middle, so the 5 % quantile lies sqrt(0.4) above -2.
    const { expected, low, high } = intervalOfDifference([{ common: UNIT, terms }], 0.9)
    expect(expected).toBe(0)
    expect(low).toBeCloseTo(-2 + Math.sqrt(0.4), 2)
    expect(high).toBeCloseTo(2 - Math.sqrt(0.4), 2)
  })

  test('a certain amount less a rectangular quantity is rectangular, turned round', () => {
    const terms = [
      { coefficient: 10, factors: [] },
      { ...rectangular, coefficient: -1 },
    ]
    const { expected, low, high } = intervalOfDifference([{ common: UNIT, terms }], 0.9)
    expect([expected, low, high]).toEqual([5, expect.closeTo(4.1, 9), expect.closeTo(5.9, 9)])
  })

  test('where nothing is taken away, a difference times an uncertain price is a sum times it', () => {
    const price = rectangularSum(0.3, 0.1)
    const added = intervalOfDifference([{ common: UNIT, terms: [rectangular] }], 0.9, price)
    const sum = intervalOfSum([rectangular], 0.9, price)
    const width = sum.high - sum.low
    expect(Math.abs(added.low - sum.low) / width).toBeLessThan(ENDS)
    expect(Math.abs(added.high - sum.high) / width).toBeLessThan(ENDS)
    const taken = intervalOfDifference(
      [{ common: UNIT, terms: [{ ...rectangular, coefficient: -1 }] }],
      0.9,
      price,
    )
    expect([taken.low, taken.high]).toEqual([-added.high, -added.low])
  })

  test('an all but certain interval ends where the difference itself does', () => {
    const terms = [rectangular, { ...rectangular, coefficient: -1 }]
    const { low, high } = intervalOfDifference([{ common: UNIT, terms }], 1 - 1e-15)
    expect([low, high]).toEqual([expect.closeTo(-2, 1), expect.closeTo(2, 1)])
  })

  test('what is common cancels, and scales what does not', () => {
    const times = (coefficient: number): Term => ({ coefficient, factors: [] })
    expect(intervalOfDifference([{ common: rectangular, terms: [times(3), times(-3)] }], 0.9)).toEqual({
      expected: 0,
      low: 0,
      high: 0,
    })
    const { low, high } = intervalOfDifference([{ common: rectangular, terms: [times(3), times(-5)] }], 0.9)
    expect([low, high]).toEqual([expect.closeTo(-2 * 5.9, 9), expect.closeTo(-2 * 4.1, 9)])
  })

  test('readings of one meter share its gain: 8 - 3 has the gain of 5', () => {
    const read = (value: number, coefficient: number): Term => ({
      coefficient,
      factors: [],
      metered: { value, gain: 0.1, counts: 0, meter: 'one' },
    })
    const { low, high } = intervalOfDifference([{ common: UNIT, terms: [read(8, 1), read(3, -1)] }], 0.9)
    expect([low, high]).toEqual([expect.closeTo(4.55, 9), expect.closeTo(5.45, 9)])
  })

  test('the opposite sign mirrors the interval, to the last bit', () => {
    const draw: Term = { coefficient: 1, factors: [twoPieceLognormal({ low: 1, typical: 3, high: 20 })] }
    const of = (sign: number) =>
      intervalOfDifference(
        [
          { common: draw, terms: [{ coefficient: 2 * sign, factors: [rectangularSum(4, 2)] }] },
          { common: UNIT, terms: [{ ...rectangular, coefficient: -sign }] },
        ],
        0.9,
      )
    const [one, other] = [of(1), of(-1)]
    expect([other.expected, other.low, other.high]).toEqual([-one.expected, -one.high, -one.low])
  })

  test('nothing is exactly nothing, and so is what only rounding leaves', () => {
    expect(intervalOfDifference([], 0.9)).toEqual({ expected: 0, low: 0, high: 0 })
    const terms = [0.1, 0.2, -0.3].map((coefficient): Term => ({ coefficient, factors: [] }))
    expect(0.1 + 0.2 - 0.3).not.toBe(0)
    expect(intervalOfDifference([{ common: UNIT, terms }], 0.9)).toEqual({ expected: 0, low: 0, high: 0 })
  })

  test('a narrower coverage lies inside of a wider one', () => {
    const contrasts = contrastsOf(randomContrasts(7))
    const [wide, narrow] = intervalsOfDifference(contrasts, [0.9, 0.68])
    expect(narrow!.low).toBeGreaterThan(wide!.low)
    expect(narrow!.high).toBeLessThan(wide!.high)
    const alone = intervalOfDifference(contrasts, 0.68)
    expect(Math.abs(narrow!.low - alone.low) / (alone.high - alone.low)).toBeLessThan(ENDS)
  })
})
