import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareLimit } from '../../../src/core/limits/compareLimit.ts'
import { aLimit } from '../../helpers/limits.ts'

/** 0.5 W with a tolerance of 0.1 W. */
const half = aLimit({ code: 'half' })
const between = (low: number, high: number) => ({ expected: (low + high) / 2, low, high })
const judged = (low: number, high: number, limit = half) => {
  const { verdict, reason } = compareLimit(limit, between(low, high))
  return [verdict, reason.code]
}

describe('a power against a limit', () => {
  test('is below where its whole interval is, the limit itself included', () => {
    expect(judged(0.3, 0.5)).toEqual(['below', 'wholly-below'])
  })

  test('cannot be told where its interval crosses the limit, however little', () => {
    expect(judged(0.3, 0.501)).toEqual(['cannot-be-told', 'interval-crosses-limit'])
    expect(judged(0.5, 2)).toEqual(['cannot-be-told', 'interval-crosses-limit'])
  })

  test('cannot be told where it is above, but not wholly above what an authority lets pass', () => {
    expect(judged(0.51, 0.59)).toEqual(['cannot-be-told', 'within-verification-tolerance'])
    expect(judged(0.6, 0.9)).toEqual(['cannot-be-told', 'within-verification-tolerance'])
  })

  test('is above where its whole interval is above limit and tolerance', () => {
    expect(judged(0.601, 0.7)).toEqual(['above', 'wholly-above'])
  })

  test('takes a tolerance in percent of the limit, and none where none is known', () => {
    const percent = aLimit({ code: 'p', limitW: 8, toleranceW: null, tolerancePercent: 10 })
    expect(compareLimit(percent, between(8.9, 9)).aboveFromW).toBe(8.8)
    expect(judged(8.81, 9, percent)).toEqual(['above', 'wholly-above'])
    const none = aLimit({ code: 'n', toleranceW: null })
    expect(judged(0.51, 0.6, none)).toEqual(['above', 'wholly-above'])
    expect(compareLimit(none, between(0.51, 0.6)).reason.message).toContain(
      'no verification tolerance is known',
    )
  })

  test('takes the larger tolerance where both are given', () => {
    const both = aLimit({ code: 'b', limitW: 8, toleranceW: 0.1, tolerancePercent: 10 })
    expect(compareLimit(both, between(1, 2)).aboveFromW).toBe(8.8)
  })

  test('says the figures and the regulation in words', () => {
    expect(compareLimit(half, between(0.51, 0.59)).reason.message).toBe(
      'The power, between 0.51 W and 0.59 W, is above the limit of 0.5 W in A regulation for the tests, but an authority’s test of one device may come out as high as 0.6 W, and the reading does not lie wholly above that.',
    )
  })

  test('never turns from above to below when the power rises', () => {
    const order = { below: 0, 'cannot-be-told': 1, above: 2 }
    const watts = fc.double({ min: 0, max: 2, noNaN: true })
    fc.assert(
      fc.property(watts, watts, watts, (low, wide, more) => {
        const before = compareLimit(half, between(low, low + wide)).verdict
        const after = compareLimit(half, between(low + more, low + wide + more)).verdict
        expect(order[after]).toBeGreaterThanOrEqual(order[before])
      }),
    )
  })
})
