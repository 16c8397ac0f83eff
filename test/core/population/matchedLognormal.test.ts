import { describe, expect, test } from 'vitest'
import { matchedLognormal } from '../../../src/core/population/matchedLognormal.ts'

/** Moments of a distribution by the mean of its quantiles, a million of them. */
function momentsOf(quantile: (p: number) => number) {
  const count = 1_000_000
  const values = Float64Array.from({ length: count }, (_, i) => quantile((i + 0.5) / count))
  const mean = values.reduce((sum, value) => sum + value, 0) / count
  const central = (power: number) => values.reduce((sum, value) => sum + (value - mean) ** power, 0) / count
  return { mean, variance: central(2), third: central(3) }
}

describe('a matched log-normal', () => {
  test.each([0.05, 0.4, 1.2, -0.05, -0.4, -1.2])(
    'has the mean, variance and skewness that were asked for: %d',
    (skewness) => {
      const asked = { mean: 20, variance: 4, third: skewness * 8 }
      const found = momentsOf((p) => matchedLognormal(asked).quantile(p))
      expect(found.mean).toBeCloseTo(20, 4)
      expect(found.variance).toBeCloseTo(4, 2)
      expect(found.third / 8).toBeCloseTo(skewness, 1)
    },
  )

  test.each([0.5, -0.5])(
    'has an integral that grows by its distribution function: skewness %d',
    (skewness) => {
      const x = matchedLognormal({
        mean: 20,
        variance: 4,
        third: skewness * 8,
      })
      for (const at of [15, 18, 20, 22, 26]) {
        expect((x.cdfIntegral(at + 1e-4) - x.cdfIntegral(at - 1e-4)) / 2e-4).toBeCloseTo(x.cdf(at), 5)
        expect(x.quantile(x.cdf(at))).toBeCloseTo(at, 6)
      }
      expect(x.cdfIntegral(60)).toBeCloseTo(60 - x.mean, 6)
      expect(x.cdfIntegral(-1)).toBe(0)
    },
  )

  test('without variance is exact', () => {
    expect(matchedLognormal({ mean: 3, variance: 0, third: 0 })).toMatchObject({ min: 3, max: 3, mean: 3 })
  })

  test.each([0.5, -0.5])('has nothing below zero, however near its mean is: skewness %d', (skewness) => {
    const x = matchedLognormal({ mean: 1, variance: 4, third: skewness * 8 })
    expect([x.min, x.cdf(-1e-9), x.cdfIntegral(-1), x.quantile(1e-6)]).toEqual([0, 0, 0, 0])
    // What is cut off sits at zero itself.
    expect(x.cdf(0)).toBeGreaterThan(0.2)
  })
})
