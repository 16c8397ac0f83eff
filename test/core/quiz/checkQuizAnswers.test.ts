import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { checkQuizAnswers } from '../../../src/core/quiz/checkQuizAnswers.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const found = (raw: unknown) =>
  checkQuizAnswers(raw, catalogue, testSettings).map(({ pointer, code }) => `${pointer} ${code}`)
const ofAnswer = (answer: object) => found({ answers: [{ count: 1, ...answer }] })

describe('answers', () => {
  test('to what was asked have no fault', () => {
    const answers = [
      { category: 'television', count: 1, hours: 'rarely', reading: {}, readingMode: 'standby' },
      { category: 'router', count: 0, hours: 'usual' },
    ]
    expect(found({ answers, tariffCode: 'flat', emissionFactorCode: 'grid' })).toEqual([])
  })

  test('that can’t be read have no fault of the trade: their shape says so already', () => {
    for (const raw of [null, 'answers', [], {}, { answers: 'none' }, { answers: [] }, { answers: [{}, 3] }])
      expect(found(raw)).toEqual([])
  })

  test('have to count at least one device', () => {
    const none = { category: 'television', count: 0 }
    expect(found({ answers: [none, none] })).toEqual(['/answers nothing-counted'])
    expect(found({ answers: [none, { ...none, count: 1 }] })).toEqual([])
  })

  test('name a category by its code, and none that is retired', () => {
    expect(ofAnswer({ category: 'telly' })).toEqual(['/answers/0/category unknown-category'])
    expect(ofAnswer({ category: 'cassette-deck' })).toEqual(['/answers/0/category unknown-category'])
  })

  test('name a tariff and a factor that are there', () => {
    expect(found({ tariffCode: 'night', emissionFactorCode: 'moon' })).toEqual([
      '/tariffCode unknown-code',
      '/emissionFactorCode unknown-code',
    ])
  })
})

describe('hours', () => {
  test('are not asked of what is on day and night, or must stay powered; the usual ones may be said', () => {
    for (const category of ['router', 'freezer']) {
      expect(ofAnswer({ category, hours: 'rarely' })).toEqual(['/answers/0/hours hours-not-asked'])
      expect(ofAnswer({ category, hours: 'usual' })).toEqual([])
    }
    expect(ofAnswer({ category: 'television', hours: 'rarely' })).toEqual([])
  })
})

describe('the mode of a reading', () => {
  test('goes with a reading', () => {
    expect(ofAnswer({ category: 'television', readingMode: 'standby' })).toEqual([
      '/answers/0/readingMode without-reading',
    ])
  })

  test('is one that is asked for', () => {
    const answer = { category: 'television', reading: {} }
    expect(ofAnswer({ ...answer, readingMode: 'idle' })).toEqual(['/answers/0/readingMode mode-not-asked'])
    expect(ofAnswer({ ...answer, readingMode: 'standby' })).toEqual([])
  })
})
