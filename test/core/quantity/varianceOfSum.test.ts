import { describe, expect, test } from 'vitest'
import { exact } from '../../../src/core/quantity/exact.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import {
  multiplyTerm,
  scaleTerm,
  type Term,
  termMean,
  termVariance,
} from '../../../src/core/quantity/term.ts'
import { varianceOfSum } from '../../../src/core/quantity/varianceOfSum.ts'

/** Variance of a rectangle of that half-width. */
const flat = (halfWidth: number) => halfWidth ** 2 / 3
const voltage = { key: 'voltage', distribution: rectangularSum(1, 0.06) }
const read = (value: number, gain: number, counts: number, meter: string | null): Term => ({
  coefficient: 1,
  factors: [],
  metered: { value, gain, counts, meter },
})

describe('a term', () => {
  test('has the mean and variance of a product of independent parts', () => {
    const term: Term = {
      coefficient: 2,
      factors: [rectangularSum(3, 1), exact(5)],
      metered: { value: 4, gain: 0.1, counts: 0.2, meter: 'm' },
      shared: voltage,
    }
    expect(termMean(term)).toBeCloseTo(120, 10)
    const squares = (9 + flat(1)) * (16 + flat(0.4) + flat(0.2)) * (1 + flat(0.06))
    expect(termVariance(term)).toBeCloseTo(100 * squares - 120 ** 2, 6)
  })

  test('keeps all of its parts when it is scaled or multiplied', () => {
    const term: Term = { ...read(4, 0.1, 0.2, 'm'), shared: voltage, factors: [exact(2)] }
    expect(scaleTerm(term, 3)).toMatchObject({ ...term, coefficient: 3 })
    const factor = rectangularSum(1, 0.5)
    expect(multiplyTerm(term, factor)).toMatchObject({ ...term, factors: [{ mean: 2 }, factor] })
    expect(termVariance(scaleTerm(term, 3))).toBeCloseTo(9 * termVariance(term), 10)
  })
})

describe('the variance of a sum', () => {
  test('of independent terms is the sum of theirs, and each removes its own', () => {
    const terms: Term[] = [
      { coefficient: 2, factors: [rectangularSum(3, 1)] },
      { coefficient: 1, factors: [rectangularSum(3, 0.5)] },
    ]
    const { total, removedBy } = varianceOfSum(terms)
    expect(total).toBeCloseTo(4 * flat(1) + flat(0.5), 12)
    expect(removedBy[0]).toBeCloseTo(4 * flat(1), 12)
    expect(removedBy[1]).toBeCloseTo(flat(0.5), 12)
    expect(varianceOfSum([])).toEqual({ total: 0, removedBy: [] })
  })

  test('of one meter’s readings adds its gain in full, not in squares', () => {
    const { total, removedBy } = varianceOfSum([read(10, 0.03, 0.1, 'm'), read(30, 0.03, 0.2, 'm')])
    expect(total).toBeCloseTo(flat(0.1) + flat(0.2) + flat(0.03 * 40), 12)
    // What is left once the first is a constant: the second's counts and its gain.
    expect(removedBy[0]).toBeCloseTo(total - flat(0.2) - flat(0.03 * 30), 12)
    expect(removedBy[1]).toBeCloseTo(total - flat(0.1) - flat(0.03 * 10), 12)
  })

  test.each([
    ['two meters', read(10, 0.03, 0, 'm'), read(10, 0.03, 0, 'n')],
    ['meters without a name', read(10, 0.03, 0, null), read(10, 0.03, 0, null)],
  ])('of %s holds no covariance', (_, a, b) => {
    expect(varianceOfSum([a, b]).total).toBeCloseTo(2 * flat(0.3), 12)
  })

  test('of readings without a percent part holds no covariance', () => {
    expect(varianceOfSum([read(10, 0, 0.1, 'm'), read(10, 0, 0.1, 'm')]).total).toBeCloseTo(2 * flat(0.1), 12)
  })

  test('with a shared factor is that of the factor times the sum', () => {
    const shared = (value: number): Term => ({
      coefficient: value,
      factors: [rectangularSum(1, 0.5)],
      shared: voltage,
    })
    const own = flat(0.5) * (4 + 9)
    const { total } = varianceOfSum([shared(2), shared(3)])
    expect(total).toBeCloseTo((1 + flat(0.06)) * (25 + own) - 25, 10)
  })
})
