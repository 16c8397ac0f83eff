import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { checkAgainstLimit } from '../../../src/core/limits/checkAgainstLimit.ts'
import { checkLimitQuestion } from '../../../src/core/limits/checkLimitQuestion.ts'
import type { LimitQuestion } from '../../../src/core/limits/limitCheck.ts'
import { evaluateReading } from '../../../src/core/readings/evaluateReading.ts'
import { aLimit, limits } from '../../helpers/limits.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const check = (question: LimitQuestion) => checkAgainstLimit(question, catalogue, testSettings)
const accuracy = { percentOfReading: 1, counts: 2, resolution: 0.01 }
const television = {
  jurisdiction: 'EU',
  mode: 'standby',
  placedOnMarket: '2022-03-01',
  showsStatus: false,
} as const
const exactly = (watts: number) => ({ expected: watts, low: watts, high: watts })

describe('a reading against the limit of its year', () => {
  test('has the interval that the evaluation of the reading gives', () => {
    const reading = { kind: 'power', watts: 0.4, accuracy } as const
    const { powerW, confidence } = check({ ...television, reading, coverageProbability: 0.95 })
    const evaluated = evaluateReading({ reading, coverageProbability: 0.95 }, catalogue, testSettings)
    expect(powerW).toEqual(evaluated.powerW)
    expect(confidence).toBe('measured')
  })

  test.each([
    [0.4, 'below', 'wholly-below'],
    [0.49, 'cannot-be-told', 'interval-crosses-limit'],
    [0.55, 'cannot-be-told', 'within-verification-tolerance'],
    [0.7, 'above', 'wholly-above'],
  ] as const)('of %d W, read to 1 %% and 0.02 W, is: %s', (watts, verdict, code) => {
    const found = check({ ...television, reading: { kind: 'power', watts, accuracy } })
    expect([found.verdict, found.reason.code]).toEqual([verdict, code])
    expect(found.compared.map(({ limit }) => limit.code)).toEqual(['standby'])
  })

  test('of a current without a power factor cannot be told where volts times amperes would say above', () => {
    const reading = {
      kind: 'current',
      amperes: 0.005,
      accuracy: { ...accuracy, resolution: 0.0001 },
    } as const
    const found = check({ ...television, reading, category: 'television' })
    expect(found.verdict).toBe('cannot-be-told')
    expect(found.confidence).toBe('partly-measured')
    expect(found.powerW.high).toBeLessThan(230 * 0.005)
  })

  test('says in every answer that it is no compliance test', () => {
    const questions = [
      { ...television, powerW: exactly(0.1) },
      { ...television, placedOnMarket: '1999', powerW: exactly(9) },
      { limitCode: 'buy-standby', powerW: exactly(0.1) },
    ]
    for (const question of questions)
      expect(check(question).notice).toMatch(/^A household reading is no compliance test\./)
  })

  test('has no verdict where no limit applies, and says so', () => {
    const found = check({ ...television, placedOnMarket: '1999', powerW: exactly(9) })
    expect([found.verdict, found.reason.code, found.compared]).toEqual([
      'cannot-be-told',
      'no-limit-applies',
      [],
    ])
  })

  test('is the verdict of all limits that may apply where they agree, and none where they do not', () => {
    const open = { jurisdiction: 'EU', mode: 'standby', placedOnMarket: '2022' } as const
    const below = check({ ...open, powerW: exactly(0.3) })
    expect([below.verdict, below.compared.length]).toEqual(['below', 2])
    expect(below.reason.message).toContain('the limit of 0.5 W')
    const above = check({ ...open, powerW: exactly(1.5) })
    expect(above.verdict).toBe('above')
    expect(above.reason.message).toContain('the limit of 1 W')
    const split = check({ ...open, powerW: exactly(0.8) })
    expect([split.verdict, split.reason.code]).toEqual(['cannot-be-told', 'limits-disagree'])
    expect(split.compared.map(({ verdict }) => verdict)).toEqual(['above', 'below'])
  })

  test('names the strictest of the limits that agree, whatever the order of their codes', () => {
    const settings = {
      ...testSettings,
      limits: new Map(
        [
          aLimit({ code: 'a', limitW: 0.5 }),
          aLimit({ code: 'b', limitW: 0.3 }),
          aLimit({ code: 'c', limitW: 2 }),
        ].map((limit) => [limit.code, limit]),
      ),
    }
    const reasonOf = (watts: number) =>
      checkAgainstLimit({ ...television, powerW: exactly(watts) }, catalogue, settings).reason.message
    expect(reasonOf(0.1)).toContain('the limit of 0.3 W')
    expect(reasonOf(5)).toContain('the limit of 2 W')
    const turned = {
      ...settings,
      limits: new Map(
        [aLimit({ code: 'a', limitW: 2 }), aLimit({ code: 'b' })].map((one) => [one.code, one]),
      ),
    }
    const above = checkAgainstLimit({ ...television, powerW: exactly(5) }, catalogue, turned)
    expect(above.reason.message).toContain('the limit of 2 W')
  })

  test('carries the cautions of limit checks', () => {
    const { cautions } = check({ ...television, powerW: exactly(0.1) })
    expect(cautions).toEqual([
      { code: 'a-warning-for-all', message: 'Open nothing.', source: 'A norm, chapter 3' },
    ])
  })
})

describe('a faulty question', () => {
  const faultsOf = (raw: unknown) =>
    checkLimitQuestion(raw, catalogue, limits).map(({ pointer, code }) => `${pointer} ${code}`)

  test('is refused where neither reading nor power is there, or both are', () => {
    expect(faultsOf(television)).toEqual(['/reading required'])
    const both = { ...television, reading: { kind: 'power', watts: 1 }, powerW: exactly(1) }
    expect(faultsOf(both)).toEqual(['/powerW given-twice'])
  })

  test('is refused where nothing finds the limit, or its code and more are given', () => {
    expect(faultsOf({ powerW: exactly(1) })).toEqual([
      '/jurisdiction required',
      '/mode required',
      '/placedOnMarket required',
    ])
    expect(
      faultsOf({ powerW: exactly(1), limitCode: 'standby', mode: 'standby', showsStatus: true }),
    ).toEqual(['/showsStatus given-twice'])
    expect(faultsOf({ powerW: exactly(1), limitCode: 'nowhere' })).toEqual(['/limitCode unknown-code'])
  })

  test('is left to its shape where its power has no three figures', () => {
    for (const powerW of [
      { low: 2, high: 1 },
      { low: 2, expected: '1', high: 1 },
      { low: 2, expected: 1 },
    ])
      expect(faultsOf({ ...television, powerW })).toEqual([])
    expect(faultsOf({ ...television, powerW: { low: 2, expected: 1, high: 3 } })).toEqual([
      '/powerW range-out-of-order',
    ])
  })

  test('is refused where it says what has no meaning in the mode', () => {
    expect(faultsOf({ ...television, ratedOutputW: 5, powerW: exactly(1) })).toEqual([
      '/ratedOutputW not-of-this-mode',
    ])
  })

  test('is refused where the ends of the power fall, or the reading names an unknown meter or category', () => {
    expect(faultsOf({ ...television, powerW: { low: 2, expected: 1, high: 3 } })).toEqual([
      '/powerW range-out-of-order',
    ])
    const reading = { kind: 'power', watts: 1, meterId: 'm' }
    expect(faultsOf({ ...television, reading, category: 'televisoin' })).toEqual([
      '/category unknown-category',
      '/reading/meterId unknown-meter',
    ])
  })

  test.each([null, [], { powerW: 'x' }, { reading: 5, mode: 3 }])('does not fall over %j', (raw) => {
    expect(checkLimitQuestion(raw, catalogue, limits)).toBeInstanceOf(Array)
  })
})
