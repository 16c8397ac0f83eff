import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { expectProblem } from '../../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { editorOf } from './editor.ts'

let service: TestApp
beforeEach(async () => (service = await testApp()))
afterEach(() => service.close())
const editor = editorOf(() => service)

const rename = async (code: string, name: string, reason = 'another editor') =>
  editor.patch(`/v1/categories/${code}`, {
    body: { name },
    query: { reason },
    headers: { 'if-match': await editor.tagOfCategory(code) },
  })
const revisionNow = () => service.deps.catalogueMemory.current().revision

const EDITS = [
  ['PUT', (headers: object) => editor.put('/v1/categories/freezer', { body: {}, headers: { ...headers } })],
  [
    'PATCH',
    (headers: object) => editor.patch('/v1/categories/freezer', { body: {}, headers: { ...headers } }),
  ],
  ['DELETE', (headers: object) => editor.retire('/v1/categories/freezer', { headers: { ...headers } })],
  [
    'POST …/restore',
    (headers: object) => editor.post('/v1/categories/freezer/restore', { headers: { ...headers } }),
  ],
] as const

describe.each(EDITS)('%s of a category', (_, edit) => {
  test('without If-Match is refused: 428', async () => {
    expectProblem(await edit({}), 428, 'precondition-required')
  })

  test('with If-Match: * is refused, since it would match whatever somebody else made of it', async () => {
    expectProblem(await edit({ 'if-match': '*' }), 428, 'precondition-required')
  })

  test('with a stale tag shows what changed meanwhile: by whom, when, why, and in which fields', async () => {
    const stale = await editor.tagOfCategory('freezer')
    await rename('freezer', 'Chest freezer', 'People say so')
    const problem = expectProblem(await edit({ 'if-match': stale }), 412, 'stale-category')
    expect(problem).toMatchObject({
      changedIn: 2,
      etag: await editor.tagOfCategory('freezer'),
      lastEdit: {
        number: 2,
        action: 'change',
        author: { organisation: 'operator', keyId: expect.any(String) },
        reason: 'People say so',
        at: '2026-01-31T12:00:00.000Z',
      },
      current: { code: 'freezer', name: 'Chest freezer', sampleData: true },
      changes: [{ pointer: '/name', before: 'Freezer', after: 'Chest freezer' }],
    })
    expect(revisionNow()).toBe(2)
  })

  test.each([
    ['a weak one', (tag: string) => `W/${tag}`],
    ['that of another category', (tag: string) => tag.replace('freezer', 'router')],
    ['that of the catalogue', () => '"r1.json2"'],
    ['one of another form', (tag: string) => tag.replace('json2', 'json0')],
    ['one of a revision that there is none of', (tag: string) => tag.replace('r1', 'r9')],
    ['an empty one', () => '""'],
  ])('is not made with a tag that is no basis: %s', async (_name, tagOf) => {
    const tag = tagOf(await editor.tagOfCategory('freezer'))
    const problem = expectProblem(await edit({ 'if-match': tag }), 412, 'stale-category')
    expect(problem['changes']).toBeNull()
    expect(problem['current']).toMatchObject({ code: 'freezer' })
  })

  test.each(['freezer.r1.json2', '"a" "b"', '"a", b', '"unclosed'])(
    'says so where If-Match is no list of tags: %s',
    async (header) => {
      expectProblem(await edit({ 'if-match': header }), 400, 'malformed-condition')
    },
  )
})

describe('the tag of a category', () => {
  test('stays fresh whatever is edited elsewhere', async () => {
    const tag = await editor.tagOfCategory('freezer')
    await rename('router', 'Internet router')
    expect(await editor.tagOfCategory('freezer')).toBe(tag)
    await service.send.get('/v1/categories/freezer').set('if-none-match', tag).expect(304)
    const answer = await editor.patch('/v1/categories/freezer', {
      body: { name: 'Deep freezer' },
      headers: { 'if-match': tag },
    })
    expect([answer.status, revisionNow()]).toEqual([200, 3])
  })

  test('is one of a list that If-Match may hold', async () => {
    const tag = await editor.tagOfCategory('freezer')
    const headers = { 'if-match': `"r1.json2" , "other",${tag}` }
    const answer = await editor.patch('/v1/categories/freezer', { body: { name: 'Deep freezer' }, headers })
    expect(answer.status).toBe(200)
  })

  test('tells two categories apart that one name led to', async () => {
    const kept = (await service.send.get('/v1/categories/telly').expect(200)).headers['etag']!
    const [television, box] = [
      await editor.tagOfCategory('television'),
      await editor.tagOfCategory('set-top-box'),
    ]
    expect(television).not.toBe(box)
    expect(kept).toBe(television)
  })

  test('an edit that fails for another reason is refused for that one only where the tag is fresh', async () => {
    const stale = await editor.tagOfCategory('freezer')
    await rename('freezer', 'Chest freezer')
    const body = { group: 'toys' }
    const late = await editor.patch('/v1/categories/freezer', { body, headers: { 'if-match': stale } })
    expectProblem(late, 412, 'stale-category')
    const fresh = { 'if-match': await editor.tagOfCategory('freezer') }
    const faulty = await editor.patch('/v1/categories/freezer', { body, headers: fresh })
    expectProblem(faulty, 422, 'faulty-input')
  })
})

describe('what another process has stored', () => {
  test('is what an edit is held against, also where this process has not seen it yet', async () => {
    const other = await testApp({ catalogueStore: service.deps.catalogueStore, categories: [] })
    const tag = await editor.tagOfCategory('freezer')
    await editorOf(() => other).patch('/v1/categories/freezer', {
      body: { name: 'Chest freezer' },
      headers: { 'if-match': tag },
    })
    expect(service.deps.catalogueMemory.current().revision).toBe(1)
    const late = await editor.patch('/v1/categories/freezer', {
      body: { name: 'Deep freezer' },
      headers: { 'if-match': tag },
    })
    expectProblem(late, 412, 'stale-category')
    await other.close()
  })

  test('on another category makes no edit stale: it is tried again on top of it', async () => {
    const { catalogueStore } = service.deps
    const freezer = { 'if-match': await editor.tagOfCategory('freezer') }
    let raced = false
    const slow = await testApp({
      categories: [],
      catalogueStore: {
        ...catalogueStore,
        append: async (...edit) => {
          if (!raced) {
            raced = true
            await rename('router', 'Internet router')
          }
          return catalogueStore.append(...edit)
        },
      },
    })
    const answer = await editorOf(() => slow).patch('/v1/categories/freezer', {
      body: { name: 'Deep freezer' },
      headers: freezer,
    })
    expect([answer.status, answer.headers['catalogue-revision']]).toEqual([200, '3'])
    const { categories } = slow.deps.catalogueMemory.current()
    expect([categories.get('router')?.name, categories.get('freezer')?.name]).toEqual([
      'Internet router',
      'Deep freezer',
    ])
    await slow.close()
  })
})
