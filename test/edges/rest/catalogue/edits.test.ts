import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { expectProblem, faultsOf } from '../../../helpers/expectProblem.ts'
import { ADMIN_KEY, type TestApp, testApp } from '../../../helpers/testApp.ts'
import { testCategories } from '../../../helpers/testCatalogue.ts'
import { editorOf, withoutRetired } from './editor.ts'

let service: TestApp
beforeEach(async () => (service = await testApp()))
afterEach(() => service.close())
const editor = editorOf(() => service)

const television = testCategories.find(({ code }) => code === 'television')!
const lamp = withoutRetired({
  ...television,
  code: 'lava-lamp',
  name: 'Lava lamp',
  aliases: ['wax lamp'],
})
const read = async (code: string) => (await service.send.get(`/v1/categories/${code}`).expect(200)).body
const revisionNow = () => service.deps.catalogueMemory.current().revision

describe('POST /v1/categories', () => {
  test('adds a category as one revision with author, time and reason', async () => {
    const answer = await editor.post('/v1/categories', {
      body: lamp,
      query: { reason: 'Seen in many homes' },
    })
    expect(answer.status).toBe(201)
    expect(answer.body).toEqual({ ...lamp, retired: false, sampleData: true, layer: 'shared' })
    expect(answer.headers).toMatchObject({
      location: '/v1/categories/lava-lamp',
      etag: await editor.tagOfCategory('lava-lamp'),
      'catalogue-revision': '2',
    })
    expect(await editor.newest()).toMatchObject({
      number: 2,
      action: 'create',
      author: { organisation: 'operator', keyId: expect.any(String) },
      reason: 'Seen in many homes',
      at: '2026-01-31T12:00:00.000Z',
      changes: [{ code: 'lava-lamp', kind: 'added', before: null, after: { ...lamp, retired: false } }],
    })
  })

  test('refuses a code that is taken, also by a retired category', async () => {
    for (const code of ['television', 'cassette-deck']) {
      const answer = await editor.post('/v1/categories', { body: { ...lamp, code } })
      expect(expectProblem(answer, 409, 'category-exists')['detail']).toContain(code)
    }
    expect(revisionNow()).toBe(1)
  })

  test('names every fault of shape, address and trade at once, and stores nothing', async () => {
    const shape = await editor.post('/v1/categories', {
      body: { ...lamp, group: 'toys', colour: 'red' },
      query: { reason: 'x', confirm: 'true' },
    })
    expect(faultsOf(expectProblem(shape, 422, 'faulty-input'))).toEqual([
      '/colour unknown-field',
      '/group invalid-value',
      'query /confirm unknown-field',
      'query /reason too-small',
    ])
    const draws = [
      {
        ...television.modes[0]!.draws[0]!,
        lowW: 9,
        provenance: { kind: 'published', citation: null, n: null },
      },
    ]
    const trade = await editor.post('/v1/categories', {
      body: { ...lamp, aliases: ['TELLY', 'lava-lamp'], modes: [{ ...television.modes[0], draws }] },
    })
    expect(faultsOf(expectProblem(trade, 422, 'faulty-input'))).toEqual([
      '/aliases/0 name-taken',
      '/aliases/1 alias-repeats-name',
      '/modes/0/draws/0/lowW range-out-of-order',
      '/modes/0/draws/0/provenance/citation citation-missing',
    ])
    expect(revisionNow()).toBe(1)
  })
})

describe('who may edit', () => {
  const attempts = [
    ['post', '/v1/categories'],
    ['put', '/v1/categories/television'],
    ['patch', '/v1/categories/television'],
    ['delete', '/v1/categories/television'],
    ['post', '/v1/categories/television/restore'],
    ['post', '/v1/catalogue/revisions/1/restore'],
    ['post', '/v1/catalogue/imports'],
  ] as const

  test.each(attempts)('%s %s needs a key', async (method, path) => {
    expectProblem(await service.send[method](path).query({ reason: 'a test' }), 401, 'key-required')
    expect(revisionNow()).toBe(1)
  })

  test.each(attempts)('%s %s needs the scope catalogue:edit', async (method, path) => {
    const issued = await service.send
      .post('/v1/api-keys')
      .set('authorization', `Bearer ${ADMIN_KEY}`)
      .send({ name: 'For estimates', scopes: ['estimate', 'intake'] })
      .expect(201)
    const answer = await service.send[method](path)
      .query({ reason: 'a test' })
      .set('authorization', `Bearer ${issued.body.key}`)
    expect(expectProblem(answer, 403, 'scope-missing')['scope']).toBe('catalogue:edit')
    expect(revisionNow()).toBe(1)
  })
})

describe('PUT /v1/categories/{code}', () => {
  test('replaces a category that was read, changed and sent back as it came', async () => {
    const { body, headers } = await service.send.get('/v1/categories/television')
    const answer = await editor.put('/v1/categories/television', {
      body: { ...body, aliases: ['TV', 'telly', 'goggle box'] },
      headers: { 'if-match': headers['etag']! },
    })
    expect(answer.status).toBe(200)
    expect(answer.body).toEqual(await read('goggle-box'))
    expect((await editor.newest()).changes).toMatchObject([
      {
        kind: 'changed',
        before: television,
        fields: [{ pointer: '/aliases', before: ['TV', 'telly'], after: ['TV', 'telly', 'goggle box'] }],
      },
    ])
  })

  test('the answer has the tag for the next edit', async () => {
    let tag = await editor.tagOfCategory('television')
    for (const defaultQuantity of [2, 3, 4]) {
      const body = { ...television, defaultQuantity }
      const answer = await editor.put('/v1/categories/television', { body, headers: { 'if-match': tag } })
      expect(answer.status).toBe(200)
      tag = answer.headers['etag']!
    }
    expect([(await read('television')).defaultQuantity, revisionNow()]).toEqual([4, 4])
  })

  test('content that is the same makes no revision, however often it is sent', async () => {
    const tag = await editor.tagOfCategory('television')
    for (const attempt of ['first', 'second']) {
      const answer = await editor.put('/v1/categories/television', {
        body: television,
        headers: { 'if-match': tag },
      })
      expect([answer.status, answer.headers['etag']], attempt).toEqual([200, tag])
    }
    expect(revisionNow()).toBe(1)
  })

  test('with If-None-Match: * makes a category, and only where there is none', async () => {
    const headers = { 'if-none-match': '*' }
    const made = await editor.put('/v1/categories/lava-lamp', { body: lamp, headers })
    expect([made.status, made.headers['location']]).toEqual([201, '/v1/categories/lava-lamp'])
    const again = await editor.put('/v1/categories/lava-lamp', { body: lamp, headers })
    expectProblem(again, 412, 'already-there')
    expect(revisionNow()).toBe(2)
  })

  test('refuses another code, and another state of retirement, than the category has', async () => {
    const headers = { 'if-match': await editor.tagOfCategory('television') }
    const body = { ...television, code: 'tv', retired: true }
    const answer = await editor.put('/v1/categories/television', { body, headers })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
      '/code code-fixed',
      '/retired retired-fixed',
    ])
  })

  test('does not know a category by its alias, and names the nearest', async () => {
    const answer = await editor.put('/v1/categories/telly', {
      body: television,
      headers: { 'if-match': '"x"' },
    })
    expect(expectProblem(answer, 404, 'unknown-category')['nearest']).toContainEqual({
      code: 'television',
      name: 'Television',
    })
  })

  test('also changes a retired category, since old inventories are still estimated with it', async () => {
    const headers = { 'if-match': await editor.tagOfCategory('cassette-deck') }
    const body = { ...(await read('cassette-deck')), name: 'Cassette player' }
    const answer = await editor.put('/v1/categories/cassette-deck', { body, headers })
    expect(answer.body).toMatchObject({ name: 'Cassette player', retired: true })
  })
})

describe('PATCH /v1/categories/{code}', () => {
  const patch = async (body: unknown, sent: object = {}) =>
    editor.patch('/v1/categories/freezer', {
      body,
      headers: { 'if-match': await editor.tagOfCategory('freezer') },
      ...sent,
    })

  test('changes the members that it names, and a null takes keepPowered away', async () => {
    expect((await patch({ powerFactor: { typical: 0.55 } })).body.powerFactor).toEqual({
      low: 0.4,
      typical: 0.55,
      high: 0.6,
    })
    expect((await patch({ keepPowered: null })).body.keepPowered).toBeNull()
    expect(revisionNow()).toBe(3)
  })

  test('that takes away what a category must have is refused at its place', async () => {
    const answer = await patch({ powerFactor: { low: null }, modes: null, size: 'large' })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
      '/modes required',
      '/powerFactor/low required',
      '/size unknown-field',
    ])
  })

  test.each(['[1]', '"x"', 'null', '7'])('of %s, which is no object, is refused', async (body) => {
    expectProblem(await patch(body), 422, 'faulty-input')
  })

  test.each(['{"__proto__":{"retired":true}}', '{"powerFactor":{"constructor":{"prototype":{"x":1}}}}'])(
    'of %s is refused, and nothing is polluted',
    async (body) => {
      expectProblem(await patch(body), 400, 'malformed-body')
      expect(({} as Record<string, unknown>)['retired']).toBeUndefined()
    },
  )

  test('is read as application/merge-patch+json alone, as Accept-Patch says', async () => {
    const answer = await patch('{}', { headers: { 'content-type': 'application/json', 'if-match': '"x"' } })
    expectProblem(answer, 415, 'unsupported-media-type')
    expect(answer.headers['accept-patch']).toBe('application/merge-patch+json')
    expect(answer.headers).not.toHaveProperty('accept-post')
  })

  test('without a body is refused', async () => {
    const headers = { 'if-match': await editor.tagOfCategory('freezer') }
    expectProblem(await editor.send('patch', '/v1/categories/freezer', { headers }), 400, 'malformed-body')
  })
})

describe('retiring and restoring', () => {
  test('DELETE takes a category out of lists and loses nothing of it; restore brings it back as it was', async () => {
    const before = await read('television')
    const headers = { 'if-match': await editor.tagOfCategory('television') }
    const retired = await editor.retire('/v1/categories/television', { headers })
    expect(retired.body).toEqual({ ...before, retired: true })
    const list = await service.send.get('/v1/categories?search=television')
    expect(list.body.items).toEqual([])
    const restored = await editor.post('/v1/categories/television/restore', {
      headers: { 'if-match': retired.headers['etag']! },
    })
    expect(restored.body).toEqual(before)
    const { body } = await service.send.get('/v1/catalogue/revisions')
    expect(body.items.map(({ action }: { action: string }) => action)).toEqual(['restore', 'retire', 'seed'])
  })

  test('what is retired, or in use, already stays as it is and makes no revision', async () => {
    const deck = { headers: { 'if-match': await editor.tagOfCategory('cassette-deck') } }
    expect((await editor.retire('/v1/categories/cassette-deck', deck)).status).toBe(200)
    const box = { headers: { 'if-match': await editor.tagOfCategory('set-top-box') } }
    expect((await editor.post('/v1/categories/set-top-box/restore', box)).status).toBe(200)
    expect(revisionNow()).toBe(1)
  })

  test('a retired category keeps its names: no other can take them', async () => {
    const headers = { 'if-match': await editor.tagOfCategory('television') }
    await editor.retire('/v1/categories/television', { headers })
    const answer = await editor.post('/v1/categories', { body: { ...lamp, aliases: ['Telly'] } })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual(['/aliases/0 name-taken'])
  })
})

describe('a large change', () => {
  const withTypical = (typicalW: number, highW = 3) => ({
    modes: [{ ...television.modes[0]!, draws: [{ ...television.modes[0]!.draws[0]!, typicalW, highW }] }],
  })
  const patch = async (body: unknown, confirm?: string) =>
    editor.patch('/v1/categories/television', {
      body,
      query: { reason: 'a test', ...(confirm && { confirm }) },
      headers: { 'if-match': await editor.tagOfCategory('television') },
    })

  test('is refused with each figure before and after, and taken with confirm=true', async () => {
    const problem = expectProblem(await patch(withTypical(3.5, 10)), 409, 'large-change')
    expect(problem['changes']).toEqual([
      {
        pointer: '/modes/0/draws/0/typicalW',
        mode: 'standby',
        yearFrom: null,
        yearTo: null,
        figure: 'typicalW',
        beforeW: 1,
        afterW: 3.5,
      },
      {
        pointer: '/modes/0/draws/0/highW',
        mode: 'standby',
        yearFrom: null,
        yearTo: null,
        figure: 'highW',
        beforeW: 3,
        afterW: 10,
      },
    ])
    expect(revisionNow()).toBe(1)
    expect((await patch(withTypical(3.5, 10), 'true')).status).toBe(200)
    expect((await read('television')).modes[0].draws[0]).toMatchObject({ typicalW: 3.5, highW: 10 })
  })

  test('is none up to a factor of three', async () => {
    expect((await patch(withTypical(3, 9))).status).toBe(200)
  })

  test('is one where a mode goes', async () => {
    const modes = [{ ...television.modes[0]!, mode: 'off' }]
    expectProblem(await patch({ modes }), 409, 'large-change')
  })
})
