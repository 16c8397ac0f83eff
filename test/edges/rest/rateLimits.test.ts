import { afterEach, describe, expect, test } from 'vitest'
import openApi from '../../../src/edges/rest/openapi.json' with { type: 'json' }
import { expectProblem } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../helpers/keys.ts'
import { rawExchange } from '../../helpers/rawExchange.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let opened: TestApp | undefined
afterEach(async () => {
  await opened?.close()
  opened = undefined
})

interface Limited {
  readonly perKey?: number
  readonly perNetwork?: number
  readonly trustedProxies?: readonly string[]
}

/** An app with limits, and a clock that stands until it is moved. */
async function limitedApp({ perKey = 1000, perNetwork = 2, trustedProxies = [] }: Limited = {}) {
  let now = Date.parse('2026-01-31T12:00:00Z')
  const app = await testApp({
    rateLimits: { perKey, perNetwork },
    trustedProxies,
    clock: () => new Date(now),
  })
  opened = app
  return { ...app, pass: (seconds: number) => (now += seconds * 1000) }
}
const CATEGORIES = '/v1/categories?limit=1'
const from = (address: string) => ({ 'x-forwarded-for': address })

describe('a limited route', () => {
  test('says on every answer what the limit is, what is left, and when it is all of it again', async () => {
    const { send, pass } = await limitedApp({ perNetwork: 10 })
    const { headers } = await send.get(CATEGORIES).expect(200)
    expect(headers['ratelimit-policy']).toBe('"network";q=10;w=60')
    expect(headers['ratelimit']).toBe('"network";r=9;t=60')
    pass(20)
    const answers = [
      await send.get(CATEGORIES).set('if-none-match', headers['etag']!).expect(304),
      await send.get('/v1/categories/nothing').expect(404),
      await send.get('/nowhere').expect(404),
      await send.delete('/v1/estimates').expect(405),
      await send.get(CATEGORIES).set('accept', 'image/png').expect(406),
      await send.post('/v1/estimates').send({}).expect(422),
      await send.get('/v1/api-keys').expect(401),
      await send.get('/v1/categories').set(bearer('not-a-key')).expect(401),
      await send.head(CATEGORIES).expect(200),
    ]
    expect(answers.map(({ headers: { ratelimit } }) => ratelimit)).toEqual(
      [8, 7, 6, 5, 4, 3, 2, 1, 0].map((left) => `"network";r=${left};t=40`),
    )
  })

  test('refuses what comes above the limit with a problem that says how long to wait', async () => {
    const { send, pass } = await limitedApp()
    await send.get(CATEGORIES).expect(200)
    await send.get(CATEGORIES).expect(200)
    pass(18.4)
    const refused = await send.get(CATEGORIES)
    const problem = expectProblem(refused, 429, 'quota-exceeded')
    expect(problem).toMatchObject({ retryAfterSeconds: 42, 'violated-policies': ['network'] })
    expect(refused.headers['retry-after']).toBe('42')
    expect(refused.headers['ratelimit']).toBe('"network";r=0;t=42')
  })

  test('answers again once the minute is over, and refusals do not put that off', async () => {
    const { send, pass } = await limitedApp()
    for (const status of [200, 200, 429]) await send.get(CATEGORIES).expect(status)
    pass(59.9)
    await send.get(CATEGORIES).expect(429)
    pass(0.1)
    const { headers } = await send.get(CATEGORIES).expect(200)
    expect(headers['ratelimit']).toBe('"network";r=1;t=60')
  })

  test('refuses before it reads a body or looks at scopes', async () => {
    const { send } = await limitedApp({ perNetwork: 1 })
    await send.get(CATEGORIES).expect(200)
    const answer = await send
      .post('/v1/api-keys')
      .set('content-type', 'application/json')
      .send('{ this is no JSON')
    expectProblem(answer, 429, 'quota-exceeded')
  })

  test('is told apart from an address that the router cannot read, which no caller is counted for', async () => {
    const { url, send } = await limitedApp()
    expect(await rawExchange(url, 'GET /%zz HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n')).not.toMatch(
      /^ratelimit/im,
    )
    const { headers } = await send.get(CATEGORIES).expect(200)
    expect(headers['ratelimit']).toBe('"network";r=1;t=60')
  })

  test('says it on a batch that is answered while it comes in', async () => {
    const app = await limitedApp()
    const { key } = await issueTestKey(app, { scopes: ['intake'] })
    const { headers } = await app.send
      .post('/v1/intake-batches')
      .set({ ...bearer(key), 'content-type': 'application/x-ndjson' })
      .send('{"reference":"home-1","household":{"devices":[{"category":"television"}]}}\n')
      .expect(200)
    expect(headers['ratelimit']).toBe('"key";r=999;t=60')
  })
})

describe('callers', () => {
  test('with a secret key are counted by it: what one uses up, another one and callers without a key have', async () => {
    const app = await limitedApp({ perKey: 3 })
    const one = bearer((await issueTestKey(app, { scopes: ['estimate'] })).key)
    const other = bearer((await issueTestKey(app, { scopes: ['estimate'] })).key)
    const answers = []
    for (let i = 0; i < 4; i++) answers.push(await app.send.get(CATEGORIES).set(one))
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 429])
    expect(answers[0]!.headers['ratelimit-policy']).toBe('"key";q=3;w=60')
    expect(answers[3]!.body.detail).toBe(
      'More than 3 requests came with this key within a minute. Wait 60 s.',
    )
    expect((await app.send.get(CATEGORIES).set(other)).headers['ratelimit']).toBe('"key";r=2;t=60')
    expect((await app.send.get(CATEGORIES)).headers['ratelimit']).toBe('"network";r=1;t=60')
  })

  test('with a publishable key are counted by their network, since all visitors of a website have the same', async () => {
    const app = await limitedApp({ trustedProxies: ['127.0.0.1'] })
    const origin = 'https://www.example.org'
    const { key } = await issueTestKey(app, { scopes: ['estimate'], kind: 'publishable', origins: [origin] })
    const estimate = (address: string) =>
      app.send
        .post('/v1/estimates')
        .set({ ...bearer(key), ...from(address), origin })
        .send({ devices: [{ category: 'television' }] })
    for (const status of [200, 200, 429]) await estimate('192.0.2.1').expect(status)
    const { headers } = await estimate('192.0.2.2').expect(200)
    expect(headers['ratelimit']).toBe('"network";r=1;t=60')
    expect(headers['access-control-expose-headers']).toContain('ratelimit, ratelimit-policy')
  })

  test('of one IPv6 network of 64 bits are one', async () => {
    const { send } = await limitedApp({ trustedProxies: ['127.0.0.1'] })
    for (const [address, status] of [
      ['2001:db8:0:1::1', 200],
      ['2001:db8:0:1:ffff::2', 200],
      ['2001:db8:0:1::3', 429],
      ['2001:db8:0:2::1', 200],
    ] as const)
      await send.get(CATEGORIES).set(from(address)).expect(status)
  })

  test('that are not believed get no new limit by naming another address', async () => {
    const { send } = await limitedApp()
    for (const [address, status] of [
      ['192.0.2.1', 200],
      ['192.0.2.2', 200],
      ['192.0.2.3', 429],
    ] as const)
      await send.get(CATEGORIES).set(from(address)).expect(status)
  })

  test('behind a believed proxy get none by what they themselves wrote before the proxy did', async () => {
    const { send } = await limitedApp({ trustedProxies: ['127.0.0.0/8'] })
    for (const [forged, status] of [
      ['198.51.100.1', 200],
      ['198.51.100.2', 200],
      ['198.51.100.3', 429],
    ] as const)
      await send
        .get(CATEGORIES)
        .set(from(`${forged}, 192.0.2.1`))
        .expect(status)
    await send.get(CATEGORIES).set(from('192.0.2.2')).expect(200)
  })

  test('whose proxy names no address that can be read are counted by that of the connection', async () => {
    const { send } = await limitedApp({ trustedProxies: ['127.0.0.1'] })
    for (const [named, status] of [
      ['unknown', 200],
      ['x'.repeat(300), 200],
      ['_hidden', 429],
    ] as const)
      await send.get(CATEGORIES).set(from(named)).expect(status)
  })
})

describe('GraphQL', () => {
  test('counts like any other request, and is refused in its own form', async () => {
    const { send } = await limitedApp()
    const query = () => send.post('/graphql').send({ query: '{ __typename }' })
    expect((await query().expect(200)).headers['ratelimit']).toBe('"network";r=1;t=60')
    await send.get(CATEGORIES).expect(200)
    const { status, headers, body } = await query()
    expect(status).toBe(429)
    expect(headers['retry-after']).toBe('60')
    expect(headers['ratelimit']).toBe('"network";r=0;t=60')
    expect(body.errors[0].extensions).toMatchObject({ code: 'RATE_LIMITED', reason: 'quota-exceeded' })
  })
})

describe('what is not limited', () => {
  test('is what watches the service, and the question of a browser whether it may ask', async () => {
    const app = await limitedApp({ perNetwork: 1 })
    await app.send.get(CATEGORIES).expect(200)
    await app.send.get(CATEGORIES).expect(429)
    for (const address of ['/health/live', '/health/ready']) {
      const { headers } = await app.send.get(address).expect(200)
      expect(Object.keys(headers).filter((name) => name.startsWith('ratelimit'))).toEqual([])
    }
    await app.send.options('/v1/estimates').set('origin', 'https://www.example.org').expect(204)
  })

  test('is everything where the operator sets 0, for keys and networks each', async () => {
    const { send } = await limitedApp({ perKey: 1, perNetwork: 0 })
    for (let i = 0; i < 3; i++) {
      const { headers } = await send.get(CATEGORIES).expect(200)
      expect(headers).not.toHaveProperty('ratelimit')
    }
    await send.get(CATEGORIES).set(asAdmin).expect(200)
    await send.get(CATEGORIES).set(asAdmin).expect(429)
  })
})

describe('the document', () => {
  const operations = Object.values(openApi.paths as unknown as Record<string, Record<string, Described>>)
    .flatMap((path) => Object.values(path))
    .map(({ operationId, responses }) => ({ operationId, responses }))
  interface Described {
    readonly operationId: string
    readonly responses: Readonly<Record<string, { readonly headers?: object }>>
  }
  const isLimited = ({ operationId }: { operationId: string }) =>
    !['readLiveness', 'readReadiness'].includes(operationId)

  test('names the fields on every answer of a limited operation, and on no other', () => {
    for (const { operationId, responses } of operations)
      for (const [status, { headers = {} }] of Object.entries(responses))
        expect([operationId, status, 'RateLimit' in headers, 'RateLimit-Policy' in headers]).toEqual([
          operationId,
          status,
          isLimited({ operationId }),
          isLimited({ operationId }),
        ])
  })

  test('names Retry-After on every 429', () => {
    for (const { responses } of operations) expect(responses['429']?.headers).toHaveProperty('Retry-After')
  })
})
