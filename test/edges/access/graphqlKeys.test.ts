import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { asAdmin, bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let now = new Date('2026-01-31T12:00:00Z')
let app: TestApp
beforeAll(async () => {
  app = await testApp({ clock: () => now })
  for (let count = 0; count < 5; count++) {
    now = new Date(now.getTime() + 60_000)
    await issueTestKey(app, { scopes: ['intake'] })
  }
})
afterAll(() => app.close())

const send = async (query: string, variables: object = {}, headers: Record<string, string> = asAdmin) =>
  (await app.send.post('/graphql').set(headers).send({ query, variables })).body
const ask = async (query: string, variables: object = {}, headers = asAdmin) => {
  const { data, errors } = await send(query, variables, headers)
  expect(errors).toBeUndefined()
  return data
}

const ISSUE = `mutation ($input: IssueApiKeyInput!) {
  issueApiKey(input: $input) {
    __typename
    ... on IssuedApiKey { key apiKey { id keyId organisation kind name scopes origins state bootstrap issuedAt issuedBy rotatedFrom expiresAt revokedAt lastUsedAt } }
    ... on UserError { code message }
    ... on FaultyInputError { faults { pointer code message } }
  }
}`

describe('issueApiKey', () => {
  test('issues the very key that REST does, and shows it this once', async () => {
    const input = { name: 'Intake', scopes: ['CATALOGUE_EDIT', 'INTAKE'], expiresAt: '2100-01-01T00:00:00Z' }
    const { issueApiKey } = await ask(ISSUE, { input })
    const { key, apiKey } = issueApiKey
    const { body } = await app.send.get(`/v1/api-keys/${apiKey.keyId}`).set(asAdmin).expect(200)
    const { id, keyId, kind, scopes, state, ...same } = apiKey
    expect({
      ...same,
      id: keyId,
      kind: 'secret',
      scopes: ['catalogue:edit', 'intake'],
      state: 'active',
    }).toEqual(body)
    expect([kind, scopes, state]).toEqual(['SECRET', ['CATALOGUE_EDIT', 'INTAKE'], 'ACTIVE'])
    expect(
      (await ask('query ($id: ID!) { node(id: $id) { ... on ApiKey { keyId } } }', { id })).node,
    ).toEqual({ keyId })
    await app.send.get('/v1/categories').set(bearer(key)).expect(200)
  })

  test('names every fault at once in its result, and then issues nothing', async () => {
    const count = async () => (await ask('{ apiKeys { totalCount } }')).apiKeys.totalCount
    const before = await count()
    const input = { name: '', kind: 'PUBLISHABLE', origins: ['nonsense'], organisation: 'nobody' }
    const { issueApiKey } = await ask(ISSUE, { input })
    expect(issueApiKey).toMatchObject({ __typename: 'FaultyInputError', code: 'faulty-input' })
    expect(issueApiKey.faults.map(({ pointer }: { pointer: string }) => pointer).sort()).toEqual([
      '/name',
      '/origins/0',
    ])
    const missing = await ask(ISSUE, { input: { name: 'x', scopes: ['INTAKE'], organisation: 'nobody' } })
    expect(missing.issueApiKey).toMatchObject({
      __typename: 'FaultyInputError',
      faults: [{ pointer: '/organisation', code: 'unknown-organisation' }],
    })
    expect(await count()).toBe(before)
  })

  test('is an event of the trail like any other write, with the request that did it', async () => {
    const headers = { ...asAdmin, 'x-request-id': 'over-graphql' }
    const { issueApiKey } = await ask(ISSUE, { input: { name: 'Trail', scopes: ['INTAKE'] } }, headers)
    const { auditEvents } = await ask(
      'query ($id: String) { auditEvents(subjectId: $id) { totalCount edges { node { action requestId keyId before after } } } }',
      { id: issueApiKey.apiKey.keyId },
    )
    const [{ node }] = auditEvents.edges
    expect([auditEvents.totalCount, node.action, node.requestId, node.before]).toEqual([
      1,
      'api-key.issue',
      'over-graphql',
      null,
    ])
    expect(JSON.parse(node.after)).toMatchObject({ name: 'Trail', scopes: ['intake'] })
  })
})

describe('rotateApiKey and revokeApiKey', () => {
  const ROTATE = `mutation ($keyId: String!, $overlapHours: Float) { rotateApiKey(keyId: $keyId, overlapHours: $overlapHours) {
    __typename ... on IssuedApiKey { key apiKey { keyId rotatedFrom } } ... on UserError { code } ... on FaultyInputError { faults { pointer } } } }`
  const REVOKE = `mutation ($keyId: String!) { revokeApiKey(keyId: $keyId) {
    __typename ... on RevokedApiKey { apiKey { keyId state } } ... on UserError { code } } }`

  test('do what REST does, and answer refusals by type', async () => {
    const old = await issueTestKey(app, { scopes: ['intake'] })
    const rotated = (await ask(ROTATE, { keyId: old.id, overlapHours: 1 })).rotateApiKey
    expect(rotated.apiKey.rotatedFrom).toBe(old.id)
    await app.send.get('/v1/categories').set(bearer(rotated.key)).expect(200)
    const again = await ask(ROTATE, { keyId: old.id })
    expect(again.rotateApiKey).toEqual({ __typename: 'ConflictError', code: 'key-rotated' })
    const faulty = await ask(ROTATE, { keyId: old.id, overlapHours: 721 })
    expect(faulty.rotateApiKey).toMatchObject({
      __typename: 'FaultyInputError',
      faults: [{ pointer: '/overlapHours' }],
    })
    const revoked = await ask(REVOKE, { keyId: rotated.apiKey.keyId })
    expect(revoked.revokeApiKey.apiKey).toEqual({ keyId: rotated.apiKey.keyId, state: 'REVOKED' })
    await app.send.get('/v1/categories').set(bearer(rotated.key)).expect(401)
    expect((await ask(REVOKE, { keyId: 'nothing' })).revokeApiKey).toEqual({
      __typename: 'NotFoundError',
      code: 'unknown-key',
    })
  })
})

describe.each(['apiKeys', 'auditEvents'])('the connection %s', (field) => {
  interface Page {
    readonly edges: readonly { readonly cursor: string; readonly node: { readonly id: string } }[]
    readonly pageInfo: Readonly<Record<string, unknown>>
    readonly totalCount: number
  }
  const page = async (args: string): Promise<Page> =>
    (
      await ask(
        `{ ${field}${args} { totalCount edges { cursor node { id } } pageInfo { hasNextPage hasPreviousPage startCursor endCursor } } }`,
      )
    )[field]
  const ids = ({ edges }: Page) => edges.map(({ node }) => node.id)
  let all: Page
  beforeAll(async () => {
    all = await page('(first: 200)')
    expect(all.edges.length).toBeGreaterThan(5)
  })

  test('walks the list forwards and backwards, each item once and in one order', async () => {
    const forwards: string[] = []
    for (let after = ''; ;) {
      const part = await page(`(first: 2${after})`)
      forwards.push(...ids(part))
      expect(part.pageInfo['hasPreviousPage']).toBe(after !== '')
      if (part.pageInfo['hasNextPage'] !== true) break
      after = `, after: "${String(part.pageInfo['endCursor'])}"`
    }
    const backwards: string[] = []
    for (let before = ''; ;) {
      const part = await page(`(last: 2${before})`)
      backwards.unshift(...ids(part))
      expect(part.pageInfo['hasNextPage']).toBe(before !== '')
      if (part.pageInfo['hasPreviousPage'] !== true) break
      before = `, before: "${String(part.pageInfo['startCursor'])}"`
    }
    expect(forwards).toEqual(ids(all))
    expect(backwards).toEqual(ids(all))
    expect(all.totalCount).toBe(all.edges.length)
  })

  test('says exactly whether there is more, at the edges of the list and between two cursors', async () => {
    const length = all.edges.length
    expect((await page(`(first: ${length})`)).pageInfo).toMatchObject({
      hasNextPage: false,
      hasPreviousPage: false,
    })
    expect((await page(`(first: ${length - 1})`)).pageInfo).toMatchObject({
      hasNextPage: true,
      hasPreviousPage: false,
    })
    const [from, to] = [all.edges[0]!.cursor, all.edges[3]!.cursor]
    const between = await page(`(first: 9, after: "${from}", before: "${to}")`)
    expect(ids(between)).toEqual(ids(all).slice(1, 3))
    expect(between.pageInfo).toMatchObject({ hasNextPage: true, hasPreviousPage: true })
    const empty = await page(`(first: 5, after: "${all.edges.at(-1)!.cursor}")`)
    expect(empty).toMatchObject({
      edges: [],
      pageInfo: { hasNextPage: false, startCursor: null, endCursor: null },
    })
    expect((await page('(first: 0)')).pageInfo).toMatchObject({ hasNextPage: true })
  })

  test.each([
    ['(first: -1)', '/first'],
    ['(first: 201)', '/first'],
    ['(first: 1, last: 1)', '/last'],
    ['(after: "nonsense")', '/after'],
    ['(before: "")', '/before'],
    ['(organisation: "NO CODE")', '/organisation'],
  ])('refuses %s as the caller’s fault', async (args, pointer) => {
    const { data, errors } = await send(`{ ${field}${args} { totalCount } }`)
    expect(data).toEqual({ [field]: null })
    expect(errors[0].extensions).toMatchObject({ code: 'BAD_USER_INPUT', errors: [{ pointer }] })
  })

  test('takes a cursor of REST, and refuses one of another filter', async () => {
    const address = field === 'apiKeys' ? '/v1/api-keys' : '/v1/audit-events'
    const { nextCursor } = (await app.send.get(`${address}?limit=2`).set(asAdmin)).body
    expect(ids(await page(`(first: 1, after: "${nextCursor}")`))).toEqual(ids(all).slice(2, 3))
    const { errors } = await send(
      `{ ${field}(organisation: "operator", after: "${nextCursor}") { totalCount } }`,
    )
    expect(errors[0].extensions.errors).toMatchObject([{ pointer: '/after', code: 'faulty-cursor' }])
  })

  test('needs a key with the scope admin', async () => {
    const { key } = await issueTestKey(app, { scopes: ['estimate', 'intake', 'catalogue:edit'] })
    for (const [headers, reason] of [
      [{}, 'key-required'],
      [bearer(key), 'scope-missing'],
    ] as const) {
      const { data, errors } = await send(`{ ${field} { totalCount } }`, {}, headers)
      expect([data[field], errors[0].extensions.reason]).toEqual([null, reason])
    }
  })
})
