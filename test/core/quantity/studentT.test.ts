import { describe, expect, test } from 'vitest'
import { studentT } from '../../../src/core/quantity/studentT.ts'
import { studentTCdf, studentTDensity, studentTQuantile } from '../../../src/core/quantity/studentTCdf.ts'

describe('Student’s t', () => {
  test('with one and two degrees of freedom has its closed forms', () => {
    for (const t of [-60, -3, -1, -0.1, 0, 0.3, 2, 8, 100]) {
      expect(studentTCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 14)
      expect(studentTCdf(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 14)
      expect(studentTDensity(t, 1)).toBeCloseTo(1 / (Math.PI * (1 + t * t)), 14)
    }
  })

  test.each([
    [0.975, 3, 3.18],
    [0.975, 10, 2.23],
    [0.995, 16, 2.92],
    [0.95, 5, 2.02],
    [0.975, 50, 2.01],
  ])('has the quantile at %d of table G.2 of the GUM with %d degrees (from memory)', (p, degrees, t) => {
    expect(studentTQuantile(p, degrees)).toBeCloseTo(t, 2)
  })

  test('has a quantile function that its distribution function undoes, for any number of degrees', () => {
    for (const degrees of [0.7, 2.5, 3, 17.3, 400, 60_000])
      for (const p of [1e-6, 0.001, 0.2, 0.4999, 0.5, 0.77, 0.999])
        expect(studentTCdf(studentTQuantile(p, degrees), degrees)).toBeCloseTo(p, 10)
    expect(studentTQuantile(0, 5)).toBe(-Infinity)
    expect(studentTQuantile(1, 5)).toBe(Infinity)
  })

  test('is symmetric about zero, down to the smallest numbers', () => {
    expect(studentTCdf(1e-200, 4)).toBe(0.5)
    expect(studentTCdf(1e-9, 4) - 0.5).toBeCloseTo(0.375e-9, 15)
    expect(studentTCdf(1.7, 4)).toBeCloseTo(1 - studentTCdf(-1.7, 4), 15)
  })

  test('comes near the normal distribution with many degrees', () => {
    expect(studentTQuantile(0.975, 1e5)).toBeCloseTo(1.95996, 4)
  })
})

describe.each([
  ['narrow', 1, 0.1, 10],
  ['wide, cut off at zero', 1, 0.9, 5.5],
  ['wider than its value, with the fewest degrees', 1, 2, 3],
  ['of a small value', 0.001, 0.0002, 200],
])('a value with scatter, %s', (_, value, spread, degrees) => {
  const x = studentT(value, spread, degrees)
  const CELLS = 40_000
  const values = Array.from({ length: CELLS }, (__, i) => x.quantile((i + 0.5) / CELLS))
  /** Within what the far tails beyond the outermost cells hold. */
  const near = (actual: number, expected: number, share: number) =>
    expect(Math.abs(actual - expected)).toBeLessThan(share * expected)

  test('has the mean and mean square of its quantiles', () => {
    near(x.mean, values.reduce((sum, one) => sum + one, 0) / CELLS, 1e-3)
    near(x.meanSquare, values.reduce((sum, one) => sum + one ** 2, 0) / CELLS, 0.03)
  })

  test('has the expected shortfall of its quantiles, and none below zero', () => {
    for (const p of [0.2, 0.5, 0.9]) {
      const at = x.quantile(p)
      const shortfall = values.reduce((sum, one) => sum + Math.max(0, at - one), 0) / CELLS
      expect(x.cdfIntegral(at)).toBeCloseTo(shortfall, 5)
      if (at > 0) expect(x.cdf(at)).toBeCloseTo(p, 10)
    }
    expect([x.cdf(-1), x.cdfIntegral(-1), x.cdfIntegral(0)]).toEqual([0, 0, 0])
    expect(x.quantile(0)).toBe(0)
  })

  test('leaves a millionth out at either end', () => {
    expect(x.min).toBeGreaterThanOrEqual(0)
    expect(x.cdf(x.max)).toBeCloseTo(1 - 1e-6, 9)
    expect(x.cdfIntegral(1e6)).toBeCloseTo(1e6 - x.mean, 6)
  })
})

test('a value far above its scatter keeps its mean and has the variance of t', () => {
  const x = studentT(5, 0.1, 12)
  expect(x.mean).toBeCloseTo(5, 9)
  expect(x.meanSquare - x.mean ** 2).toBeCloseTo((0.01 * 12) / 10, 9)
})
