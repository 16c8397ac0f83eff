import { describe, expect, test } from 'vitest'
import { checkSurvey } from '../../../src/core/population/checkSurvey.ts'

const faultsOf = (survey: object) =>
  checkSurvey({ method: 'survey', ...survey }).map(({ pointer, code }) => `${pointer} ${code}`)
const two = [{ value: 1 }, { value: 2 }]

describe('checkSurvey', () => {
  test('lets a sound survey pass', () => {
    expect(faultsOf({ strata: [{ name: 'all', homes: 9 }], homes: two })).toEqual([])
    const homes = [
      { cluster: 'a', value: 1 },
      { cluster: 'b', value: 2 },
    ]
    expect(faultsOf({ strata: [{ name: 'all', clusters: 9 }], homes })).toEqual([])
  })

  test('refuses fewer than two sampled homes in a stratum, and says what to do', () => {
    const faults = checkSurvey({
      strata: [
        { name: 'flats', homes: 90, sample: { homes: 1, mean: 3, variance: 0 } },
        { name: 'houses', homes: 50 },
        { name: 'huts', homes: 20 },
      ],
      homes: [
        { stratum: 'houses', value: 4 },
        { stratum: 'houses', value: 5 },
      ],
    })
    expect(faults.map(({ pointer, code }) => `${pointer} ${code}`)).toEqual([
      '/strata/0/sample/homes too-few-sampled',
      '/strata/2 too-few-sampled',
    ])
    expect(faults[0]!.message).toBe(
      'The stratum "flats" has 1 sampled homes; its spread cannot be known from fewer than two. Put it together with a stratum that is like it, or sample more of it.',
    )
  })

  test('refuses fewer than two sampled clusters, however many homes they hold', () => {
    const homes = [1, 2, 3].map((value) => ({ cluster: 'a', value }))
    expect(faultsOf({ strata: [{ name: 'all', clusters: 9 }], homes })).toEqual(['/strata/0 too-few-sampled'])
  })

  test('refuses a sample that is larger than the population, in homes and in clusters', () => {
    expect(faultsOf({ strata: [{ name: 'all', homes: 1 }], homes: two })).toEqual([
      '/strata/0 more-than-population',
    ])
    const homes = ['a', 'b', 'c'].map((cluster) => ({ cluster, value: 1 }))
    expect(faultsOf({ strata: [{ name: 'all', clusters: 2 }], homes })).toEqual([
      '/strata/0 more-than-population',
    ])
    expect(faultsOf({ strata: [{ name: 'all', clusters: 9, homes: 2 }], homes })).toEqual([
      '/strata/0 more-than-population',
    ])
  })

  test('names every fault at once, by pointer', () => {
    expect(
      faultsOf({
        strata: [
          { name: 'a', homes: 9, sample: { homes: 3, mean: 1, variance: 1 } },
          { name: 'a', homes: 9, sample: { homes: 3, mean: 1, variance: 1 } },
          { name: 'b', homes: 9 },
          { name: 'c' },
        ],
        homes: [
          { stratum: 'a', value: 1 },
          { stratum: 'b', value: 1, domain: 'x' },
          { stratum: 'b', value: 1, cluster: 'k' },
          { value: 3 },
          { stratum: 'zz', value: 4 },
        ],
        ratio: { auxiliaryTotal: 5 },
      }),
    ).toEqual([
      '/strata/0/sample given-twice',
      '/strata/0/sample summary-of-domains',
      '/strata/0/sample/auxiliary required',
      '/strata/1/name name-twice',
      '/strata/1/sample given-twice',
      '/strata/1/sample summary-of-domains',
      '/strata/1/sample/auxiliary required',
      '/strata/3/homes required',
      '/strata/3 too-few-sampled',
      '/homes/0/auxiliary required',
      '/homes/1/auxiliary required',
      '/homes/2/cluster clusters-unknown',
      '/homes/2/auxiliary required',
      '/homes/3/stratum required',
      '/homes/3/auxiliary required',
      '/homes/4/stratum unknown-stratum',
      '/homes/4/auxiliary required',
    ])
  })

  test('asks for clusters of every stratum and home where they are given for one', () => {
    expect(
      faultsOf({
        strata: [
          { name: 'a', clusters: 9 },
          { name: 'b', homes: 9, sample: { homes: 3, mean: 1, variance: 1 } },
        ],
        homes: [
          { stratum: 'a', cluster: 'x', value: 1 },
          { stratum: 'a', cluster: 'y', value: 1 },
          { stratum: 'a', value: 1 },
        ],
      }),
    ).toEqual([
      '/strata/1/clusters required',
      '/strata/1/sample summary-of-clusters',
      '/homes/2/cluster required',
    ])
  })

  test('refuses a ratio to a quantity that is nowhere', () => {
    const homes = two.map((home) => ({ ...home, auxiliary: 0 }))
    expect(faultsOf({ strata: [{ name: 'all', homes: 9 }], homes, ratio: { auxiliaryTotal: 4 } })).toEqual([
      '/ratio auxiliary-zero',
    ])
  })

  test.each([null, 'text', { strata: 'none', homes: 7 }, { strata: [null, 3], homes: [[]] }])(
    'does not fall over %j',
    (raw) => {
      expect(checkSurvey(raw)).toBeInstanceOf(Array)
    },
  )

  test('finds the auxiliary quantity in a summary, too', () => {
    const summary = (mean: number) => ({ homes: 3, mean: 1, variance: 1, auxiliary: { mean, variance: 1 } })
    const withMean = (mean: number) =>
      faultsOf({ strata: [{ name: 'all', homes: 9, sample: summary(mean) }], ratio: { auxiliaryTotal: 4 } })
    expect(withMean(2)).toEqual([])
    expect(withMean(0)).toEqual(['/ratio auxiliary-zero'])
  })

  test('leaves what can’t be read to its shape', () => {
    expect(faultsOf({ strata: [{ name: 'all', homes: 9, sample: { homes: 'some' } }] })).toEqual([])
    expect(
      faultsOf({ strata: [{ homes: 9, sample: { homes: 3 } }], homes: [{ stratum: '', value: 1 }] }),
    ).toEqual(['/homes/0/stratum unknown-stratum'])
  })
})
