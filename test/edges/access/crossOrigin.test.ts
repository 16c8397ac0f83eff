import type { Response } from 'supertest'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import openApi from '../../../src/edges/rest/openapi.json' with { type: 'json' }
import { expectProblem } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey, type TestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

const OF_KEY = 'https://www.example.org'
const OF_OTHER_KEY = 'https://other.example.org'
const CONFIGURED = 'https://own.example.org'
const FOREIGN = 'https://evil.example.org'
const household = { devices: [{ category: 'television' }] }

let app: TestApp
let key: TestKey
beforeAll(async () => {
  app = await testApp({ corsOrigins: [CONFIGURED] })
  key = await issueTestKey(app, { kind: 'publishable', origins: [OF_KEY] })
  await issueTestKey(app, { kind: 'publishable', origins: [OF_OTHER_KEY] })
})
afterAll(() => app.close())

/** What a browser asks before it sends a call of a script; it sends no key with it. */
const preflight = (path: string, origin: string, method = 'POST') =>
  app.send.options(path).set({
    origin,
    'access-control-request-method': method,
    'access-control-request-headers': 'authorization,content-type',
  })
const allowed = ({ headers }: Response) => headers['access-control-allow-origin']

describe('a preflight', () => {
  test.each([OF_KEY, OF_OTHER_KEY, CONFIGURED])(
    'from %s is allowed, though it brings no key',
    async (origin) => {
      const answer = await preflight('/v1/quiz/answers', origin).expect(204)
      expect(answer.headers).toMatchObject({
        'access-control-allow-origin': origin,
        'access-control-allow-methods': 'POST',
        'access-control-max-age': '300',
        vary: 'origin',
      })
      expect(answer.headers['access-control-allow-headers']).toMatch(/authorization, content-type/)
      expect(answer.headers).not.toHaveProperty('access-control-allow-credentials')
    },
  )

  test.each([FOREIGN, 'null', `${OF_KEY}/`, 'https://www.example.org.evil.example.org', '*'])(
    'from %s is not',
    async (origin) => {
      const answer = await preflight('/v1/quiz/answers', origin).expect(204)
      expect([allowed(answer), answer.headers['vary']]).toEqual([undefined, 'origin'])
      expect(answer.headers).not.toHaveProperty('access-control-allow-methods')
    },
  )

  test('is allowed for the methods of each address', async () => {
    const answer = await preflight('/v1/quiz?group=audio', OF_KEY, 'GET').expect(204)
    expect(answer.headers['access-control-allow-methods']?.split(', ').sort()).toEqual(['GET', 'HEAD'])
  })

  test('is allowed at what a publishable key is good for, and nowhere else', async () => {
    const open: string[] = []
    for (const path of [...Object.keys(openApi.paths), '/graphql', '/docs']) {
      const answer = await preflight(path.replaceAll(/\{\w+\}/g, 'anything'), CONFIGURED)
      if (allowed(answer) !== undefined) open.push(path)
    }
    expect(open.sort()).toEqual(['/v1/estimates', '/v1/quiz', '/v1/quiz/answers'])
  })

  test('is refused again once the key is revoked', async () => {
    const origin = 'https://gone.example.org'
    const gone = await issueTestKey(app, { kind: 'publishable', origins: [origin] })
    expect(allowed(await preflight('/v1/quiz', origin, 'GET'))).toBe(origin)
    await app.send.delete(`/v1/api-keys/${gone.id}`).set(asAdmin).expect(200)
    expect(allowed(await preflight('/v1/quiz', origin, 'GET'))).toBeUndefined()
  })

  test('never comes from a secret key, nor from one that has ended', async () => {
    const own = await testApp({ clock: () => new Date('2026-01-31T12:00:00Z') })
    const origin = 'https://late.example.org'
    await issueTestKey(own, { kind: 'publishable', origins: [origin], expiresAt: '2026-01-31T12:00:00.001Z' })
    expect(await own.deps.keyStore.origins(new Date('2026-01-31T12:00:00Z'))).toEqual(new Set([origin]))
    expect(await own.deps.keyStore.origins(new Date('2026-01-31T12:00:01Z'))).toEqual(new Set())
    await own.close()
  })
})

describe('a call of a script', () => {
  test('with its key, from the key’s origin, can be read with the headers that matter', async () => {
    const answer = await app.send
      .get('/v1/quiz')
      .set({ ...bearer(key.key), origin: OF_KEY })
      .expect(200)
    expect(allowed(answer)).toBe(OF_KEY)
    expect(answer.headers['vary']).toBe('accept, accept-language, authorization, origin')
    expect(answer.headers['access-control-expose-headers']).toMatch(/etag, content-language/)
  })

  test('a 304 can be read, too', async () => {
    const headers = { ...bearer(key.key), origin: OF_KEY }
    const { headers: first } = await app.send.get('/v1/quiz').set(headers).expect(200)
    const kept = await app.send
      .get('/v1/quiz')
      .set({ ...headers, 'if-none-match': first['etag']! })
      .expect(304)
    expect(allowed(kept)).toBe(OF_KEY)
  })

  test.each(['/v1/estimates', '/v1/quiz/answers'])('the refusal at %s can be read', async (path) => {
    const answer = await app.send
      .post(path)
      .set({ ...bearer(key.key), origin: OF_KEY })
      .send({})
    expectProblem(answer, 422, 'faulty-input')
    expect([allowed(answer), answer.headers['vary']]).toEqual([OF_KEY, 'origin'])
  })

  test('with a key of another origin is refused, and that can be read', async () => {
    const answer = await app.send.get('/v1/quiz').set({ ...bearer(key.key), origin: OF_OTHER_KEY })
    expectProblem(answer, 403, 'foreign-origin')
    expect(allowed(answer)).toBe(OF_OTHER_KEY)
  })

  test('from a configured origin needs no key', async () => {
    const answer = await app.send.post('/v1/estimates').set('origin', CONFIGURED).send(household).expect(200)
    expect(allowed(answer)).toBe(CONFIGURED)
  })

  test('from elsewhere is answered as to anybody, and no script may read it', async () => {
    const answer = await app.send.post('/v1/estimates').set('origin', FOREIGN).send(household).expect(200)
    expect([allowed(answer), answer.headers['vary']]).toEqual([undefined, 'origin'])
  })

  test('other routes are open to no script', async () => {
    const answer = await app.send.get('/v1/categories').set('origin', CONFIGURED).expect(200)
    expect([allowed(answer), answer.headers['vary']]).toEqual([undefined, 'accept, authorization'])
  })
})

test('where nothing is configured and there is no publishable key, no origin may', async () => {
  const own = await testApp()
  const answer = await own.send
    .options('/v1/quiz')
    .set({ origin: OF_KEY, 'access-control-request-method': 'GET' })
  await own.close()
  expect(allowed(answer)).toBeUndefined()
})
