import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { estimateSurvey } from '../../../src/core/population/estimateSurvey.ts'
import type { Survey, SurveyedHome } from '../../../src/core/population/survey.ts'
import { cautions } from '../../helpers/cautions.ts'

const estimate = (survey: Omit<Survey, 'method'>) =>
  estimateSurvey({ method: 'survey', ...survey }, { coverageProbability: 0.95, cautions })

const valuesOf = (values: readonly number[], rest: Partial<SurveyedHome> = {}) =>
  values.map((value) => ({ value, ...rest }))

/** Five homes of which three were surveyed: 1, 2 and 6. By hand: mean 3, s^2 = (4 + 1 + 9)/2 = 7. */
const three = { strata: [{ name: 'all', homes: 5 }], homes: valuesOf([1, 2, 6]) }

describe('a simple random sample', () => {
  test('is expanded as by hand: total 15, variance 5^2 (1 - 3/5) 7/3, two degrees of freedom', () => {
    const found = estimate(three)
    expect(found.total.expected).toBe(15)
    expect(found.total.standardError).toBeCloseTo(Math.sqrt(25 * 0.4 * (7 / 3)), 9)
    expect(found.degreesOfFreedom).toBe(2)
    expect(found.total.high).toBeCloseTo(15 + 4.302652729749464 * found.total.standardError, 8)
    expect(found.mean.expected).toBe(3)
    expect(found.mean.standardError).toBeCloseTo(found.total.standardError / 5, 10)
  })

  test('has the design effect 1, with and without finite population correction', () => {
    expect(estimate(three).designEffect).toBeCloseTo(1, 10)
    expect(estimate({ ...three, finitePopulationCorrection: false }).designEffect).toBeCloseTo(1, 10)
  })

  test('of every home leaves no uncertainty, and no design effect to speak of', () => {
    const found = estimate({ strata: [{ name: 'all', homes: 3 }], homes: three.homes })
    expect(found.total).toEqual({ expected: 9, standardError: 0, low: 9, high: 9 })
    expect(found.designEffect).toBeNull()
  })

  test('says that its interval reaches below zero, which no draw can', () => {
    const found = estimate({ strata: [{ name: 'all', homes: 500 }], homes: valuesOf([0, 0, 9]) })
    expect(found.total.low).toBeLessThan(0)
    expect(found.warnings.map(({ code }) => code)).toEqual(['few-sampled', 'interval-below-zero'])
  })

  test('of many strata with few units each names five of them, and how many more there are', () => {
    const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g']
    const messageOf = (some: readonly string[]) =>
      estimate({
        strata: some.map((name) => ({ name, homes: 50 })),
        homes: some.flatMap((stratum) => valuesOf([1, 2], { stratum })),
      }).warnings.find(({ code }) => code === 'few-sampled')!.message
    expect(messageOf(names)).toContain('in: a, b, c, d, e and 2 more. Their')
    expect(messageOf(names.slice(0, 5))).toContain('in: a, b, c, d, e. Their')
  })

  test('carries the cautions of populations', () => {
    expect(estimate(three).cautions.map(({ code }) => code)).toEqual(['a-warning-for-all'])
  })
})

const sample = fc.array(fc.double({ min: 0, max: 1_000, noNaN: true }), { minLength: 2, maxLength: 12 })

describe('a stratified sample', () => {
  test('gives the same from single homes and from their summary', () => {
    fc.assert(
      fc.property(sample, sample, (flats, houses) => {
        const homes = [...valuesOf(flats, { stratum: 'flats' }), ...valuesOf(houses, { stratum: 'houses' })]
        const strata = [
          { name: 'flats', homes: 40 },
          { name: 'houses', homes: 25 },
        ]
        const summary = [flats, houses].map((values, i) => {
          const mean = values.reduce((sum, value) => sum + value, 0) / values.length
          const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
          return {
            ...strata[i]!,
            sample: { homes: values.length, mean, variance: squares / (values.length - 1) },
          }
        })
        const [single, summed] = [estimate({ strata, homes }), estimate({ strata: summary })]
        for (const key of ['expected', 'standardError', 'low', 'high'] as const) {
          expect(summed.total[key]).toBeCloseTo(single.total[key], 4)
          expect(summed.mean[key]).toBeCloseTo(single.mean[key], 5)
        }
        expect(summed.degreesOfFreedom).toBe(flats.length + houses.length - 2)
        if (single.designEffect !== null && summed.designEffect !== null)
          expect(summed.designEffect).toBeCloseTo(single.designEffect, 4)
      }),
    )
  })

  test('of strata that are alike within has a design effect below 1', () => {
    const found = estimate({
      strata: [
        { name: 'flats', homes: 50 },
        { name: 'houses', homes: 50 },
      ],
      homes: [
        ...valuesOf([10, 11, 12], { stratum: 'flats' }),
        ...valuesOf([50, 51, 52], { stratum: 'houses' }),
      ],
    })
    expect(found.designEffect).toBeGreaterThan(0)
    expect(found.designEffect).toBeLessThan(0.01)
  })
})

describe('whole clusters', () => {
  test('of one home each are homes drawn singly', () => {
    const clustered = estimate({
      strata: [{ name: 'all', clusters: 5, homes: 5 }],
      homes: three.homes.map((home, i) => ({ ...home, cluster: `c${i}` })),
    })
    const single = estimate(three)
    expect(clustered.total).toEqual(single.total)
    expect(clustered.mean.standardError).toBeCloseTo(single.mean.standardError, 10)
  })

  test('count as one unit each: clusters less strata are the degrees of freedom', () => {
    const homes = ['a', 'b', 'c'].flatMap((cluster, i) => valuesOf([i, i, i + 1, i + 2], { cluster }))
    const found = estimate({ strata: [{ name: 'all', clusters: 30 }], homes })
    expect(found.degreesOfFreedom).toBe(2)
    expect([found.sampledHomes, found.strata[0]!.sampledUnits]).toEqual([12, 3])
    expect(found.populationHomes).toBe(120)
  })

  test('of homes that are alike have a design effect above 1', () => {
    const homes = ['a', 'b', 'c', 'd'].flatMap((cluster, i) =>
      valuesOf([10 * i, 10 * i + 1, 10 * i + 2], { cluster }),
    )
    const { designEffect } = estimate({ strata: [{ name: 'all', clusters: 40 }], homes })
    expect(designEffect).toBeGreaterThan(2)
  })
})

describe('domains', () => {
  const homes = [
    { value: 4, domain: 'electric' },
    { value: 6, domain: 'electric' },
    { value: 1, domain: 'gas' },
    { value: 3, domain: 'gas' },
    { value: 2 },
  ]
  const found = estimate({ strata: [{ name: 'all', homes: 50 }], homes })

  test('are in the order of their names, whatever order the homes are in', () => {
    const homes = ['c', 'a', 'b', 'a', 'd', 'b'].map((domain, value) => ({ value, domain }))
    const { domains } = estimate({ strata: [{ name: 'all', homes: 40 }], homes })
    expect(domains.map(({ name }) => name)).toEqual(['a', 'b', 'c', 'd'])
  })

  test('are expanded over the whole sample: what is outside counts as zero', () => {
    const [electric] = found.domains
    expect(electric!.name).toBe('electric')
    expect(electric!.total.expected).toBe(100)
    // 4, 6, 0, 0, 0: mean 2, s^2 = (4 + 16 + 3 x 4)/4 = 8; 50^2 (1 - 5/50) 8/5
    expect(electric!.total.standardError).toBeCloseTo(Math.sqrt(2500 * 0.9 * (8 / 5)), 9)
    expect(electric!.homes.expected).toBe(20)
  })

  test('have a mean that is a ratio, with the variance of its residuals', () => {
    const [electric] = found.domains
    expect(electric!.mean.expected).toBe(5)
    // residuals -1, 1, 0, 0, 0: s^2 = 1/2; 50^2 (1 - 5/50) (1/2)/5 over 20^2
    expect(electric!.mean.standardError).toBeCloseTo(Math.sqrt((2500 * 0.9 * 0.1) / 400), 9)
  })

  test('add up with what is in none', () => {
    const sum = found.domains.reduce((all, { total }) => all + total.expected, 0)
    expect(sum + 10 * 2).toBe(found.total.expected)
  })
})

describe('the ratio estimate', () => {
  test('has no uncertainty where the value is in proportion to the auxiliary quantity', () => {
    const homes = [1, 2, 5].map((size) => ({ value: 3 * size, auxiliary: size }))
    const { ratio } = estimate({
      strata: [{ name: 'all', homes: 40 }],
      homes,
      ratio: { auxiliaryTotal: 100 },
    })
    expect(ratio!.total.expected).toBe(300)
    expect(ratio!.total.standardError).toBeCloseTo(0, 10)
  })

  test('is the same from a summary with its covariance', () => {
    const pairs = [
      [2, 1],
      [5, 2],
      [9, 4],
      [8, 5],
    ] as const
    const strata = [{ name: 'all', homes: 40 }]
    const ratio = { auxiliaryTotal: 150 }
    const single = estimate({
      strata,
      homes: pairs.map(([value, auxiliary]) => ({ value, auxiliary })),
      ratio,
    })
    // Means 6 and 3; s_y^2 = 30/3, s_x^2 = 10/3, s_xy = (8 + 1 + 3 + 4)/3.
    const summed = estimate({
      strata: [
        {
          name: 'all',
          homes: 40,
          sample: {
            homes: 4,
            mean: 6,
            variance: 10,
            auxiliary: { mean: 3, variance: 10 / 3, covariance: 16 / 3 },
          },
        },
      ],
      ratio,
    })
    expect(summed.ratio!.total.expected).toBe(300)
    expect(summed.ratio!.total.standardError).toBeCloseTo(single.ratio!.total.standardError, 8)
    expect(summed.ratio!.total.standardError).toBeGreaterThan(1)
  })

  test('differs between its two forms by known over estimated total', () => {
    const homes = [
      { value: 2, auxiliary: 1 },
      { value: 5, auxiliary: 2 },
      { value: 9, auxiliary: 4 },
    ]
    const by = (standardErrorForm: 'with-mean-factor' | 'without-mean-factor') =>
      estimate({
        strata: [{ name: 'all', homes: 30 }],
        homes,
        ratio: { auxiliaryTotal: 140, standardErrorForm },
      }).ratio!.total.standardError
    expect(by('with-mean-factor') / by('without-mean-factor')).toBeCloseTo(140 / 70, 9)
  })
})
