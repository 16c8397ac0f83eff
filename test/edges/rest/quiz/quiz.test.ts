import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { quizLanguagesOf, readConfig, settingsOf } from '../../../../src/config.ts'
import { exampleQuizResult, QUIZ_REQUESTS } from '../../../../src/edges/rest/quiz/examples.ts'
import { exampleQuiz } from '../../../../src/edges/rest/quiz/quizExample.ts'
import { readSeed } from '../../../../src/readSeed.ts'
import { quizSchema } from '../../../../src/schemas/quiz.ts'
import { quizResultSchema } from '../../../../src/schemas/quizResult.ts'
import { expectProblem, faultsOf } from '../../../helpers/expectProblem.ts'
import { asAdmin, issueTestKey, bearer } from '../../../helpers/keys.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'

const seed = await readSeed()
let service: TestApp
beforeAll(async () => {
  service = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => service.close())

const get = (query = '', headers: Record<string, string> = {}) =>
  service.send.get(`/v1/quiz${query}`).set(headers)
const quiz = async (query = '', headers: Record<string, string> = {}) =>
  quizSchema.parse((await get(query, headers).expect(200)).body)
const answer = (body: object, headers: Record<string, string> = {}) =>
  service.send.post('/v1/quiz/answers').set(headers).send(body)
const german = { 'accept-language': 'de' }

describe('GET /v1/quiz', () => {
  test('answers its example', async () => {
    expect(await quiz('?categories=refrigerator,television')).toEqual(exampleQuiz)
  })

  test('asks for every category in use, each once, in its group', async () => {
    const { groups, catalogueRevision } = await quiz()
    expect(catalogueRevision).toBe(1)
    const asked = groups.flatMap(({ group, questions }) =>
      questions.map(({ category }) => `${group} ${category}`),
    )
    expect(asked.sort()).toEqual(seed.categories.map(({ group, code }) => `${group} ${code}`).sort())
  })

  test('a retired category is not asked for', async () => {
    const small = await testApp()
    const { groups } = (await small.send.get('/v1/quiz').expect(200)).body as typeof exampleQuiz
    await small.close()
    const codes = groups.flatMap(({ questions }) => questions.map(({ category }) => category))
    expect(codes).toContain('amplifier')
    expect(codes).not.toContain('cassette-deck')
  })

  test('one part of the home, or some categories, on request', async () => {
    const { groups } = await quiz('?group=laundry')
    expect(groups.map(({ group }) => group)).toEqual(['laundry'])
    expect(groups[0]!.questions.length).toBeGreaterThan(3)
    expectProblem(await get('?categories=television,fridges'), 404, 'unknown-category')
    expect(
      faultsOf(expectProblem(await get('?group=cellar&categories=a,,b&x=1'), 400, 'faulty-query')),
    ).toEqual(['query /categories invalid-format', 'query /group invalid-value', 'query /x unknown-field'])
  })

  test('sample data is labelled: on the quiz, in words, and on the question', async () => {
    const { sampleData, sampleDataNotice, groups } = await quiz()
    expect([sampleData, sampleDataNotice]).toEqual([true, expect.stringContaining('invented sample data')])
    expect(groups.every(({ questions }) => questions.every((one) => one.sampleData))).toBe(true)
    const published = await testApp()
    const { body } = await published.send.get('/v1/quiz?categories=router').expect(200)
    await published.close()
    expect([body.sampleData, body.sampleDataNotice]).toEqual([false, null])
  })

  test('VA, A and W are different questions, and the help says which figure goes where', async () => {
    const { readings } = await quiz()
    expect(
      readings.map(({ kind, figures }) => [kind, figures.map(({ name, unit }) => `${name} ${unit}`)]),
    ).toEqual([
      ['power', ['watts W']],
      ['energy', ['kilowattHours kWh', 'durationHours h']],
      ['apparent-power', ['voltAmperes VA']],
      ['current', ['amperes A']],
    ])
    expect(readings[0]!.help).toMatch(/VA, it is not watts/)
    expect(readings[3]!.help).toMatch(/Do not multiply it by the voltage/)
  })

  test.each([
    [undefined, 'en'],
    ['', 'en'],
    ['de', 'de'],
    ['de-AT, fr;q=0.9', 'de'],
    ['fr, de;q=0.3, en;q=0.2', 'de'],
    ['en-GB;q=0.4, de;q=0.5', 'de'],
    ['DE', 'de'],
    ['*', 'en'],
    ['fr', 'en'],
    ['de;q=0, *', 'en'],
    [';;;,', 'en'],
  ])('Accept-Language %j is answered in %s, and says so', async (header, language) => {
    const { headers, body } = await get(
      '?group=audio',
      header === undefined ? {} : { 'accept-language': header },
    )
    expect([headers['content-language'], body.language]).toEqual([language, language])
    expect(headers['vary']).toBe('accept, accept-language, authorization, origin')
  })

  test('in German labels, helps and reasons are German, and the catalogue’s own note says that it is not', async () => {
    const { groups, texts } = await quiz('?categories=freezer,television', german)
    expect(texts.mustStayOn).toBe('Muss an bleiben')
    expect(groups.flatMap(({ questions }) => questions)).toMatchObject([
      { label: 'Fernseher ohne Internet', labelLanguage: 'de', keepPowered: null },
      {
        label: 'Gefrierschrank oder Gefriertruhe',
        labelLanguage: 'de',
        keepPowered: { reasonText: 'Es hält Lebensmittel oder Arzneien kühl.', noteLanguage: 'en' },
      },
    ])
  })

  test('a kept quiz is fresh until the catalogue or the language is another', async () => {
    const own = await testApp()
    const tag = async (language: string, headers: Record<string, string> = {}) => {
      const { status, headers: got } = await own.send
        .get('/v1/quiz')
        .set({ 'accept-language': language, ...headers })
      return { status, tag: got['etag']! }
    }
    const english = await tag('en')
    expect(await tag('en', { 'if-none-match': english.tag })).toEqual({ status: 304, tag: english.tag })
    expect((await tag('de', { 'if-none-match': english.tag })).status).toBe(200)
    const category = await own.send.get('/v1/categories/television').expect(200)
    await own.send
      .patch('/v1/categories/television?reason=test')
      .set({ ...asAdmin, 'if-match': category.headers['etag']! })
      .set('content-type', 'application/merge-patch+json')
      .send(JSON.stringify({ name: 'Television set' }))
      .expect(200)
    const edited = await tag('en', { 'if-none-match': english.tag })
    expect([edited.status, edited.tag === english.tag]).toEqual([200, false])
    await own.close()
  })
})

describe('POST /v1/quiz/answers', () => {
  test('answers its example', async () => {
    expect((await answer(QUIZ_REQUESTS.home.value).expect(200)).body).toEqual(exampleQuizResult)
  })

  test.each(Object.entries(QUIZ_REQUESTS))(
    'the household of the request %s goes to POST /v1/estimates as it is, for the same estimate',
    async (_name, { value }) => {
      const result = quizResultSchema.parse((await answer(value).expect(200)).body)
      const { body } = await service.send.post('/v1/estimates').send(result.household).expect(200)
      expect(result.estimate).toEqual(body)
    },
  )

  test('VA and amperes give a range that is only partly measured, watts and kWh a measurement', async () => {
    const { estimate } = (await answer(QUIZ_REQUESTS.readings.value).expect(200))
      .body as typeof exampleQuizResult
    const flags = estimate.devices.map(({ category, confidence }) => `${category} ${confidence}`)
    expect(flags).toEqual([
      'game-console assumed',
      'soundbar assumed',
      'boiler-control partly-measured',
      'smart-television assumed',
    ])
    const modes = estimate.devices.flatMap(({ id, modes: of }) =>
      (of as readonly { mode: string; confidence: string; apparentPowerVa?: object }[])
        .filter(({ confidence }) => confidence !== 'assumed')
        .map(({ mode, confidence, apparentPowerVa }) => [
          id,
          mode,
          confidence,
          apparentPowerVa !== undefined,
        ]),
    )
    expect(modes).toEqual([
      ['answer-1', 'networked-standby', 'measured', false],
      ['answer-2', 'standby', 'partly-measured', true],
      ['answer-3', 'standby', 'partly-measured', true],
      ['answer-4', 'networked-standby', 'measured', false],
    ])
  })

  test('in German the labels, the advice and the reasons are German', async () => {
    const { body, headers } = await answer(QUIZ_REQUESTS.home.value, german).expect(200)
    expect(headers['content-language']).toBe('de')
    expect(headers['cache-control']).toBe('no-store')
    expect(body.worthDoing[0]).toMatchObject({
      label: 'Fernseher ohne Internet',
      labelLanguage: 'de',
      advice: expect.stringMatching(/^Schalten Sie es an der Steckdose ab/) as string,
    })
    expect(body.mustStayOn[0].reasonText).toMatch(/^Geräte anderer/)
    expect(body.estimate.devices[0].label).toBe('Fernseher ohne Internet')
    expect(body.sampleDataNotice).toMatch(/erfundene Beispieldaten/)
  })

  test('answers to an older revision are estimated by that one', async () => {
    const own = await testApp()
    const asked = { catalogueRevision: 1, answers: [{ category: 'router', count: 1 }] }
    const before = (await own.send.post('/v1/quiz/answers').send(asked).expect(200)).body as object
    const { headers } = await own.send.get('/v1/categories/router').expect(200)
    await own.send
      .delete('/v1/categories/router?reason=test')
      .set({ ...asAdmin, 'if-match': headers['etag']! })
      .expect(200)
    expect((await own.send.post('/v1/quiz/answers').send(asked).expect(200)).body).toEqual(before)
    const now = await own.send.post('/v1/quiz/answers').send({ ...asked, catalogueRevision: 2 })
    expect(faultsOf(expectProblem(now, 422, 'faulty-input'))).toEqual([
      '/answers/0/category unknown-category',
    ])
    expectProblem(
      await own.send.post('/v1/quiz/answers').send({ ...asked, catalogueRevision: 9 }),
      404,
      'unknown-revision',
    )
    await own.close()
  })

  test('names every fault at once, of shape and of the trade', async () => {
    const answers = [
      { category: 'router', count: 1, hours: 'evenings' },
      { category: 'telly set', count: -1 },
      { category: 'television', count: 1.5, hours: 'sometimes', watts: 3 },
      {
        category: 'television',
        count: 1,
        reading: { kind: 'power', voltAmperes: 3 },
        readingMode: 'no-load',
      },
      { category: 'television', count: 1, readingMode: 'standby' },
      { category: 'soundbar', count: 1, reading: { kind: 'declared', watts: 3 } },
    ]
    const refused = await answer({ answers, tariffCode: 'none', extra: true })
    expect(faultsOf(expectProblem(refused, 422, 'faulty-input'))).toEqual([
      '/answers/0/hours hours-not-asked',
      '/answers/1/category unknown-category',
      '/answers/1/count too-small',
      '/answers/2/count invalid-type',
      '/answers/2/hours invalid-value',
      '/answers/2/watts unknown-field',
      '/answers/3/reading/voltAmperes unknown-field',
      '/answers/3/reading/watts required',
      '/answers/3/readingMode mode-not-asked',
      '/answers/4/readingMode without-reading',
      '/answers/5/reading/kind invalid-union',
      '/catalogueRevision required',
      '/extra unknown-field',
      '/tariffCode unknown-code',
    ])
  })

  test('counts of nothing but 0 are refused with what to do', async () => {
    const none = { catalogueRevision: 1, answers: [{ category: 'router', count: 0 }] }
    const problem = expectProblem(await answer(none), 422, 'faulty-input')
    expect(faultsOf(problem)).toEqual(['/answers nothing-counted'])
    expect(problem['detail']).toContain('Count at least one device')
  })

  test('the tariff that is named is the one that is used', async () => {
    const codes = [...seed.tariffs.keys()].filter((code) => seed.tariffs.get(code)!.tariff.kind === 'flat')
    const { body } = await answer({ ...QUIZ_REQUESTS.home.value, tariffCode: codes.at(-1) }).expect(200)
    expect(body.household.tariffCode).toBe(codes.at(-1))
    expect(body.estimate.used.tariffSource).toMatch(new RegExp(`^${codes.at(-1)!}: `))
  })

  test('needs a key where estimates do, before the body is read; the questions need none', async () => {
    const closed = await testApp({
      anonymousEstimates: false,
      quizLanguages: quizLanguagesOf(readConfig({}), seed.languages),
    })
    const send = (headers: Record<string, string>) =>
      closed.send.post('/v1/quiz/answers').set({ 'content-type': 'application/json', ...headers })
    expectProblem(await send({}).send('{ no JSON'), 401, 'key-required')
    const { key } = await issueTestKey(closed, { scopes: ['estimate'] })
    await send(bearer(key))
      .send({ catalogueRevision: 1, answers: [{ category: 'television', count: 1 }] })
      .expect(200)
    await closed.send.get('/v1/quiz').expect(200)
    await closed.close()
  })
})
