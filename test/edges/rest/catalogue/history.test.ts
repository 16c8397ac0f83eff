import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { expectProblem, faultsOf } from '../../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { testCategories } from '../../../helpers/testCatalogue.ts'
import { editorOf, pagesOf } from './editor.ts'

let service: TestApp
const editor = editorOf(() => service)
const draw = testCategories.find(({ code }) => code === 'television')!.modes[0]!.draws[0]!
const withDraw = (changes: object) => ({
  modes: [{ mode: 'standby', defaultHoursPerWeek: 140, draws: [{ ...draw, ...changes }] }],
})
const household = { devices: [{ category: 'television', quantity: 2 }, { category: 'router' }] }
const estimate = async (catalogueRevision?: number) =>
  (
    await service.send
      .post('/v1/estimates')
      .send({ ...household, catalogueRevision })
      .expect(200)
  ).text

/** What the catalogue gave when each revision was the newest: its list and the estimate of a household. */
const seen: { list: string; estimate: string }[] = []
const look = async () => {
  const { text } = await service.send.get('/v1/categories?includeRetired=true').expect(200)
  seen.push({ list: text, estimate: await estimate() })
}

/** Revisions: 2 television's figure, 3 freezer retired, 4 lava-lamp made, 5 television's figure again and its name. */
beforeAll(async () => {
  service = await testApp()
  await look()
  const change = async (path: string, body: unknown) => {
    const code = path.split('/').at(-1)!
    const headers = { 'if-match': await editor.tagOfCategory(code) }
    expect((await editor.patch(path, { body, headers })).status).toBe(200)
    await look()
  }
  await change('/v1/categories/television', withDraw({ typicalW: 2 }))
  const headers = { 'if-match': await editor.tagOfCategory('freezer') }
  expect((await editor.retire('/v1/categories/freezer', { headers })).status).toBe(200)
  await look()
  const lamp = { ...testCategories[6], code: 'lava-lamp', name: 'Lava lamp', aliases: [] }
  expect((await editor.post('/v1/categories', { body: lamp })).status).toBe(201)
  await look()
  await change('/v1/categories/television', { name: 'TV set', ...withDraw({ typicalW: 2.5, highW: 7 }) })
})
afterAll(() => service.close())

describe('an estimate at a past revision', () => {
  test('has the very bytes of that time, whatever was edited since', async () => {
    expect(new Set(seen.map((each) => each.estimate)).size).toBe(5)
    for (const [index, each] of seen.entries()) expect(await estimate(index + 1)).toBe(each.estimate)
  })
})

describe('GET /v1/catalogue/revisions', () => {
  test('lists what was done, newest first, in pages that lead to each other', async () => {
    const pages = await pagesOf(service, '/v1/catalogue/revisions?limit=2')
    expect(pages.map(({ catalogueRevision }) => catalogueRevision)).toEqual([5, 5, 5])
    expect(pages.map(({ items }) => items.map(({ number }: { number: number }) => number))).toEqual([
      [5, 4],
      [3, 2],
      [1],
    ])
  })

  test('is not sent again to who has it', async () => {
    const { headers } = await service.send.get('/v1/catalogue/revisions')
    await service.send.get('/v1/catalogue/revisions').set('if-none-match', headers['etag']!).expect(304)
  })

  test('refuses a cursor of another list', async () => {
    const { body } = await service.send.get('/v1/categories?limit=1')
    const answer = await service.send.get(`/v1/catalogue/revisions?cursor=${body.nextCursor}`)
    expectProblem(answer, 400, 'faulty-cursor')
  })
})

describe('GET /v1/catalogue/revisions/{number}', () => {
  test('says who, why, when, and what was before and after', async () => {
    const { body } = await service.send.get('/v1/catalogue/revisions/5').expect(200)
    expect(body).toMatchObject({
      number: 5,
      action: 'change',
      reason: 'a test',
      changeCount: 1,
      nextCursor: null,
    })
    expect(body.changes).toMatchObject([
      {
        code: 'television',
        name: 'TV set',
        kind: 'changed',
        before: { name: 'Television' },
        after: { name: 'TV set' },
        fields: [
          { pointer: '/name', before: 'Television', after: 'TV set' },
          { pointer: '/modes/0/draws/0/typicalW', before: 2, after: 2.5 },
          { pointer: '/modes/0/draws/0/highW', before: 3, after: 7 },
        ],
      },
    ])
  })

  test('gives the changes of a large revision in pages', async () => {
    const pages = await pagesOf(service, '/v1/catalogue/revisions/1?limit=3')
    expect(pages.map(({ changeCount }) => changeCount)).toEqual([7, 7, 7])
    const codes = pages.flatMap(({ changes }) => changes.map(({ code }: { code: string }) => code))
    expect(codes).toEqual(testCategories.map(({ code }) => code))
  })

  test('takes a cursor only for the revision that gave it', async () => {
    const { body } = await service.send.get('/v1/catalogue/revisions/1?limit=3')
    const answer = await service.send.get(`/v1/catalogue/revisions/2?cursor=${body.nextCursor}`)
    expectProblem(answer, 400, 'faulty-cursor')
  })

  test.each(['/6', '/6/categories', '/1/diff/6', '/6/diff/1'])(
    '%s is not found, and the newest is named',
    async (path) => {
      const answer = await service.send.get(`/v1/catalogue/revisions${path}`)
      expect(expectProblem(answer, 404, 'unknown-revision')['newest']).toBe(5)
    },
  )

  test.each(['/0', '/x', '/1.5', '/1/diff/-1', '/99999999999'])(
    '%s is no number of a revision',
    async (path) => {
      const answer = await service.send.get(`/v1/catalogue/revisions${path}`)
      expect(faultsOf(expectProblem(answer, 400, 'faulty-query'))).toHaveLength(1)
    },
  )
})

describe('GET /v1/catalogue/revisions/{number}/categories', () => {
  test('gives the whole catalogue as it was, retired categories too', async () => {
    for (const [index, each] of seen.entries()) {
      const { text } = await service.send.get(`/v1/catalogue/revisions/${index + 1}/categories`).expect(200)
      expect(text).toBe(each.list)
    }
  })

  test('comes in pages', async () => {
    const first = await service.send.get('/v1/catalogue/revisions/1/categories?limit=5').expect(200)
    const second = await service.send.get(/^<([^>]+)>/.exec(first.headers['link']!)![1]!).expect(200)
    const codes = [...first.body.items, ...second.body.items].map(({ code }: { code: string }) => code)
    expect(codes).toEqual(testCategories.map(({ code }) => code))
    expect(second.body.nextCursor).toBeNull()
  })
})

describe('GET /v1/catalogue/revisions/{number}/diff/{other}', () => {
  const diff = async (from: number, to: number) =>
    (await service.send.get(`/v1/catalogue/revisions/${from}/diff/${to}`).expect(200)).body

  test('tells what was added, changed field by field, and retired', async () => {
    const { changes, counts } = await diff(1, 5)
    expect(counts).toEqual({ added: 1, changed: 1, retired: 1, restored: 0 })
    expect(changes.map(({ code, kind }: { code: string; kind: string }) => `${code} ${kind}`)).toEqual([
      'freezer retired',
      'lava-lamp added',
      'television changed',
    ])
    expect(changes[2].fields).toHaveLength(3)
    expect(changes[2].fields).toEqual(
      expect.arrayContaining([
        { pointer: '/name', before: 'Television', after: 'TV set' },
        { pointer: '/modes/0/draws/0/typicalW', before: 1, after: 2.5 },
        { pointer: '/modes/0/draws/0/highW', before: 3, after: 7 },
      ]),
    )
  })

  test('the other way round is the way back', async () => {
    const { changes, counts } = await diff(5, 1)
    expect(counts).toEqual({ added: 0, changed: 1, retired: 1, restored: 1 })
    expect(changes[2].fields).toContainEqual({ pointer: '/name', before: 'TV set', after: 'Television' })
  })

  test('of a revision with itself is empty', async () => {
    expect((await diff(3, 3)).changes).toEqual([])
  })

  test('comes in pages', async () => {
    const first = await service.send.get('/v1/catalogue/revisions/1/diff/5?limit=2').expect(200)
    const second = await service.send.get(/^<([^>]+)>/.exec(first.headers['link']!)![1]!).expect(200)
    expect([first.body.changes.length, second.body.changes.length, second.body.nextCursor]).toEqual([
      2,
      1,
      null,
    ])
  })
})

describe('POST /v1/catalogue/revisions/{number}/restore', () => {
  test('makes a new revision that is as the old one was, and retires what there was none of', async () => {
    const own = await testApp({ catalogueStore: service.deps.catalogueStore, categories: [] })
    const its = editorOf(() => own)
    const query = { reason: 'That was a mistake', confirm: 'true' }
    const answer = await its.post('/v1/catalogue/revisions/1/restore', {
      query,
      headers: { 'if-match': await its.tagOfCatalogue() },
    })
    expect(answer.status).toBe(201)
    expect(answer.headers).toMatchObject({ location: '/v1/catalogue/revisions/6', etag: '"r6.json2"' })
    expect(answer.body).toMatchObject({
      restored: 1,
      counts: { added: 0, changed: 1, retired: 1, restored: 1 },
      revision: { number: 6, action: 'restore-revision', reason: 'That was a mistake' },
    })
    const { body } = await own.send.get('/v1/catalogue/revisions/6/categories')
    const lamp = body.items.find(({ code }: { code: string }) => code === 'lava-lamp')
    expect(lamp.retired).toBe(true)
    expect(body.items.filter((item: object) => item !== lamp)).toEqual(JSON.parse(seen[0]!.list).items)
    const again = await its.post('/v1/catalogue/revisions/1/restore', {
      query,
      headers: { 'if-match': await its.tagOfCatalogue() },
    })
    expect([again.status, again.body.revision, again.body.catalogueRevision]).toEqual([200, null, 6])
    await own.close()
  })

  test('needs If-Match with the newest revision, and tells what came since', async () => {
    const own = await testApp()
    const its = editorOf(() => own)
    const bare = await its.post('/v1/catalogue/revisions/1/restore')
    expectProblem(bare, 428, 'precondition-required')
    const stale = await its.tagOfCatalogue()
    const headers = { 'if-match': await its.tagOfCategory('freezer') }
    await its.patch('/v1/categories/freezer', { body: { name: 'Chest freezer' }, headers })
    const late = await its.post('/v1/catalogue/revisions/1/restore', { headers: { 'if-match': stale } })
    expect(expectProblem(late, 412, 'stale-revision')).toMatchObject({
      basedOn: 1,
      newest: 2,
      edits: [{ number: 2, reason: 'a test', author: { organisation: 'operator' } }],
      changes: [{ code: 'freezer', kind: 'changed' }],
    })
    await own.close()
  })

  test('asks for confirm where a figure would go back by more than a factor of three', async () => {
    const own = await testApp()
    const its = editorOf(() => own)
    const large = await its.patch('/v1/categories/television', {
      body: withDraw({ highW: 30 }),
      query: { reason: 'a test', confirm: 'true' },
      headers: { 'if-match': await its.tagOfCategory('television') },
    })
    expect(large.status).toBe(200)
    const back = await its.post('/v1/catalogue/revisions/1/restore', {
      headers: { 'if-match': await its.tagOfCatalogue() },
    })
    expect(expectProblem(back, 409, 'large-change')['changes']).toMatchObject([
      { category: 'television', figure: 'highW', beforeW: 30, afterW: 3 },
    ])
    await own.close()
  })
})
