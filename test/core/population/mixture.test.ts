import { describe, expect, test } from 'vitest'
import { deviceEnergy } from '../../../src/core/population/deviceEnergy.ts'
import { mixture } from '../../../src/core/population/mixture.ts'
import { exact } from '../../../src/core/quantity/exact.ts'
import { rectangularSum } from '../../../src/core/quantity/rectangularSum.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'

describe('a mixture', () => {
  /** Nothing with a probability of 0.6, else rectangular on 2 .. 4. */
  const x = mixture([
    { probability: 0.6, of: exact(0) },
    { probability: 0.4, of: rectangularSum(3, 1) },
  ])

  test('has the mean, the second moment and the ends of its parts together', () => {
    expect(x.mean).toBeCloseTo(1.2, 12)
    expect(x.meanSquare).toBeCloseTo(0.4 * (9 + 1 / 3), 12)
    expect([x.min, x.max]).toEqual([0, 4])
  })

  test('has quantiles that its distribution function gives back, single values included', () => {
    expect(x.quantile(0.05)).toBe(0)
    expect(x.quantile(0.6)).toBe(0)
    for (const p of [0.61, 0.8, 0.95]) expect(x.cdf(x.quantile(p))).toBeCloseTo(p, 9)
    expect(x.quantile(0.8)).toBeCloseTo(3, 9)
  })

  test('has an integral that reaches x - mean beyond its end', () => {
    expect(x.cdfIntegral(10)).toBeCloseTo(10 - 1.2, 12)
    expect(x.cdfIntegral(2)).toBeCloseTo(1.2, 12)
  })

  test('of one part is that part', () => {
    const only = rectangularSum(3, 1)
    expect(mixture([{ probability: 1, of: only }])).toBe(only)
  })
})

describe('the energy of a device', () => {
  const draw = { low: 1, typical: 2, high: 6 }

  test('of one mode is the typical draw’s own distribution, scaled by the hours', () => {
    const { distribution, cumulants } = deviceEnergy([{ draw, kwhPerW: 5 }])
    const watts = twoPieceLognormal(draw)
    expect(distribution.mean).toBeCloseTo(5 * watts.mean, 10)
    expect(cumulants.mean).toBeCloseTo(5 * watts.mean, 10)
    expect(cumulants.variance).toBeCloseTo(25 * (watts.meanSquare - watts.mean ** 2), 8)
    for (const p of [0.05, 0.5, 0.95]) expect(distribution.quantile(p)).toBeCloseTo(5 * watts.quantile(p), 10)
    expect(distribution.cdfIntegral(10)).toBeCloseTo(5 * watts.cdfIntegral(2), 10)
  })

  test('of several modes adds means and variances, and leaves out modes without hours', () => {
    const { distribution, cumulants } = deviceEnergy([
      { draw, kwhPerW: 5 },
      { draw: { low: 3, typical: 3, high: 3 }, kwhPerW: 2 },
      { draw, kwhPerW: 1 },
      { draw, kwhPerW: 0 },
    ])
    const watts = twoPieceLognormal(draw)
    const variance = watts.meanSquare - watts.mean ** 2
    expect(cumulants.mean).toBeCloseTo(6 * watts.mean + 6, 10)
    expect(cumulants.variance).toBeCloseTo(26 * variance, 8)
    expect(distribution.mean).toBeCloseTo(cumulants.mean, 10)
    expect(distribution.meanSquare - distribution.mean ** 2).toBeCloseTo(cumulants.variance, 8)
  })

  test('without any hours is nothing', () => {
    expect(deviceEnergy([{ draw, kwhPerW: 0 }]).distribution.max).toBe(0)
  })
})
