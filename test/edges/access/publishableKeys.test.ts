import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import openApi from '../../../src/edges/rest/openapi.json' with { type: 'json' }
import { expectProblem } from '../../helpers/expectProblem.ts'
import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

const ORIGIN = 'https://www.example.org'
const household = { devices: [{ category: 'television' }] }

let app: TestApp
let key: string
beforeAll(async () => {
  app = await testApp({ anonymousEstimates: false })
  key = (await issueTestKey(app, { kind: 'publishable', origins: [ORIGIN, 'http://localhost:8080'] })).key
})
afterAll(() => app.close())

describe('a publishable key', () => {
  test('says so in its text, and has the scope estimate alone', async () => {
    expect(key).toMatch(/^sdp_/)
    const { body } = await app.send
      .get('/v1/api-keys')
      .set(bearer((await issueTestKey(app, { scopes: ['admin'] })).key))
    const shown = (body.items as { kind: string }[]).find(({ kind }) => kind === 'publishable')
    expect(shown).toMatchObject({ scopes: ['estimate'], origins: [ORIGIN, 'http://localhost:8080'] })
  })

  test.each([ORIGIN, 'http://localhost:8080'])('is good for estimates from %s', async (origin) => {
    await app.send
      .post('/v1/estimates')
      .set({ ...bearer(key), origin })
      .send(household)
      .expect(200)
  })

  test.each([
    undefined,
    'null',
    'https://example.org',
    'http://www.example.org',
    'https://www.example.org:8443',
    'https://www.example.org.evil.example',
    'https://www.example.org/',
    'HTTPS://WWW.EXAMPLE.ORG',
  ])('is good for nothing from %s', async (origin) => {
    const headers = { ...bearer(key), ...(origin !== undefined && { origin }) }
    expectProblem(await app.send.post('/v1/estimates').set(headers).send(household), 403, 'foreign-origin')
  })

  const others = Object.entries(openApi.paths)
    .flatMap(([path, item]) => Object.keys(item).map((method) => [method, path] as const))
    .filter(([, path]) => path !== '/v1/estimates' && !path.startsWith('/v1/quiz'))
  test.each(others)('is refused at %s %s, whatever its origin', async (method, path) => {
    const address = path.replaceAll(/\{\w+\}/g, 'anything')
    const answer = await app.send[method as 'get'](address).set({ ...bearer(key), origin: ORIGIN })
    expectProblem(answer, 403, 'publishable-key')
  })

  test('is refused at /graphql', async () => {
    const headers = { ...bearer(key), origin: ORIGIN }
    const { status, body } = await app.send.post('/graphql').set(headers).send({ query: '{ __typename }' })
    expect([status, body.errors[0].extensions.reason]).toEqual([403, 'publishable-key'])
  })
})
