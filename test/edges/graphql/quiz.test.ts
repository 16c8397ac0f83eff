import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { QUIZ_REQUESTS } from '../../../src/edges/rest/quiz/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const QUIZ = `query ($acceptLanguage: String, $group: Group, $categories: [String!]) {
  quiz(acceptLanguage: $acceptLanguage, group: $group, categories: $categories)${everyFieldOf('Quiz')}
}`
const ESTIMATE = `query ($input: QuizAnswersInput!, $acceptLanguage: String) {
  quizEstimate(input: $input, acceptLanguage: $acceptLanguage)${everyFieldOf('QuizResult')}
}`

let app: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  app = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => app.close())

const inCapitals = (value: string) => value.toUpperCase().replaceAll('-', '_')
const READINGS: Readonly<Record<string, string>> = { 'apparent-power': 'apparentPower' }
interface Answer {
  readonly hours?: string
  readonly reading?: { readonly kind: string }
  readonly readingMode?: string
}
/** The answers in GraphQL's spelling. */
const forGraphql = ({ answers, ...rest }: { readonly answers: readonly Answer[] }) => ({
  ...rest,
  answers: answers.map(({ hours, reading: { kind, ...figures } = { kind: '' }, readingMode, ...answer }) => ({
    ...answer,
    ...(hours !== undefined && { hours: inCapitals(hours) }),
    ...(kind !== '' && { reading: { [READINGS[kind] ?? kind]: figures } }),
    ...(readingMode !== undefined && { readingMode: inCapitals(readingMode) }),
  })),
})

describe('quiz', () => {
  test.each(['en', 'de-CH, en;q=0.5'])(
    'has every word of REST, in the languages %s',
    async (acceptLanguage) => {
      const { quiz } = await ask(app, QUIZ, { acceptLanguage })
      const { body } = await app.send.get('/v1/quiz').set('accept-language', acceptLanguage).expect(200)
      expect(quiz).toEqual(answerOf(body, 'Quiz'))
    },
  )

  test('asks for a part on request, and in the language of the catalogue where none is said', async () => {
    const { quiz } = await ask(app, QUIZ, { group: 'KITCHEN', categories: ['freezer', 'television'] })
    expect(quiz.language).toBe('en')
    expect(
      quiz.groups.map(({ questions }: { questions: { category: string }[] }) => questions),
    ).toMatchObject([[{ category: 'freezer' }]])
  })

  test('a category that is not asked for is an error with the nearest', async () => {
    const { errors } = await refused(app, QUIZ, { categories: ['fridges'] })
    expect(errors[0].extensions.reason).toBe('unknown-category')
  })
})

describe('quizEstimate', () => {
  test.each(Object.entries(QUIZ_REQUESTS))(
    'has the figures of REST for the request %s',
    async (_name, { value }) => {
      const { quizEstimate } = await ask(app, ESTIMATE, { input: forGraphql(value), acceptLanguage: 'de' })
      const { body } = await app.send
        .post('/v1/quiz/answers')
        .set('accept-language', 'de')
        .send(value)
        .expect(200)
      expect(quizEstimate).toEqual(answerOf(body, 'QuizResult'))
    },
  )

  test('names every fault at once, at the paths of its input', async () => {
    const { errors } = await refused(app, ESTIMATE, {
      input: {
        catalogueRevision: 1,
        answers: [
          { category: 'router', count: 1, hours: 'RARELY' },
          { category: 'television', count: 100, reading: { apparentPower: { voltAmperes: -1 } } },
        ],
      },
    })
    expect(
      errors[0].extensions.errors
        .map(({ pointer, code }: { pointer: string; code: string }) => `${pointer} ${code}`)
        .sort(),
    ).toEqual([
      '/answers/0/hours hours-not-asked',
      '/answers/1/count too-big',
      '/answers/1/reading/apparentPower/voltAmperes too-small',
    ])
  })
})
