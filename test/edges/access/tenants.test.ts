import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey, type TestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let app: TestApp
let [ours, theirs, theirOther]: TestKey[] = []
let [asUs, asThem]: Record<string, string>[] = []
beforeAll(async () => {
  app = await testApp()
  ours = await issueTestKey(app, { scopes: ['admin'], organisation: 'our-utility' })
  theirs = await issueTestKey(app, { scopes: ['admin'], organisation: 'their-utility' })
  ;[asUs, asThem] = [bearer(ours.key), bearer(theirs.key)]
  const answer = await app.send
    .post('/v1/api-keys')
    .set(asThem)
    .send({ name: 'Other', scopes: ['intake'] })
    .expect(201)
  theirOther = answer.body
})
afterAll(() => app.close())

const get = (address: string, headers = asUs!) => app.send.get(address).set(headers)
/** An answer without what is another one each time. */
const comparable = ({ status, body, headers }: Awaited<ReturnType<typeof get>>, id: string) => {
  const { requestId, ...rest } = body
  return JSON.stringify([status, rest, headers['content-type']])
    .replaceAll(id, '…')
    .replaceAll(String(requestId), '…')
}

describe('an admin of one organisation', () => {
  test('cannot tell another’s key from one that does not exist: reading, revoking, rotating it', async () => {
    const none = 'a'.repeat(16)
    for (const id of [theirs!.id, theirOther!.id]) {
      for (const call of [
        (key: string) => get(`/v1/api-keys/${key}`),
        (key: string) => app.send.delete(`/v1/api-keys/${key}`).set(asUs!),
        (key: string) => app.send.post(`/v1/api-keys/${key}/rotations`).set(asUs!).send({}),
      ]) {
        const answer = await call(id)
        expectProblem(answer, 404, 'unknown-key')
        expect(comparable(answer, id)).toBe(comparable(await call(none), none))
      }
    }
    expect((await get(`/v1/api-keys/${theirOther!.id}`, asThem)).body.state).toBe('active')
  })

  test('sees its own keys alone, also where it asks for another’s', async () => {
    const listed = async (query = '') => (await get(`/v1/api-keys${query}`).expect(200)).body.items
    expect(await listed()).toMatchObject([{ id: ours!.id, organisation: 'our-utility' }])
    expect(await listed('?organisation=our-utility')).toHaveLength(1)
    expect(await listed('?organisation=their-utility')).toEqual([])
    expect(await listed('?organisation=nobody')).toEqual([])
  })

  test('cannot issue a key of another, and does not learn which there are', async () => {
    const issue = (organisation: string) =>
      app.send
        .post('/v1/api-keys')
        .set(asUs!)
        .send({ name: 'x', scopes: ['admin'], organisation })
    const answers = await Promise.all(['their-utility', 'operator', 'nobody'].map(issue))
    for (const answer of answers)
      expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
        '/organisation unknown-organisation',
      ])
    const [one, two, three] = ['their-utility', 'operator', 'nobody'].map((code, index) =>
      comparable(answers[index]!, code),
    )
    expect([one, two]).toEqual([three, three])
    await app.send
      .post('/v1/api-keys')
      .set(asUs!)
      .send({ name: 'x', scopes: ['intake'], organisation: 'our-utility' })
      .expect(201)
  })

  test('cannot make or list organisations', async () => {
    const make = app.send.post('/v1/organisations').set(asUs!).send({ code: 'third', name: 'Third' })
    expectProblem(await make, 403, 'operator-only')
    expectProblem(await get('/v1/organisations'), 403, 'operator-only')
  })

  test('gets nothing of another’s with a cursor that was made for the other', async () => {
    for (const list of ['api-keys', 'audit-events']) {
      const { nextCursor } = (await get(`/v1/${list}?limit=1`, asThem)).body
      expect(nextCursor).not.toBeNull()
      const { body } = await get(`/v1/${list}?limit=200&cursor=${nextCursor}`).expect(200)
      expect(JSON.stringify(body)).not.toContain('their-utility')
    }
  })

  test('reads what concerns its own organisation in the audit trail, also what the operator did, and no more', async () => {
    const { items } = (await get('/v1/audit-events?limit=200').expect(200)).body
    expect(items.length).toBeGreaterThan(1)
    expect(new Set(items.map(({ concerns }: { concerns: string }) => concerns))).toEqual(
      new Set(['our-utility']),
    )
    expect(new Set(items.map(({ organisation }: { organisation: string }) => organisation))).toEqual(
      new Set(['operator', 'our-utility']),
    )
    expect((await get('/v1/audit-events?organisation=their-utility').expect(200)).body.items).toEqual([])
    const csv = (await get('/v1/audit-events').set('accept', 'text/csv').expect(200)).text
    expect(csv).toContain('our-utility')
    expect(csv).not.toContain('their-utility')
  })

  test('cannot tell another’s audit event from one that does not exist', async () => {
    const { items } = (await get('/v1/audit-events', asThem)).body
    const { id } = items[0]
    const answer = await get(`/v1/audit-events/${id}`)
    expectProblem(answer, 404, 'unknown-audit-event')
    expect(comparable(answer, id)).toBe(comparable(await get('/v1/audit-events/987654'), '987654'))
    await get(`/v1/audit-events/${id}`, asThem).expect(200)
  })
})

describe('an admin of the operator', () => {
  test('sees and manages the keys of all, and reads the whole trail', async () => {
    const all = (await get('/v1/api-keys?limit=200', asAdmin)).body.items as { organisation: string }[]
    expect(new Set(all.map(({ organisation }) => organisation))).toEqual(
      new Set(['operator', 'our-utility', 'their-utility']),
    )
    const some = (await get('/v1/api-keys?organisation=their-utility', asAdmin)).body.items
    expect(some.map(({ id }: { id: string }) => id).sort()).toEqual([theirs!.id, theirOther!.id].sort())
    const trail = (await get('/v1/audit-events?limit=200', asAdmin)).body.items as { concerns: string }[]
    expect(new Set(trail.map(({ concerns }) => concerns)).size).toBeGreaterThanOrEqual(3)
    const rotated = await app.send
      .post(`/v1/api-keys/${theirOther!.id}/rotations`)
      .set(asAdmin)
      .send({})
      .expect(201)
    expect(rotated.body.organisation).toBe('their-utility')
    await get(`/v1/api-keys/${rotated.body.id}`, asThem).expect(200)
  })
})

describe('over GraphQL', () => {
  const ask = async (query: string, headers = asUs!) =>
    (await app.send.post('/graphql').set(headers).send({ query }).expect(200)).body
  const idsOf = async (field: string, headers: Record<string, string>) =>
    (await ask(`{ ${field}(first: 50) { nodes: edges { node { id } } } }`, headers)).data[field].nodes.map(
      ({ node }: { node: { id: string } }) => node.id,
    ) as string[]

  test.each(['apiKeys', 'auditEvents'])(
    'node and nodes are null for what another may see of %s',
    async (field) => {
      const [mine, foreign] = [await idsOf(field, asUs!), await idsOf(field, asThem!)]
      const hidden = foreign.filter((id) => !mine.includes(id))
      expect(hidden.length).toBeGreaterThan(0)
      const { data, errors } = await ask(
        `{ node(id: "${hidden[0]!}") { id } nodes(ids: ${JSON.stringify([mine[0], hidden[0], 'nonsense'])}) { id } }`,
      )
      expect([errors, data]).toEqual([undefined, { node: null, nodes: [{ id: mine[0] }, null, null] }])
      expect((await ask(`{ node(id: "${mine[0]!}") { id } }`, {})).data).toEqual({ node: null })
      expect((await ask(`{ node(id: "${hidden[0]!}") { id } }`, asAdmin)).data.node).not.toBeNull()
    },
  )

  test.each(['apiKeys', 'auditEvents'])('%s shows and counts its own alone', async (field) => {
    const { data } = await ask(`{ ${field}(first: 200) { totalCount edges { node { id } } } }`)
    const everything = await ask(`{ ${field} { totalCount } }`, asAdmin)
    expect(data[field].totalCount).toBe(data[field].edges.length)
    expect(data[field].totalCount).toBeLessThan(everything.data[field].totalCount)
    const foreign = await ask(`{ ${field}(organisation: "their-utility") { totalCount edges { cursor } } }`)
    expect(foreign.data[field]).toEqual({ totalCount: 0, edges: [] })
  })

  test('mutations answer another’s key like one that does not exist', async () => {
    const refusal = async (id: string) =>
      JSON.stringify(
        (
          await ask(
            `mutation { revokeApiKey(keyId: "${id}") { ...E } rotateApiKey(keyId: "${id}") { ...E } } fragment E on NotFoundError { code message }`,
          )
        ).data,
      ).replaceAll(id, '…')
    expect(await refusal(theirs!.id)).toBe(await refusal('a'.repeat(16)))
    expect(await refusal(theirs!.id)).toContain('unknown-key')
  })
})

test('an editor of another organisation than the operator’s cannot touch the catalogue that all share', async () => {
  const editor = await issueTestKey(app, { scopes: ['catalogue:edit'], organisation: 'our-utility' })
  const { body } = await app.send.get('/v1/categories/television')
  const answered = ['sampleData', 'retired']
  const content = Object.fromEntries(Object.entries(body).filter(([name]) => !answered.includes(name)))
  const tag = (await app.send.get('/v1/categories/television')).headers['etag']!
  const edits = [
    app.send
      .post('/v1/categories?reason=For+us')
      .send({ ...content, code: 'our-own', name: 'Ours', aliases: [] }),
    app.send
      .put('/v1/categories/television?reason=For+us')
      .set('if-match', tag)
      .send({ ...content, name: 'Ours' }),
    app.send.delete('/v1/categories/television?reason=For+us').set('if-match', tag),
  ]
  for (const edit of edits) expectProblem(await edit.set(bearer(editor.key)), 403, 'operator-only')
  const graphql = await app.send.post('/graphql').set(bearer(editor.key)).send({
    query:
      'mutation { retireCategory(input: { code: "television", basedOn: 1, reason: "For us" }) { __typename ... on UserError { code } } }',
  })
  expect(graphql.body.data.retireCategory).toMatchObject({ code: 'operator-only' })
  expect(app.deps.catalogueMemory.current().revision).toBe(1)
})
