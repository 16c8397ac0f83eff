import type { Response } from 'supertest'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

const NOON = new Date('2026-01-31T12:00:00Z').getTime()
const HOUR = 3_600_000
const atHour = (hours: number) => new Date(NOON + hours * HOUR).toISOString()

let now = new Date(NOON)
let app: TestApp
beforeAll(async () => (app = await testApp({ clock: () => now })))
afterAll(() => app.close())
beforeEach(() => {
  now = new Date(NOON)
})
const post = (body: object) => app.send.post('/v1/api-keys').set(asAdmin).send(body)
const read = async (id: string) => (await app.send.get(`/v1/api-keys/${id}`).set(asAdmin).expect(200)).body
const isTaken = async (key: string) => (await app.send.get('/v1/categories').set(bearer(key))).status === 200

describe('POST /v1/api-keys', () => {
  test('issues a key and shows it this once', async () => {
    const answer = await post({
      name: ' Intake form ',
      scopes: ['intake'],
      expiresAt: '2026-02-01T13:00:00+01:00',
    })
    expect(answer.status).toBe(201)
    expect(answer.headers['cache-control']).toBe('no-store')
    const { key, ...shown } = answer.body
    expect(answer.headers['location']).toBe(`/v1/api-keys/${shown.id}`)
    expect(key).toMatch(new RegExp(`^sdk_${shown.id}_`))
    expect(shown).toEqual({
      id: shown.id,
      organisation: 'operator',
      kind: 'secret',
      name: 'Intake form',
      scopes: ['intake'],
      origins: [],
      state: 'active',
      bootstrap: false,
      issuedAt: atHour(0),
      issuedBy: shown.issuedBy,
      rotatedFrom: null,
      expiresAt: atHour(24),
      revokedAt: null,
      lastUsedAt: null,
    })
    expect(await read(shown.id)).toEqual(shown)
    expect(await read(shown.issuedBy)).toMatchObject({ bootstrap: true, scopes: ['admin'] })
    const everything = await app.send.get('/v1/api-keys?limit=200').set(asAdmin)
    expect(everything.text + JSON.stringify(await read(shown.id))).not.toContain(key.slice(21))
  })

  test('keeps nothing of a key but its digest', async () => {
    const { id, key } = await issueTestKey(app, { scopes: ['intake'] })
    const stored = await app.deps.keyStore.find(id)
    expect(Object.keys(stored!).sort()).toEqual([
      'bootstrap',
      'digest',
      'expiresAt',
      'id',
      'issuedAt',
      'issuedBy',
      'kind',
      'lastUsedAt',
      'name',
      'organisation',
      'origins',
      'revokedAt',
      'rotatedFrom',
      'scopes',
    ])
    expect(stored!.digest).toEqual(app.deps.digests.of(key))
    expect(JSON.stringify(stored)).not.toContain(key.slice(21))
  })

  test.each<[string, object, string[]]>([
    ['nothing', {}, ['/name required']],
    ['no scope', { name: 'x' }, ['/scopes required']],
    ['an empty list of scopes', { name: 'x', scopes: [] }, ['/scopes too-small']],
    ['an unknown scope', { name: 'x', scopes: ['root'] }, ['/scopes/0 invalid-value']],
    ['a scope twice', { name: 'x', scopes: ['intake', 'intake'] }, ['/scopes invalid']],
    [
      'an organisation that there is not',
      { name: 'x', scopes: ['intake'], organisation: 'nobody' },
      ['/organisation unknown-organisation'],
    ],
    [
      'what the service decides',
      { name: 'x', scopes: ['intake'], id: 'a', organisationId: 'b', bootstrap: true, key: 'c' },
      [
        '/bootstrap unknown-field',
        '/id unknown-field',
        '/key unknown-field',
        '/organisationId unknown-field',
      ],
    ],
    [
      'a time without its zone',
      { name: 'x', scopes: ['intake'], expiresAt: '2100-01-01T00:00:00' },
      ['/expiresAt invalid-format'],
    ],
    [
      'an end in the past',
      { name: 'x', scopes: ['intake'], expiresAt: atHour(0) },
      ['/expiresAt in-the-past'],
    ],
    [
      'a publishable key with more',
      { name: 'x', kind: 'publishable', scopes: ['admin'] },
      ['/origins required', '/scopes not-publishable'],
    ],
    ...[
      'https://www.example.org/',
      'www.example.org',
      'https://*.example.org',
      'ftp://example.org',
      'null',
      'https://EXAMPLE.org',
      'https://example.org:443',
      'https://u@example.org',
    ].map((origin): [string, object, string[]] => [
      `the origin ${origin}`,
      { name: 'x', kind: 'publishable', origins: [origin] },
      ['/origins/0 invalid'],
    ]),
  ])('refuses %s', async (_, body, faults) => {
    const found = faultsOf(expectProblem(await post(body), 422, 'faulty-input'))
    expect(found.map((fault) => fault.replace('invalid-format', 'invalid')).sort()).toEqual(
      faults.map((fault) => fault.replace('invalid-format', 'invalid')).sort(),
    )
  })

  test('refuses a request without a body', async () => {
    expectProblem(await app.send.post('/v1/api-keys').set(asAdmin), 400, 'malformed-body')
  })
})

describe('an expiry', () => {
  test('ends a key at its time', async () => {
    const { id, key } = await issueTestKey(app, { scopes: ['intake'], expiresAt: atHour(2) })
    now = new Date(NOON + 2 * HOUR - 1)
    expect([await isTaken(key), (await read(id)).state]).toEqual([true, 'active'])
    now = new Date(NOON + 2 * HOUR)
    expect([await isTaken(key), (await read(id)).state]).toEqual([false, 'expired'])
  })
})

describe('DELETE /v1/api-keys/{id}', () => {
  test('ends a key at once and for good; once more changes nothing', async () => {
    const { id, key } = await issueTestKey(app, { scopes: ['intake'] })
    expect(await isTaken(key)).toBe(true)
    const first = await app.send.delete(`/v1/api-keys/${id}`).set(asAdmin).expect(200)
    expect(first.body).toMatchObject({ id, state: 'revoked', revokedAt: atHour(0) })
    expect(await isTaken(key)).toBe(false)
    now = new Date(NOON + HOUR)
    const second = await app.send.delete(`/v1/api-keys/${id}`).set(asAdmin).expect(200)
    expect(second.body).toEqual(first.body)
  })

  test('does not know a key by anything but its id', async () => {
    for (const id of ['nothing', '%00', '..%2f', encodeURIComponent("' OR true --")])
      expectProblem(await app.send.delete(`/v1/api-keys/${id}`).set(asAdmin), 404, 'unknown-key')
  })

  test('leaves the key of the setting to the setting', async () => {
    const { issuedBy } = await read((await issueTestKey(app, { scopes: ['intake'] })).id)
    expectProblem(await app.send.delete(`/v1/api-keys/${issuedBy}`).set(asAdmin), 409, 'bootstrap-key')
    const rotation = app.send.post(`/v1/api-keys/${issuedBy}/rotations`).set(asAdmin)
    expectProblem(await rotation.send({}), 409, 'bootstrap-key')
  })
})

describe('POST /v1/api-keys/{id}/rotations', () => {
  const rotate = (id: string, body?: object) =>
    app.send.post(`/v1/api-keys/${id}/rotations`).set(asAdmin).send(body)

  test('issues a successor that may do the same, and lets the key end a day later', async () => {
    const old = await issueTestKey(app, { scopes: ['intake', 'estimate'], expiresAt: atHour(48) })
    now = new Date(NOON + HOUR)
    const { status, body, headers } = await rotate(old.id)
    expect([status, headers['location']]).toEqual([201, `/v1/api-keys/${body.id}`])
    expect(body).toMatchObject({
      scopes: ['intake', 'estimate'],
      name: 'A key for a test',
      rotatedFrom: old.id,
      issuedAt: atHour(1),
      expiresAt: atHour(49),
      state: 'active',
    })
    expect(await read(old.id)).toMatchObject({ state: 'active', expiresAt: atHour(25) })
    now = new Date(NOON + 25 * HOUR - 1)
    expect([await isTaken(old.key), await isTaken(body.key)]).toEqual([true, true])
    now = new Date(NOON + 25 * HOUR)
    expect([await isTaken(old.key), await isTaken(body.key)]).toEqual([false, true])
  })

  test('keeps both valid for the overlap that is asked for, thirty days at most; none ends the key at once', async () => {
    const [one, other] = [
      await issueTestKey(app, { scopes: ['intake'] }),
      await issueTestKey(app, { scopes: ['intake'] }),
    ]
    await rotate(one.id, { overlapHours: 720 }).expect(201)
    expect((await read(one.id)).expiresAt).toBe(atHour(720))
    await rotate(other.id, { overlapHours: 0, expiresAt: atHour(5) }).expect(201)
    expect(await isTaken(other.key)).toBe(false)
    const problem = expectProblem(
      await rotate(one.id, { overlapHours: 721, expiresAt: atHour(-1) }),
      422,
      'faulty-input',
    )
    expect(faultsOf(problem)).toEqual(['/overlapHours too-big'])
    for (const overlapHours of [-1, '24', null, 1e308])
      expectProblem(await rotate(one.id, { overlapHours }), 422, 'faulty-input')
  })

  test('is done once for a key, and never for one that has ended', async () => {
    const [one, ended] = [
      await issueTestKey(app, { scopes: ['intake'] }),
      await issueTestKey(app, { scopes: ['intake'] }),
    ]
    const { body } = await rotate(one.id, {}).expect(201)
    expect(expectProblem(await rotate(one.id, {}), 409, 'key-rotated')).toMatchObject({ successor: body.id })
    await app.send.delete(`/v1/api-keys/${ended.id}`).set(asAdmin).expect(200)
    expectProblem(await rotate(ended.id, {}), 409, 'key-ended')
    expectProblem(await rotate('nothing', {}), 404, 'unknown-key')
  })
})

describe('GET /v1/api-keys', () => {
  test('gives each key once on a walk through its pages, newest first, whatever is issued meanwhile', async () => {
    for (let count = 0; count < 5; count++) {
      now = new Date(now.getTime() + 1_000)
      await issueTestKey(app, { scopes: ['intake'] })
    }
    const all = (await app.send.get('/v1/api-keys?limit=200').set(asAdmin)).body.items.map(
      ({ id }: { id: string }) => id,
    )
    const walked: string[] = []
    let next: string | undefined = '/v1/api-keys?limit=2'
    while (next !== undefined) {
      const page: Response = await app.send.get(next).set(asAdmin).expect(200)
      walked.push(...page.body.items.map(({ id }: { id: string }) => id))
      next = /<(.*)>; rel="next"/.exec(page.headers['link'] ?? '')?.[1]
      expect(page.body.nextCursor === null).toBe(next === undefined)
      now = new Date(now.getTime() + 1_000)
      await issueTestKey(app, { scopes: ['intake'] })
    }
    expect(walked).toEqual(all)
    expect(all.length).toBeGreaterThan(5)
  })

  test('refuses a cursor of another list or filter, or of nobody', async () => {
    await issueTestKey(app, { scopes: ['intake'] })
    const { nextCursor } = (await app.send.get('/v1/api-keys?limit=1').set(asAdmin)).body
    for (const address of [
      `/v1/api-keys?organisation=operator&cursor=${nextCursor}`,
      `/v1/audit-events?cursor=${nextCursor}`,
      '/v1/api-keys?cursor=nonsense',
      `/v1/api-keys?cursor=${Buffer.from('{"place":"1; DROP TABLE api_key","of":"x"}').toString('base64url')}`,
    ])
      expectProblem(await app.send.get(address).set(asAdmin), 400, 'faulty-cursor')
  })
})

describe('organisations', () => {
  test('are made by the operator, listed in the order of their codes, and made once', async () => {
    const make = (body: object) => app.send.post('/v1/organisations').set(asAdmin).send(body)
    for (const code of ['zeta', 'alpha-2']) await make({ code, name: `The ${code}` }).expect(201)
    expectProblem(await make({ code: 'zeta', name: 'Again' }), 409, 'organisation-exists')
    const first = await app.send.get('/v1/organisations?limit=1').set(asAdmin).expect(200)
    expect(first.body.items).toEqual([{ code: 'alpha-2', name: 'The alpha-2', madeAt: atHour(0) }])
    const rest = await app.send
      .get(/<(.*)>/.exec(first.headers['link']!)![1]!.replace('limit=1', 'limit=50'))
      .set(asAdmin)
    expect(rest.body.items.map(({ code }: { code: string }) => code)).toEqual(['operator', 'zeta'])
    for (const code of ['', 'A', 'a b', '-a', 'a--b', 'ä', 'a'.repeat(65)])
      expectProblem(await make({ code, name: 'x' }), 422, 'faulty-input')
  })
})
