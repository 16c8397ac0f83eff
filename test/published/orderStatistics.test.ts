import { bdtr, compiled, incbet } from 'cephes'
import fc from 'fast-check'
import { beforeAll, describe, expect, test } from 'vitest'
import { binomialCdf } from '../../src/core/proposals/binomialCdf.ts'
import { quantileInterval } from '../../src/core/proposals/quantileInterval.ts'
import { quantileOf } from '../../src/core/proposals/quantileOf.ts'
import { outliersOf } from '../../src/core/proposals/outliersOf.ts'

/**
 * Intervals of percentiles between order statistics, against Cephes (npm `cephes`), S. S. Wilks, Annals of Mathematical Statistics 12
 * (1941) 91-96 (59 values for 95 % content at 95 %, from memory), and the usual table of distribution-free intervals of a median,
 * as in W. J. Conover, Practical Nonparametric Statistics (from memory; each is a sum of binomial coefficients over 2^n).
 */
beforeAll(() => compiled)
const counts = fc.integer({ min: 1, max: 400 })
const shares = fc.double({ min: 0.01, max: 0.99, noNaN: true })

describe('the binomial distribution function', () => {
  test('is that of Cephes to 1e-11, up to the last count', () => {
    fc.assert(
      fc.property(counts, shares, (n, p) => {
        const cdf = binomialCdf(n, p)
        for (let k = 0; k < n; k++) expect(Math.abs(cdf[k]! - bdtr(k, n, p))).toBeLessThan(1e-11)
        expect(cdf[n]).toBeCloseTo(1, 10)
      }),
    )
  })

  test('holds for a hundred thousand readings', () => {
    const cdf = binomialCdf(100_000, 0.05)
    for (const k of [4_800, 5_000, 5_200])
      expect(Math.abs(cdf[k]! - incbet(100_000 - k, k + 1, 0.95))).toBeLessThan(1e-9)
  })
})

describe('the interval of a percentile between two readings', () => {
  test('has tails of at most half of what is left, by the incomplete beta function, and the next narrower one has not', () => {
    fc.assert(
      fc.property(counts, shares, fc.constantFrom(0.8, 0.9, 0.95, 0.99), (n, p, coverage) => {
        const tail = (1 - coverage) / 2
        // P(X(r) > Q) = P(B < r) = I(1-p; n-r+1, r)
        const above = (rank: number) => incbet(n - rank + 1, rank, 1 - p)
        // P(X(s) < Q) = P(B >= s) = I(p; s, n-s+1)
        const below = (rank: number) => incbet(rank, n - rank + 1, p)
        const { lower, upper, coverage: held } = quantileInterval(n, p, coverage)
        const slack = 1e-10
        if (lower !== null) expect(above(lower)).toBeLessThanOrEqual(tail + slack)
        if ((lower ?? 0) < n) expect(above((lower ?? 0) + 1)).toBeGreaterThan(tail - slack)
        if (upper !== null) expect(below(upper)).toBeLessThanOrEqual(tail + slack)
        if ((upper ?? n + 1) > 1) expect(below((upper ?? n + 1) - 1)).toBeGreaterThan(tail - slack)
        const lost = (lower === null ? 0 : above(lower)) + (upper === null ? 0 : below(upper))
        expect(Math.abs(held - (1 - lost))).toBeLessThan(slack)
        expect(held).toBeGreaterThanOrEqual(coverage - slack)
      }),
    )
  })

  test.each([
    [8, 0.9, 2, 7, 1 - (2 * 9) / 2 ** 8],
    [10, 0.95, 2, 9, 1 - (2 * 11) / 2 ** 10],
    [12, 0.95, 3, 10, 1 - (2 * (1 + 12 + 66)) / 2 ** 12],
    [20, 0.95, 6, 15, 0.9586],
  ])('of the median of %i at %d runs from the %ith to the %ith value', (n, coverage, lower, upper, held) => {
    const found = quantileInterval(n, 0.5, coverage)
    expect([found.lower, found.upper]).toEqual([lower, upper])
    expect(found.coverage).toBeCloseTo(held, 4)
  })

  test('of the 5th and of the 95th percentile has both ends from 59 values on, and not before', () => {
    expect(quantileInterval(58, 0.05, 0.9).lower).toBeNull()
    expect(quantileInterval(59, 0.05, 0.9).lower).toBe(1)
    expect(quantileInterval(58, 0.95, 0.9).upper).toBeNull()
    expect(quantileInterval(59, 0.95, 0.9).upper).toBe(59)
  })
})

test('the quantile is that of definition 8 of Hyndman and Fan: R’s quantile(1:10, type = 8), from memory', () => {
  const values = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]
  const found = [0, 0.25, 0.5, 0.75, 1].map((p) => quantileOf(values, p))
  const expected = [1, 2 + 11 / 12, 5.5, 8 + 1 / 12, 10]
  found.forEach((value, i) => expect(value).toBeCloseTo(expected[i]!, 12))
})

describe('Tukey’s fences on logarithms', () => {
  const values = fc.array(fc.double({ min: 0.02, max: 100, noNaN: true }), { minLength: 8, maxLength: 60 })
  test('name the same readings in milliwatts and in watts', () => {
    fc.assert(
      fc.property(values, (given) => {
        const sorted = given.toSorted((one, other) => one - other)
        const scaled = sorted.map((watts) => watts * 1000)
        expect(outliersOf(scaled).count).toBe(outliersOf(sorted).count)
      }),
    )
  })

  test('name no reading where all are equal, and never more than half of them', () => {
    expect(outliersOf(Array.from({ length: 8 }, () => 0.3)).count).toBe(0)
    fc.assert(
      fc.property(values, (given) => {
        const sorted = given.toSorted((one, other) => one - other)
        expect(outliersOf(sorted).count).toBeLessThanOrEqual(given.length / 2 + 1)
      }),
    )
  })
})
