import { randomBytes } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { base32 } from '../../../src/core/access/base32.ts'
import { crc32 } from '../../../src/core/access/crc32.ts'
import { writeKey } from '../../../src/core/access/keyText.ts'
import { BAD_KEYS_A_MINUTE } from '../../../src/useCases/badKeys.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../helpers/keys.ts'
import { ADMIN_KEY, type TestApp, testApp } from '../../helpers/testApp.ts'

const REALM = 'Bearer realm="standby-draw-estimation"'
const NOON = new Date('2026-01-31T12:00:00Z').getTime()
const household = { devices: [{ category: 'television' }] }

let now: Date
let app: TestApp
beforeEach(async () => {
  now = new Date(NOON)
  app = await testApp({ clock: () => now })
})
afterEach(() => app.close())
const later = (ms: number) => {
  now = new Date(now.getTime() + ms)
}
const whoIs = (headers: Record<string, string>) => app.send.get('/v1/api-keys').set(headers)

describe('a key that was sent', () => {
  const badKeys = async () => {
    const [expired, revoked, good] = await Promise.all([
      issueTestKey(app, { scopes: ['admin'], expiresAt: new Date(NOON + 1).toISOString() }),
      issueTestKey(app, { scopes: ['admin'] }),
      issueTestKey(app, { scopes: ['admin'] }),
    ])
    await app.send.delete(`/v1/api-keys/${revoked.id}`).set(asAdmin).expect(200)
    later(1)
    const absent = writeKey('secret', randomBytes).text
    const otherSecret = `${good.key.slice(0, 21)}${absent.slice(21, -7)}`
    return {
      absent: `Bearer ${absent}`,
      expired: `Bearer ${expired.key}`,
      revoked: `Bearer ${revoked.key}`,
      mistyped: `Bearer ${good.key.slice(0, -1)}${good.key.endsWith('a') ? 'b' : 'a'}`,
      'of another secret': `Bearer ${otherSecret}${base32(crc32(otherSecret))}`,
      cut: `Bearer ${good.key.slice(0, -5)}`,
      garbled: 'Bearer %00§',
      empty: 'Bearer ',
      'without its scheme': good.key,
      'in another scheme': `Basic ${Buffer.from(`x:${good.key}`).toString('base64')}`,
      'the id alone': `Bearer ${good.id}`,
    }
  }

  test('and is not valid is answered with one and the same 401, whatever is wrong with it', async () => {
    const answers = await Promise.all(
      Object.entries(await badKeys()).map(async ([name, authorization]) => {
        const answer = await whoIs({ authorization })
        const { requestId, ...problem } = expectProblem(answer, 401, 'key-unknown')
        expect(requestId, name).toBeDefined()
        expect(answer.headers['www-authenticate'], name).toBe(`${REALM}, error="invalid_token"`)
        const { date, 'x-request-id': id, connection, ...headers } = answer.headers as Record<string, string>
        expect([date, id, connection], name).not.toContain(undefined)
        return { problem, headers }
      }),
    )
    expect(answers.length).toBe(11)
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1)
  })

  test('and is not valid is refused where no key is needed, too', async () => {
    const answer = await app.send.post('/v1/estimates').set(bearer('nonsense')).send(household)
    expectProblem(answer, 401, 'key-unknown')
    const graphql = await app.send.post('/graphql').set(bearer('nonsense')).send({ query: '{ __typename }' })
    expect(graphql.status).toBe(401)
    expect(graphql.headers['www-authenticate']).toBe(`${REALM}, error="invalid_token"`)
    expect(graphql.body.errors[0].extensions).toMatchObject({
      code: 'UNAUTHENTICATED',
      reason: 'key-unknown',
    })
  })

  test('is told from others in the log alone, by what is wrong with it and by its id', async () => {
    const bad = await badKeys()
    for (const authorization of Object.values(bad)) await whoIs({ authorization })
    const said = app
      .log()
      .split('\n')
      .filter((line) => line.includes('key refused'))
      .map((line) => JSON.parse(line))
    expect(said.map(({ fault }) => fault)).toEqual([
      'unknown',
      'expired',
      'revoked',
      'mistyped',
      'wrong-secret',
      'no-key',
      'no-key',
      'no-key',
      'no-key',
      'no-key',
      'no-key',
    ])
    expect(said.every(({ level }) => level === 'info')).toBe(true)
    expect(bad.expired).toContain(said[1].keyId)
  })

  test('and is valid is taken whatever the case of its scheme', async () => {
    const { key } = await issueTestKey(app, { scopes: ['admin'] })
    for (const authorization of [`Bearer ${key}`, `bearer  ${key}`, `BEARER ${key} `])
      await whoIs({ authorization }).expect(200)
  })
})

describe('no key', () => {
  test('is asked for where one is needed, without a word of a token', async () => {
    const answer = await app.send.get('/v1/api-keys')
    expectProblem(answer, 401, 'key-required')
    expect(answer.headers['www-authenticate']).toBe(REALM)
  })
})

describe('a key in an address', () => {
  const key = `sdk_${'a'.repeat(16)}_${'b'.repeat(59)}`
  test.each([
    ['?key=', `/v1/categories?key=${key}`],
    ['?api_key=', `/v1/categories?limit=5&api_key=${key}`],
    ['?access_token=', `/v1/categories?access_token=${key}`],
    ['?apiKey=, chosen by the operator', `/v1/categories?apiKey=${'Z'.repeat(40)}`],
    ['any other parameter', `/v1/categories?search=${key}`],
    ['percent-encoded', `/v1/categories?search=%73dk_${key.slice(4)}`],
    ['the path', `/v1/categories/${key}`],
    ['GraphQL', `/graphql?query={__typename}&access_token=${key}`],
    ['an address that is none', `/nothing?token=${key}`],
  ])('is refused and never logged: %s', async (_, address) => {
    const answer = await app.send
      .get(address)
      .set(address.startsWith('/graphql') ? { 'x-apollo-operation-name': 'a' } : {})
    expect(answer.status).toBe(400)
    expect(answer.text).toContain('key-in-query')
    expect(answer.text).not.toMatch(/bbbbb|ZZZZZ/)
    expect(app.log()).not.toMatch(/bbbbb|ZZZZZ/)
  })

  test('is told from a short word that is no key', async () => {
    expectProblem(await app.send.get('/v1/categories?key=television'), 400, 'faulty-query')
    await app.send.get('/v1/categories?search=sdk_docs').expect(200)
  })
})

describe('bad keys from one address', () => {
  const sendBad = () => whoIs(bearer('nonsense'))
  const sendAllBad = async () => {
    for (let count = 0; count < BAD_KEYS_A_MINUTE; count++) expectProblem(await sendBad(), 401, 'key-unknown')
  }

  test('make it wait after so many within a minute, and say for how long', async () => {
    await sendAllBad()
    later(18_000)
    const answer = await sendBad()
    expect(expectProblem(answer, 429, 'too-many-bad-keys')).toMatchObject({ retryAfterSeconds: 42 })
    expect(answer.headers['retry-after']).toBe('42')
    const graphql = await app.send.post('/graphql').set(bearer('nonsense')).send({ query: '{ __typename }' })
    expect([graphql.status, graphql.headers['retry-after']]).toEqual([429, '42'])
    later(42_000)
    expectProblem(await sendBad(), 401, 'key-unknown')
  })

  test('keep a key from being found: while the address waits, also a valid one that was not seen before is not looked at', async () => {
    const { key } = await issueTestKey(app, { scopes: ['admin'] })
    await sendAllBad()
    expectProblem(await whoIs(bearer(key)), 429, 'too-many-bad-keys')
  })

  test('do not keep out who used a valid key before, and who sends none', async () => {
    const { key, id } = await issueTestKey(app, { scopes: ['admin'] })
    await whoIs(bearer(key)).expect(200)
    await sendAllBad()
    await whoIs(bearer(key)).expect(200)
    await app.send.post('/v1/estimates').send(household).expect(200)
    await app.send.delete(`/v1/api-keys/${id}`).set(asAdmin).expect(200)
    expectProblem(await whoIs(bearer(key)), 401, 'key-unknown')
  })

  test('are counted by the connection and not by what a header says of it', async () => {
    for (let count = 0; count < BAD_KEYS_A_MINUTE; count++)
      await whoIs({ ...bearer('nonsense'), 'x-forwarded-for': `203.0.113.${count}` })
    const answer = await whoIs({ ...bearer('nonsense'), 'x-forwarded-for': '203.0.113.99' })
    expectProblem(answer, 429, 'too-many-bad-keys')
  })
})

describe('the last use of a key', () => {
  test('is shown to the minute', async () => {
    const { key, id } = await issueTestKey(app, { scopes: ['estimate'] })
    const lastUse = async () => {
      await app.deps.keyMemory.settled()
      return (await app.send.get(`/v1/api-keys/${id}`).set(asAdmin).expect(200)).body.lastUsedAt
    }
    expect(await lastUse()).toBeNull()
    const use = () => app.send.post('/v1/estimates').set(bearer(key)).send(household).expect(200)
    await use()
    expect(await lastUse()).toBe('2026-01-31T12:00:00.000Z')
    later(59_999)
    await use()
    expect(await lastUse()).toBe('2026-01-31T12:00:00.000Z')
    later(1)
    await use()
    expect(await lastUse()).toBe('2026-01-31T12:01:00.000Z')
  })
})

test('no key, and no part of its secret, is ever logged, at the most talkative level', async () => {
  const { key, id } = await issueTestKey(app, { scopes: ['admin'] })
  await whoIs(bearer(key)).expect(200)
  await app.send.post(`/v1/api-keys/${id}/rotations`).set(bearer(key)).send({}).expect(201)
  await app.send.delete(`/v1/api-keys/${id}`).set(bearer(key)).expect(200)
  await app.send.post('/graphql').set(bearer(key)).send({ query: '{ apiKeys { totalCount } }' })
  await app.send.post('/v1/estimates').set(bearer(key)).send('{').type('json')
  const log = app.log()
  expect(log.split('\n').length).toBeGreaterThan(5)
  for (let from = 21; from < key.length - 8; from++) expect(log).not.toContain(key.slice(from, from + 8))
  expect(log).not.toContain(ADMIN_KEY.slice(0, 12))
})

test('an estimate for a caller without a key asks no store of keys, and one with a key once a second', async () => {
  const { key } = await issueTestKey(app, { scopes: ['estimate'] })
  const asked: string[] = []
  const { keyStore } = app.deps
  const store = { ...keyStore }
  Object.assign(keyStore, {
    find: (id: string) => (asked.push('find'), store.find(id)),
    bootstrapKey: () => (asked.push('bootstrapKey'), store.bootstrapKey()),
  })
  later(10_000)
  await app.send.post('/v1/estimates').send(household).expect(200)
  expect(asked).toEqual([])
  for (let count = 0; count < 3; count++)
    await app.send.post('/v1/estimates').set(bearer(key)).send(household).expect(200)
  expect(asked).toEqual(['find'])
})
