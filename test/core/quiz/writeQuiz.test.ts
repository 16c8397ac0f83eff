import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import { householdOfAnswers } from '../../../src/core/quiz/householdOfAnswers.ts'
import type { QuizFilter } from '../../../src/core/quiz/quiz.ts'
import { resultOfAnswers } from '../../../src/core/quiz/resultOfAnswers.ts'
import { writeQuiz } from '../../../src/core/quiz/writeQuiz.ts'
import { shippedLanguages } from '../../helpers/shippedLanguages.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

/** Labels of its own only for the television; the other kinds go by the catalogue's names. */
const shipped = shippedLanguages.get('de')!
const spoken = { ...shipped, categories: { television: shipped.categories['television']! } }
const catalogue = catalogueOf(4, testCategories)
const words = { spoken, catalogueLanguage: 'en' }
const quiz = (filter?: QuizFilter) =>
  writeQuiz(
    catalogue,
    spoken,
    { known: new Map([['de', spoken]]), catalogueLanguage: 'en', fingerprint: 'f' },
    filter,
  )
const asked = (filter?: QuizFilter) =>
  quiz(filter).groups.map(({ group, questions }) => [group, questions.map(({ category }) => category)])

describe('the questions of a quiz', () => {
  test('are all categories in use, group by group, by their labels; a retired one is not asked', () => {
    const codes = asked().flatMap(([, categories]) => categories as string[])
    expect(codes.toSorted()).toEqual(
      testCategories.flatMap(({ code, retired }) => (retired ? [] : [code])).toSorted(),
    )
    expect(codes).not.toContain('cassette-deck')
  })

  test('are those of one group or of some categories where the filter says so, and groups without any are left out', () => {
    expect(asked({ group: 'audio' })).toEqual([['audio', ['amplifier']]])
    expect(asked({ categories: ['router', 'amplifier', 'cassette-deck'] }).toSorted()).toEqual([
      ['audio', ['amplifier']],
      ['networking', ['router']],
    ])
    expect(asked({ group: 'audio', categories: ['router'] })).toEqual([])
  })

  test('say in the language that figures are invented only where those of a question are', () => {
    expect(quiz()).toMatchObject({ sampleData: true, sampleDataNotice: spoken.texts.sampleData })
    expect(quiz({ categories: ['router'] })).toMatchObject({ sampleData: false, sampleDataNotice: null })
  })

  test('go by the language’s own label, or by the catalogue’s name and language', () => {
    const labels = quiz().groups.flatMap(({ questions }) =>
      questions.map(({ category, label, labelLanguage }) => [category, label, labelLanguage]),
    )
    expect(labels).toContainEqual(['television', spoken.categories.television.label, 'de'])
    expect(labels).toContainEqual(['router', 'Router', 'en'])
  })
})

describe('answers', () => {
  const answers = [{ category: 'router', count: 1 }]
  const published = {
    ...testSettings,
    tariffs: new Map([['flat', { ...testSettings.tariffs.get('flat')!, sampleData: false }]]),
  }

  test('carry revisions and codes into the household, and none that were not given', () => {
    const codes = { overlayRevision: 2, tariffCode: 'flat', emissionFactorCode: 'grid' }
    const household = householdOfAnswers({ catalogueRevision: 4, ...codes, answers }, catalogue, words)
    expect(household).toMatchObject({ catalogueRevision: 4, ...codes })
    const bare = householdOfAnswers({ catalogueRevision: 4, answers }, catalogue, words)
    expect(Object.keys(bare)).toEqual(['catalogueRevision', 'devices'])
  })

  test('that were not checked are refused', () => {
    const unheardOf = [{ category: 'loom', count: 1 }]
    expect(() => householdOfAnswers({ catalogueRevision: 4, answers: unheardOf }, catalogue, words)).toThrow(
      expect.objectContaining({ code: 'answers-not-checked' }),
    )
  })

  test('have a notice of invented figures only where there are any', () => {
    const noticeOf = (settings: typeof testSettings) => {
      const household = householdOfAnswers({ catalogueRevision: 4, answers }, catalogue, words)
      const result = resultOfAnswers(household, estimate(household, catalogue, settings), catalogue, words)
      return [result.sampleData, result.sampleDataNotice]
    }
    expect(noticeOf(testSettings)).toEqual([true, spoken.texts.sampleData])
    expect(noticeOf(published)).toEqual([false, null])
  })
})
