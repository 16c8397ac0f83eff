import { describe, expect, test } from 'vitest'
import {
  type Distribution,
  isExact,
  relativeSpread,
  variance,
} from '../../../src/core/quantity/distribution.ts'
import { exact } from '../../../src/core/quantity/exact.ts'
import { independentCopies } from '../../../src/core/quantity/independentCopies.ts'
import { normalCdf, normalQuantile } from '../../../src/core/quantity/normal.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import { triangular } from '../../../src/core/quantity/triangular.ts'
import { lognormalOf, twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'

const LOG_NORMALS: readonly [string, Distribution][] = [
  ['a typical draw', twoPieceLognormal({ low: 0.4, typical: 1, high: 3 })],
  ['a typical draw skewed to the left', twoPieceLognormal({ low: 0.1, typical: 2, high: 2.2 })],
  ['a typical draw whose low is its typical', twoPieceLognormal({ low: 1, typical: 1, high: 4 })],
  ['a typical draw whose high is its typical', twoPieceLognormal({ low: 0.2, typical: 1, high: 1 })],
  ['a typical draw with a low of zero', twoPieceLognormal({ low: 0, typical: 0.5, high: 1 })],
  ['a typical draw of zero', twoPieceLognormal({ low: 0, typical: 0, high: 0.05 })],
]
const BOUNDED: readonly [string, Distribution][] = [
  ['one rectangle', rectangularSum(5, 2)],
  ['two unequal rectangles', rectangularSum(5, 1.5, 0.4)],
  ['two equal rectangles', rectangularSum(5, 1, 1)],
  ['two rectangles of a millionth', rectangularSum(5, 1, 5e-7)],
  ['a trapezoid whose slope is cut at zero', rectangularSum(1.8, 1.5, 0.6)],
  ['a trapezoid whose flat top is cut at zero', rectangularSum(0.5, 1.5, 0.6)],
  ['a trapezoid cut beyond its middle', rectangularSum(-0.5, 1.5, 0.6)],
  ['a trapezoid of which little is left', rectangularSum(-1.6, 1.5, 0.6)],
  ['a meter that shows zero', rectangularSum(0, 0, 0.3)],
  ['a triangle', triangular({ low: 1, typical: 2, high: 5 })],
  ['a rising triangle', triangular({ low: 1, typical: 5, high: 5 })],
  ['a falling triangle', triangular({ low: 0, typical: 0, high: 3 })],
]
const CELLS = 20_000
const middles = Array.from({ length: CELLS }, (_, i) => (i + 0.5) / CELLS)
const meanOver = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/** Within a share, or the same share of what the distribution spans. */
const near = (actual: number, expected: number, tolerance: number) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(tolerance)

describe.each([...LOG_NORMALS, ...BOUNDED])('%s', (_, x) => {
  const values = middles.map((p) => x.quantile(p))

  test('has the mean and mean square of its quantiles', () => {
    near(meanOver(values), x.mean, 5e-4 * x.mean)
    near(meanOver(values.map((value) => value * value)), x.meanSquare, 8e-3 * x.meanSquare)
  })

  test('has quantiles that its distribution function undoes, in ascending order', () => {
    for (const [i, value] of values.entries()) {
      if (i > 0) expect(value).toBeGreaterThanOrEqual(values[i - 1]!)
      if (value > x.min && value < x.max && i % 100 === 0 && x.cdf(value * (1 - 1e-9)) > 0.75 * x.cdf(value))
        near(x.cdf(value), middles[i]!, 1e-9)
    }
  })

  test('has the expected shortfall of its quantiles', () => {
    for (const p of [0.001, 0.1, 0.3, 0.5, 0.7, 0.9, 0.999]) {
      const at = x.quantile(p)
      near(
        x.cdfIntegral(at),
        meanOver(values.map((value) => Math.max(0, at - value))),
        1e-4 * x.quantile(0.999),
      )
    }
  })

  test('has no shortfall below its range and none of its shape above', () => {
    expect([x.cdf(x.min - 1), x.cdfIntegral(x.min - 1)]).toEqual([0, 0])
    expect(x.min).toBeGreaterThanOrEqual(0)
    near(x.cdf(x.max + 1), 1, 1e-6)
    near(x.cdfIntegral(x.max + 10), x.max + 10 - x.mean, 1e-5 * (x.max + 10))
  })

  test('leaves at most a millionth outside of its range', () => {
    expect(x.cdf(x.min * (1 - 1e-12) - 1e-300)).toBeLessThanOrEqual(1.0001e-6)
    expect(1 - x.cdf(x.max)).toBeLessThanOrEqual(1.0001e-6)
  })

  test('gives many integrals at once as it gives each', () => {
    const [from, count] = [-3, 300]
    const unit = x.quantile(0.999) / 250
    const out = new Float64Array(count)
    x.cdfIntegrals!(out, from, count, unit)
    out.forEach((integral, i) => {
      const alone = x.cdfIntegral((from + i) * unit)
      near(integral, alone, 1e-12 * Math.max(1, x.mean))
    })
  })

  test('spreads as its moments say', () => {
    expect(isExact(x)).toBe(false)
    expect(variance(x)).toBeCloseTo(x.meanSquare - x.mean ** 2, 12)
    expect(relativeSpread(x)).toBeCloseTo(Math.sqrt(variance(x)) / x.mean, 12)
  })
})

describe('a typical draw', () => {
  test('has its low, typical and high as 5th, 50th and 95th percentile', () => {
    const x = twoPieceLognormal({ low: 0.4, typical: 1, high: 3 })
    expect(x.quantile(0.05)).toBeCloseTo(0.4, 12)
    expect(x.quantile(0.5)).toBe(1)
    expect(x.quantile(0.95)).toBeCloseTo(3, 12)
  })

  test('with equal spreads has the moments of a log-normal', () => {
    const spread = 0.7
    const x = lognormalOf(2, spread, spread)
    expect(x.mean).toBeCloseTo(2 * Math.exp(spread ** 2 / 2), 12)
    expect(x.meanSquare).toBeCloseTo(4 * Math.exp(2 * spread ** 2), 12)
  })

  test('reads a low and a typical of zero as the smallest step of a meter', () => {
    expect(twoPieceLognormal({ low: 0, typical: 1, high: 2 }).quantile(0.05)).toBeCloseTo(0.01, 12)
    expect(twoPieceLognormal({ low: 0, typical: 0, high: 2 }).quantile(0.5)).toBe(0.01)
  })

  test('of three equal figures is that value, also of zero', () => {
    for (const value of [0, 0.004, 3]) {
      const x = twoPieceLognormal({ low: value, typical: value, high: value })
      expect([x.min, x.mean, x.max, isExact(x)]).toEqual([value, value, value, true])
    }
    expect(isExact(twoPieceLognormal({ low: 0, typical: 0.005, high: 0.008 }))).toBe(true)
  })

  test('of a spread beyond all reason keeps its mean where integrals take another way', () => {
    const x = lognormalOf(1, 4, 4)
    expect(x.mean).toBeCloseTo(Math.exp(8), 6)
    const out = new Float64Array(2000)
    x.cdfIntegrals!(out, 0, 2000, 0.01)
    near(out[1999]!, x.cdfIntegral(19.99), 1e-9)
    // Simpson's rule on the distribution function, from e^-30 on, in the logarithm.
    const [cells, from, to] = [4000, -30, Math.log(19.99)]
    const width = (to - from) / cells
    let sum = 0
    for (let i = 0; i <= cells; i++) {
      const y = Math.exp(from + i * width)
      sum += (i === 0 || i === cells ? 1 : i % 2 === 1 ? 4 : 2) * x.cdf(y) * y
    }
    near(out[1999]!, (sum * width) / 3, 1e-6)
  })
})

describe('a value without uncertainty', () => {
  test('is all of its own quantiles', () => {
    const x = exact(3)
    expect([x.quantile(0), x.quantile(0.5), x.quantile(1)]).toEqual([3, 3, 3])
    expect([x.cdf(2.999), x.cdf(3)]).toEqual([0, 1])
    expect([x.cdfIntegral(2), x.cdfIntegral(5)]).toEqual([0, 2])
    expect([x.mean, x.meanSquare, relativeSpread(x), relativeSpread(exact(0))]).toEqual([3, 9, 0, 0])
  })

  test('is what a triangle and a rectangle of no width are', () => {
    expect(isExact(triangular({ low: 2, typical: 2, high: 2 }))).toBe(true)
    expect(rectangularSum(2, 0).mean).toBe(2)
    expect(rectangularSum(-2, 0, 0).mean).toBe(0)
    expect(rectangularSum(1, 1e-9, 0).max).toBe(1)
  })

  test('is zero where all of a reading would fall below it', () => {
    expect(isExact(rectangularSum(-2, 1, 0.5))).toBe(true)
    expect(rectangularSum(-2, 1, 0.5).mean).toBe(0)
  })
})

test('a meter that shows zero within its counts has a quarter of them as its mean', () => {
  // Half of the probability is cut to zero, the other half is rectangular on 0 to c: mean c/4, mean square c^2/6.
  const x = rectangularSum(0, 0, 0.3)
  expect(x.mean).toBeCloseTo(0.3 / 4, 12)
  expect(x.meanSquare).toBeCloseTo(0.09 / 6, 12)
  expect([x.quantile(0.2), x.quantile(0.5)]).toEqual([0, 0])
  expect(x.cdf(0)).toBe(0.5)
})

describe('independent copies of a quantity', () => {
  const rectangle = rectangularSum(1, 0.5)
  const draw = twoPieceLognormal({ low: 0.4, typical: 1, high: 3 })

  test('of one, or of something certain, are what they are', () => {
    expect(independentCopies(draw, 1)).toBe(draw)
    expect(independentCopies(exact(3), 4).mean).toBe(12)
    expect(isExact(independentCopies(exact(3), 4))).toBe(true)
  })

  test.each([2, 3, 4, 7, 40, 100, 1000])('add up in mean and variance: %i of them', (count) => {
    const sum = independentCopies(draw, count)
    near(sum.mean, count * draw.mean, 1e-12 * sum.mean)
    near(variance(sum), count * variance(draw), 1e-9 * sum.meanSquare)
  })

  test('of two rectangles are a triangle', () => {
    const sum = independentCopies(rectangle, 2)
    const triangle = triangular({ low: 1, typical: 2, high: 3 })
    for (const p of [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99])
      near(sum.quantile(p), triangle.quantile(p), 0.002)
    for (const x of [1.2, 2, 2.7]) near(sum.cdfIntegral(x), triangle.cdfIntegral(x), 0.002)
  })

  test('of three rectangles have the quantiles of their closed form', () => {
    // For t <= 1 the sum of three on 0..1 has F(t) = t^3/6, so p = 0.05 is at t = 0.3^(1/3).
    const sum = independentCopies(rectangularSum(0.5, 0.5), 3)
    near(sum.quantile(0.05), Math.cbrt(0.3), 0.005)
    near(sum.quantile(0.95), 3 - Math.cbrt(0.3), 0.005)
    near(sum.quantile(0.5), 1.5, 0.003)
  })

  test('keep the mean of a far tail that no lattice holds', () => {
    const wide = lognormalOf(1, 2.5, 2.5)
    const sum = independentCopies(wide, 3)
    expect(sum.mean).toBeCloseTo(3 * wide.mean, 9)
    expect(sum.cdf(sum.max)).toBe(1)
    near(sum.max - sum.cdfIntegral(sum.max), sum.mean, 1e-6 * sum.max)
    expect(sum.quantile(1)).toBe(sum.max)
    expect(sum.quantile(0.999)).toBeLessThan(sum.max)
  })

  test('have quantiles that its distribution function undoes to within a lattice step', () => {
    const sum = independentCopies(draw, 4)
    for (const p of [0.01, 0.05, 0.5, 0.95, 0.99]) {
      near(sum.cdf(sum.quantile(p) - 0.2), sum.cdf(sum.quantile(p)), 0.15)
      expect(sum.cdf(sum.quantile(p) - 0.2)).toBeLessThanOrEqual(p)
      expect(sum.cdf(sum.quantile(p) + 0.2)).toBeGreaterThanOrEqual(p)
    }
    expect(sum.cdf(sum.min - 1)).toBe(0)
    expect(sum.cdfIntegral(sum.min - 1)).toBe(0)
  })
})

test('the normal distribution ends where a double does', () => {
  expect([normalCdf(-40), normalCdf(40)]).toEqual([0, 1])
  expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity])
  // Far out the distribution function gives back what was asked for.
  for (const p of [1e-12, 1e-30]) expect(normalCdf(normalQuantile(p)) / p).toBeCloseTo(1, 6)
})
