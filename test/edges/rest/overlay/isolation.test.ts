import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { expectProblem } from '../../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../../helpers/keys.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { change, editorOf, type Headers, lay, own, remove } from './ownFigures.ts'

let service: TestApp
/** Another service, where nobody has laid anything. */
let empty: TestApp
let usThere: Headers
let [them, us]: Headers[] = []
let theirTags: Record<string, string>
beforeAll(async () => {
  service = await testApp()
  empty = await testApp()
  usThere = await editorOf(empty, 'our-utility')
  them = await editorOf(service, 'their-utility')
  us = await editorOf(service, 'our-utility')
  const answers = [
    await lay(service, them, 'television'),
    await lay(service, them, 'their-secret', { body: own('their-secret') }),
  ]
  theirTags = Object.fromEntries(answers.map(({ body, headers }) => [body.code, headers['etag']!]))
})
afterAll(async () => {
  await service.close()
  await empty.close()
})

const get = (address: string, headers: Headers) => service.send.get(address).set(headers)
/** An answer without what is another one each time. */
const comparable = ({ status, body, headers }: Awaited<ReturnType<typeof get>>) => {
  const { requestId, ...rest } = body as Record<string, unknown>
  return JSON.stringify([
    status,
    rest,
    headers['etag'],
    headers['vary'],
    headers['overlay-revision'],
  ]).replaceAll(String(requestId), '…')
}

describe('an editor of one organisation', () => {
  test('cannot tell another’s category from one that nobody has: reading, finding, changing, removing it', async () => {
    const code = 'their-secret'
    const headers = { 'if-match': theirTags[code]! }
    const body = { name: 'x' }
    for (const call of [
      ({ send }: TestApp, as: Headers) => send.get(`/v1/overlay/categories/${code}`).set(as),
      ({ send }: TestApp, as: Headers) => send.get(`/v1/categories/${code}`).set(as),
      ({ send }: TestApp, as: Headers) => send.get('/v1/categories?search=secret').set(as),
      (app: TestApp, as: Headers) => remove(app, as, code, headers),
      (app: TestApp, as: Headers) => change(app, as, code, { body, headers }),
      (app: TestApp, as: Headers) => change(app, as, code, { body }),
    ]) {
      const answer = await call(service, us!)
      expect(comparable(answer)).toBe(comparable(await call(empty, usThere)))
      expect(answer.text).not.toContain('their-utility')
    }
  })

  test('sees and counts its own alone: list, revisions, one revision, and by another’s cursor', async () => {
    expect((await get('/v1/overlay', us!).expect(200)).body).toEqual({
      items: [],
      nextCursor: null,
      overlayRevision: 0,
    })
    expect((await get('/v1/overlay/revisions', us!).expect(200)).body).toMatchObject({
      items: [],
      overlayRevision: 0,
    })
    for (const number of [1, 2, 3])
      expectProblem(await get(`/v1/overlay/revisions/${number}`, us!), 404, 'unknown-overlay-revision')
    for (const address of ['/v1/overlay', '/v1/overlay/revisions']) {
      const { nextCursor } = (await get(`${address}?limit=1`, them!).expect(200)).body
      expect(nextCursor).not.toBeNull()
      expectProblem(await get(`${address}?cursor=${nextCursor}`, us!), 400, 'faulty-cursor')
    }
  })

  test('gets no answer that another has: its tags are other ones, though both count their revisions alike', async () => {
    await lay(service, us!, 'television')
    await lay(service, us!, 'our-own', { body: own('our-own') })
    for (const address of [
      '/v1/overlay',
      '/v1/overlay/categories/television',
      '/v1/overlay/revisions',
      '/v1/overlay/revisions/1',
      '/v1/categories',
      '/v1/categories/television',
    ]) {
      const [ours, theirs] = [await get(address, us!).expect(200), await get(address, them!).expect(200)]
      expect(ours.headers['etag'], address).not.toBe(theirs.headers['etag'])
      expect(ours.headers['vary'], address).toContain('authorization')
      expect(ours.headers['cache-control'], address).toBe('private, no-cache')
      await get(address, { ...us!, 'if-none-match': theirs.headers['etag']! }).expect(200)
      expect(ours.text).not.toContain('their')
    }
    const stale = await remove(service, us!, 'television', { 'if-match': theirTags['television']! })
    expectProblem(stale, 412, 'stale-overlay')
  })

  test('leaves nothing of its own in another’s audit trail, and the operator’s admin has no overlay of theirs', async () => {
    const admin = bearer(
      (await issueTestKey(service, { scopes: ['admin'], organisation: 'our-utility' })).key,
    )
    const { text } = await get('/v1/audit-events?limit=200', admin).expect(200)
    expect(text).toContain('overlay.lay')
    expect(text).not.toContain('their')
    expect((await get('/v1/overlay', asAdmin).expect(200)).body.items).toEqual([])
  })

  test('cannot name an organisation anywhere', async () => {
    expectProblem(await get('/v1/overlay?organisation=their-utility', us!), 400, 'faulty-query')
    expectProblem(await get('/v1/categories?organisation=their-utility', us!), 400, 'faulty-query')
  })
})

describe('over GraphQL', () => {
  const ask = async (query: string, headers: Headers) =>
    (await service.send.post('/graphql').set(headers).send({ query }).expect(200)).body

  test('connections and nodes show its own alone; the id of another’s revision is null', async () => {
    const revisions =
      '{ overlayRevisions { totalCount edges { node { id code } } } overlayCategories { totalCount } }'
    const theirs = (await ask(revisions, them!)).data
    const fresh = await editorOf(service, 'third-utility')
    const thirds = (await ask(revisions, fresh)).data
    expect([theirs.overlayRevisions.totalCount, thirds.overlayRevisions.totalCount]).toEqual([2, 0])
    expect(thirds.overlayCategories.totalCount).toBe(0)
    const { id } = theirs.overlayRevisions.edges[0].node
    const node = `{ node(id: "${id}") { id } }`
    expect((await ask(node, them!)).data.node).toEqual({ id })
    for (const headers of [us!, fresh, asAdmin, {}]) expect((await ask(node, headers)).data.node).toBeNull()
  })

  test('a category is the caller’s own, and its id leads nobody to another’s', async () => {
    const question = '{ category(code: "their-secret") { id layer overlayRevision } }'
    const { id } = (await ask(question, them!)).data.category
    expect((await ask(question, us!)).data.category).toBeNull()
    expect((await ask(`{ node(id: "${id}") { id } }`, us!)).data.node).toBeNull()
    expect((await ask(`{ node(id: "${id}") { id } }`, them!)).data.node).toEqual({ id })
  })
})
