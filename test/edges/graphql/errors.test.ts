import { EventEmitter, once } from 'node:events'
import { fastify } from 'fastify'
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import { registerGraphql } from '../../../src/edges/graphql/index.ts'
import { testApp, type TestApp } from '../../helpers/testApp.ts'
import { post, refused } from './ask.ts'

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())
afterEach(() => vi.restoreAllMocks())

const ESTIMATE = 'query ($input: EstimateInput!) { estimate(input: $input) { currency } }'
const failing = (error: unknown) =>
  vi.spyOn(app.deps.catalogueMemory, 'current').mockImplementation(() => {
    throw error
  })
/** What was logged at level error since. */
const loggedErrors = (since: number) =>
  app
    .log()
    .slice(since)
    .split('\n')
    .filter((line) => line.includes('"level":"error"'))
    .map((line) => JSON.parse(line))

describe('a failure of the service', () => {
  test.each([
    ['an error', new Error('secret: password=hunter2 at /srv/app.ts')],
    [
      'an error that passes itself off as the caller’s',
      Object.assign(new Error('secret'), { extensions: { code: 'BAD_USER_INPUT' } }),
    ],
    ['an error with a code of the database', Object.assign(new Error('secret'), { code: 'P2003' })],
    ['a thrown text', 'secret'],
    ['nothing', undefined],
  ])(
    '(%s) is told as "Internal error" with the request’s id, and logged once as an error',
    async (_what, thrown) => {
      const since = app.log().length
      failing(thrown)
      const answer = await app.send
        .post('/graphql')
        .set('x-request-id', 'asked-42')
        .send({ query: ESTIMATE, variables: { input: { devices: [{ category: 'tv' }] } } })
      expect(answer.body).toEqual({
        data: { estimate: null },
        errors: [
          {
            message: 'Internal error',
            locations: [{ line: 1, column: 34 }],
            path: ['estimate'],
            extensions: { code: 'INTERNAL_SERVER_ERROR', requestId: 'asked-42' },
          },
        ],
      })
      expect(answer.text).not.toContain('secret')
      expect(loggedErrors(since)).toEqual([expect.objectContaining({ requestId: 'asked-42' })])
    },
  )

  test('in node and nodes is hidden in the same way', async () => {
    failing(new Error('secret'))
    const id = Buffer.from('Category:tv').toString('base64')
    const { errors, data } = await refused(app, `{ node(id: "${id}") { id } nodes(ids: ["${id}"]) { id } }`)
    expect(data).toEqual({ node: null, nodes: [null] })
    expect(errors.map(({ message }: { message: string }) => message)).toEqual([
      'Internal error',
      'Internal error',
    ])
  })

  test('leaves the request’s other fields their answers', async () => {
    const at = vi.spyOn(app.deps.catalogueMemory, 'at').mockRejectedValue(new Error('secret'))
    const { data, errors } = await refused(
      app,
      '{ ok: category(code: "tv") { code } bad: category(code: "tv", catalogueRevision: 9) { code } }',
    )
    expect(at).toHaveBeenCalledOnce()
    expect(data).toEqual({ ok: { code: 'television' }, bad: null })
    expect(errors[0]).toMatchObject({ message: 'Internal error', path: ['bad'] })
  })
})

describe('a fault of the caller', () => {
  test('is no error to the operator: nothing is logged as one', async () => {
    const since = app.log().length
    await refused(app, '{ category(code: "nothing") { code } }')
    await refused(app, ESTIMATE, { input: { devices: [] } })
    await refused(app, '{ surprise }')
    await refused(app, ESTIMATE)
    await app.send.post('/graphql').type('application/json').send('{')
    expect(loggedErrors(since)).toEqual([])
  })

  test.each([
    ['a syntax error', '{ category(', 'GRAPHQL_PARSE_FAILED'],
    ['an unknown field', '{ surprise }', 'GRAPHQL_VALIDATION_FAILED'],
    ['an argument of the wrong type', '{ category(code: 1) { code } }', 'GRAPHQL_VALIDATION_FAILED'],
    ['a missing variable', ESTIMATE, 'BAD_USER_INPUT'],
    ['an unknown mutation', 'mutation { surprise }', 'GRAPHQL_VALIDATION_FAILED'],
    ['a subscription', 'subscription { surprise }', 'GRAPHQL_VALIDATION_FAILED', 'no-such-operation'],
    ['nothing asked', '', 'BAD_REQUEST'],
  ])('(%s) is answered with 400 and a code', async (_what, query, code, reason?: string) => {
    const { status, errors } = await refused(app, query)
    expect(status).toBe(400)
    expect(errors).toHaveLength(1)
    expect(errors[0].extensions).toEqual({ code, ...(reason && { reason }) })
  })

  test('never comes with a stack or an inside', async () => {
    for (const query of [
      '{ surprise }',
      '{',
      '{ category(code: "x") { code } }',
      '{ categories(first: -1) { totalCount } }',
    ]) {
      const { text } = await post(app, query)
      expect(text).not.toMatch(/stacktrace|node_modules|\.ts|originalError/)
    }
  })
})

describe('suggestions for misspelt names', () => {
  test('are kept back in production', async () => {
    const { errors } = await refused(app, '{ categorys { totalCount } }')
    expect(errors[0].message).toBe('Cannot query field "categorys" on type "Query".')
  })

  test('are given in development, still without a stack', async () => {
    const development = await testApp({ production: false })
    try {
      const { errors } = await refused(development, '{ categorys { totalCount } }')
      expect(errors[0].message).toContain('Did you mean')
      expect(errors[0].extensions).toEqual({ code: 'GRAPHQL_VALIDATION_FAILED' })
    } finally {
      await development.close()
    }
  })
})

describe('a request that is no GraphQL request', () => {
  const json = 'application/json; charset=utf-8'

  test.each([
    ['malformed JSON', 'application/json', '{"query":', 400, 'malformed-body'],
    ['an empty body', 'application/json', '', 400, 'malformed-body'],
    [
      'a forbidden key',
      'application/json',
      '{"query":"{ __typename }","__proto__":{"polluted":true}}',
      400,
      'malformed-body',
    ],
    ['plain text', 'text/plain', '{ __typename }', 415, 'unsupported-media-type'],
    ['a form', 'application/x-www-form-urlencoded', 'query={__typename}', 415, 'unsupported-media-type'],
    [
      'a body too large',
      'application/json',
      JSON.stringify({ query: 'x'.repeat(1_100_000) }),
      413,
      'body-too-large',
    ],
  ])('(%s) is answered in the shape of a GraphQL error', async (_what, type, body, status, reason) => {
    const answer = await app.send.post('/graphql').type(type).send(body)
    expect(answer.status).toBe(status)
    expect(answer.headers['content-type']).toBe(json)
    expect(answer.body).toEqual({
      errors: [{ message: expect.any(String), extensions: { code: 'BAD_REQUEST', reason } }],
    })
  })

  test('is answered as application/graphql-response+json where that is accepted', async () => {
    const answer = await app.send
      .post('/graphql')
      .type('application/json')
      .accept('application/graphql-response+json')
      .send('{')
    expect(answer.headers['content-type']).toBe('application/graphql-response+json; charset=utf-8')
  })

  test('(GET that a page of another site could have made) is refused', async () => {
    const answer = await app.send.get('/graphql').query({ query: '{ __typename }' })
    expect(answer.status).toBe(400)
    expect(answer.body.errors[0].extensions.code).toBe('BAD_REQUEST')
  })

  test('(a browser’s page load) gets no page with scripts', async () => {
    const answer = await app.send.get('/graphql').accept('text/html')
    expect(answer.status).toBeGreaterThanOrEqual(400)
    expect(answer.text).not.toContain('<')
  })

  test('(PUT) is told the methods that there are', async () => {
    const answer = await app.send.put('/graphql').send({})
    expect(answer.status).toBe(405)
    expect(answer.headers['allow']).toContain('POST')
  })

  test('(a persisted query) is told that there are none', async () => {
    const answer = await app.send
      .post('/graphql')
      .send({ extensions: { persistedQuery: { version: 1, sha256Hash: 'a'.repeat(64) } } })
    expect(answer.body.errors[0]).toEqual({
      message: 'PersistedQueryNotSupported',
      extensions: { code: 'PERSISTED_QUERY_NOT_SUPPORTED' },
    })
  })
})

test('where the operator gives no estimates without a key, /graphql asks for one in the shape of a GraphQL error', async () => {
  const closed = await testApp({ anonymousEstimates: false })
  try {
    const answer = await post(closed, '{ __typename }')
    expect(answer.status).toBe(401)
    expect(answer.headers['www-authenticate']).toContain('Bearer')
    expect(answer.body.errors[0].extensions).toEqual({ code: 'UNAUTHENTICATED', reason: 'key-required' })
  } finally {
    await closed.close()
  }
})

test('what fails before GraphQL is reached is told as "Internal error" with the request’s id, and logged, too', async () => {
  const lines: string[] = []
  const stream = { write: (line: string) => lines.push(line) }
  const own = fastify({ genReqId: () => 'asked-43', logger: { level: 'error', stream } })
  own.addHook('onRequest', async () => {
    throw new Error('secret')
  })
  await registerGraphql(own, app.deps, { production: true })
  const answer = await own.inject({ method: 'POST', url: '/graphql', payload: { query: '{ __typename }' } })
  expect(answer.statusCode).toBe(500)
  expect(answer.json()).toEqual({
    errors: [
      { message: 'Internal error', extensions: { code: 'INTERNAL_SERVER_ERROR', requestId: 'asked-43' } },
    ],
  })
  expect(lines.map((line) => JSON.parse(line))).toEqual([
    expect.objectContaining({ reqId: 'asked-43', err: expect.objectContaining({ message: 'secret' }) }),
  ])
  await own.close()
})

test('an answer is not to be kept by caches, since it may speak of a household', async () => {
  for (const query of ['{ category(code: "tv") { code } }', '{ surprise }', ''])
    expect((await post(app, query)).headers['cache-control']).toBe('no-store')
})

test('a request under way is answered although the service is closing', async () => {
  const own = await testApp()
  const steps = new EventEmitter()
  const asked = once(steps, 'asked')
  vi.spyOn(own.deps.catalogueMemory, 'at').mockImplementation(async () => {
    const released = once(steps, 'released')
    steps.emit('asked')
    await released
    return own.deps.catalogueMemory.current()
  })
  const answer = post(own, '{ category(code: "tv", catalogueRevision: 9) { code } }')
  await asked
  const closed = own.close()
  steps.emit('released')
  expect((await answer).body).toEqual({ data: { category: { code: 'television' } } })
  await closed
})
