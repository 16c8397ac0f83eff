import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { significant, significantInterval } from '../../../src/core/quantity/significant.ts'

describe('six significant digits', () => {
  test.each([
    [0, 0],
    [-0, 0],
    [1, 1],
    [123456.7, 123457],
    [999999.6, 1000000],
    [1234567.8, 1234570],
    [0.1 + 0.2, 0.3],
    [-2.3456785e-3, -0.00234568],
    [1e-13, 1e-13],
    [1.2345678e-20, 1.23457e-20],
    [1.2345678e25, 1.23457e25],
    [0.001, 0.001],
    [99999.95, 100000],
    [1e5, 100000],
  ])('of %d are %d', (value, shown) => {
    expect(significant(value)).toBe(shown)
  })

  test('are off by at most half of the sixth digit, and print no more than six', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-15, max: 1e15, noNaN: true }), (value) => {
        const shown = significant(value)
        expect(Math.abs(shown - value)).toBeLessThanOrEqual(5.0000001e-6 * value)
        expect(Number(shown.toPrecision(6))).toBe(shown)
        expect(significant(-value)).toBeCloseTo(-shown, 5 - Math.floor(Math.log10(value)))
      }),
    )
  })

  test('keep their order', () => {
    const positive = fc.double({ min: 1e-9, max: 1e9, noNaN: true })
    fc.assert(
      fc.property(positive, positive, (a, b) => {
        if (a <= b) expect(significant(a)).toBeLessThanOrEqual(significant(b))
      }),
    )
  })

  test('stand for each figure of an interval', () => {
    expect(significantInterval({ expected: 1.23456789, low: 0.123456789, high: 12345678.9 })).toEqual({
      expected: 1.23457,
      low: 0.123457,
      high: 12345700,
    })
  })
})
