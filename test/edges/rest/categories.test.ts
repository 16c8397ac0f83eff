import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { categoryListSchema } from '../../../src/schemas/category.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { aNote } from '../../stores/aNote.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

/** Makes a new revision in which one category is gone from sight and one is new. */
async function edit({ deps }: TestApp, basedOn: number): Promise<void> {
  const freezer = testCategories.find(({ code }) => code === 'freezer')!
  await deps.catalogueStore.append(
    basedOn,
    [
      { ...freezer, retired: true },
      { ...freezer, code: 'heater', name: 'Heater', aliases: [] },
    ],
    aNote,
  )
  await deps.catalogueMemory.refresh()
}

const nextOf = (link: string | undefined) => /^<([^>]+)>; rel="next"$/.exec(link ?? '')?.[1]

/** The codes of every page from an address on, by way of the Link headers. */
async function walk({ send }: TestApp, from: string): Promise<string[][]> {
  const pages: string[][] = []
  for (let path: string | undefined = from; path !== undefined;) {
    const { body, headers } = await send.get(path).expect(200)
    const { items, nextCursor } = categoryListSchema.parse(body)
    pages.push(items.map(({ code }) => code))
    path = nextOf(headers['link'])
    expect(path === undefined).toBe(nextCursor === null)
  }
  return pages
}

const current = ['amplifier', 'freezer', 'game-console', 'router', 'set-top-box', 'television']

describe('GET /v1/categories', () => {
  test('lists what is not retired in the order of the codes, with the revision', async () => {
    const { body, headers } = await service.send.get('/v1/categories').expect(200)
    const list = categoryListSchema.parse(body)
    expect(list.items.map(({ code }) => code)).toEqual(current)
    expect([list.catalogueRevision, list.nextCursor, headers['catalogue-revision']]).toEqual([1, null, '1'])
    expect(headers).not.toHaveProperty('link')
  })

  test('says of each category whether a figure of it is invented', async () => {
    const { items } = categoryListSchema.parse((await service.send.get('/v1/categories')).body)
    expect(items.filter(({ sampleData }) => !sampleData).map(({ code }) => code)).toEqual(['router'])
  })

  test.each([
    ['group=audio', ['amplifier']],
    ['group=audio&includeRetired=true', ['amplifier', 'cassette-deck']],
    ['search=tv%20BOX', ['set-top-box']],
    ['search=f%C3%BCr', ['game-console']],
    ['search=no+such+thing', []],
  ])('filters by %s', async (query, codes) => {
    expect((await walk(service, `/v1/categories?${query}`)).flat()).toEqual(codes)
  })

  test.each([1, 2, 5, 6, 7, 200])(
    'a walk in pages of %i finds each category once, in order',
    async (limit) => {
      const pages = await walk(service, `/v1/categories?limit=${limit}`)
      expect(pages.flat()).toEqual(current)
      expect(pages.length).toBe(Math.ceil(current.length / limit))
    },
  )

  test('the next page keeps the filter of the first', async () => {
    expect(await walk(service, '/v1/categories?limit=1&group=video&search=o')).toEqual([
      ['game-console'],
      ['set-top-box'],
      ['television'],
    ])
  })

  test('a walk goes on with words of any length and script', async () => {
    const long = await testApp({
      categories: ['one', 'two'].map((code) => ({
        ...testCategories[0]!,
        code,
        name: `${code} ${'熱'.repeat(90)}`,
        aliases: [],
      })),
    })
    const pages = await walk(long, `/v1/categories?limit=1&search=${encodeURIComponent('熱'.repeat(90))}`)
    expect(pages).toEqual([['one'], ['two']])
    await long.close()
  })

  test('a walk goes on reading the revision that it began with', async () => {
    const edited = await testApp()
    const first = await edited.send.get('/v1/categories?limit=2').expect(200)
    await edit(edited, 1)
    const rest = await walk(edited, nextOf(first.headers['link'])!)
    expect([first.body.items.map(({ code }: { code: string }) => code), ...rest].flat()).toEqual(current)
    const anew = (await walk(edited, '/v1/categories?limit=2')).flat()
    expect(anew).toEqual(['amplifier', 'game-console', 'heater', 'router', 'set-top-box', 'television'])
    const past = await walk(edited, '/v1/categories?catalogueRevision=1&limit=4')
    expect(past.flat()).toEqual(current)
    await edited.close()
  })

  test.each([
    ['another group', 'group=audio'],
    ['another search', 'search=tv'],
    ['retired categories', 'includeRetired=true'],
    ['another revision', 'catalogueRevision=2'],
  ])('refuses a cursor with %s', async (_, query) => {
    const { body } = await service.send.get('/v1/categories?limit=2')
    const answer = await service.send.get(`/v1/categories?${query}&cursor=${body.nextCursor}`)
    expectProblem(answer, 400, 'faulty-cursor')
  })

  test.each([
    ['no cursor at all', 'garbage'],
    ['JSON of another shape', Buffer.from('{"after":1}').toString('base64url')],
    ['null', Buffer.from('null').toString('base64url')],
    ['an extra field', Buffer.from('{"after":"a","revision":1,"filter":"","more":1}').toString('base64url')],
  ])('refuses a cursor that is %s', async (_, cursor) => {
    expectProblem(await service.send.get(`/v1/categories?cursor=${cursor}`), 400, 'faulty-cursor')
  })

  test('names every faulty parameter at once', async () => {
    const answer = await service.send.get(
      '/v1/categories?limit=201&group=toys&includeRetired=maybe&page=2&search=',
    )
    expect(faultsOf(expectProblem(answer, 400, 'faulty-query'))).toEqual([
      'query /group invalid-value',
      'query /includeRetired invalid-value',
      'query /limit too-big',
      'query /page unknown-field',
      'query /search too-small',
    ])
  })

  test.each([
    'limit=0',
    'limit=-1',
    'limit=1.5',
    'limit=many',
    'limit=1&limit=2',
    'catalogueRevision=0',
    '__proto__=1',
  ])('refuses %s', async (query) => {
    expectProblem(await service.send.get(`/v1/categories?${query}`), 400, 'faulty-query')
  })

  test('answers 404 to a revision that there is not, and names the newest', async () => {
    const answer = await service.send.get('/v1/categories?catalogueRevision=99')
    expect(expectProblem(answer, 404, 'unknown-revision')['newest']).toBe(1)
  })
})

describe('GET /v1/categories/{code}', () => {
  test.each(['television', 'Television', 'TV', 'telly', 'TELEVISION', '%20tele%76ision'])(
    'finds by code, name or alias: %s',
    async (name) => {
      const { body, headers } = await service.send.get(`/v1/categories/${name}`).expect(200)
      expect(body).toMatchObject({ code: 'television', name: 'Television', sampleData: true })
      expect(headers['content-location']).toBe('/v1/categories/television')
      expect(headers['catalogue-revision']).toBe('1')
    },
  )

  test('finds a name with accents and spaces', async () => {
    const path = `/v1/categories/${encodeURIComponent('spielekonsole FUR zuhause')}`
    expect((await service.send.get(path).expect(200)).body.code).toBe('game-console')
  })

  test('answers an unknown name with the nearest three', async () => {
    const problem = expectProblem(
      await service.send.get('/v1/categories/televisoin'),
      404,
      'unknown-category',
    )
    expect(problem['nearest']).toHaveLength(3)
    expect(problem['nearest']).toContainEqual({ code: 'television', name: 'Television' })
    expect(problem['detail']).toContain('"televisoin"')
  })

  test('an empty name is no address', async () => {
    expectProblem(await service.send.get('/v1/categories/'), 404, 'unknown-path')
  })

  test('a name cannot write into a header or the answer', async () => {
    const answer = await service.send.get('/v1/categories/%0d%0aSet-Cookie:%20a=b%3Cscript%3E')
    expectProblem(answer, 404, 'unknown-category')
    expect(answer.headers).not.toHaveProperty('set-cookie')
  })

  test('reads a category as it was at a revision', async () => {
    const edited = await testApp()
    await edit(edited, 1)
    expect((await edited.send.get('/v1/categories/freezer')).body.retired).toBe(true)
    expect((await edited.send.get('/v1/categories/freezer?catalogueRevision=1')).body.retired).toBe(false)
    expectProblem(await edited.send.get('/v1/categories/heater?catalogueRevision=1'), 404, 'unknown-category')
    await edited.close()
  })
})

describe('If-None-Match', () => {
  test.each([
    ['the tag', (tag: string) => tag],
    ['the tag as a weak one', (tag: string) => `W/${tag}`],
    ['a list with the tag', (tag: string) => `"other", ${tag}`],
    ['any tag', () => '*'],
  ])('%s: 304 without a body', async (_, conditionOf) => {
    for (const path of ['/v1/categories', '/v1/categories/TV']) {
      const { headers } = await service.send.get(path)
      const answer = await service.send
        .get(path)
        .set('if-none-match', conditionOf(headers['etag']!))
        .expect(304)
      expect(answer.text).toBe('')
      expect(answer.headers).toMatchObject({
        etag: headers['etag'],
        'cache-control': 'no-cache',
        vary: 'accept, authorization',
      })
    }
  })

  test('another tag: the answer', async () => {
    await service.send.get('/v1/categories').set('if-none-match', '"r7.json2"').expect(200)
  })

  test('an edit makes a new tag', async () => {
    const edited = await testApp()
    const before = (await edited.send.get('/v1/categories')).headers['etag']!
    await edit(edited, 1)
    const after = await edited.send.get('/v1/categories').set('if-none-match', before).expect(200)
    expect(after.headers['etag']).not.toBe(before)
    await edited.close()
  })

  test.each(['/v1/categories/nothing', '/v1/categories?limit=0', '/nothing'])(
    'never turns the error of %s into 304',
    async (path) => {
      const { status } = await service.send.get(path).set('if-none-match', '*')
      expect(status).toBeGreaterThanOrEqual(400)
    },
  )
})
