import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Category } from '../../../src/core/catalogue/category.ts'
import { writeCursor } from '../../../src/edges/categoryCursor.ts'
import { testApp, type TestApp } from '../../helpers/testApp.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { aNote as note } from '../../stores/aNote.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const PAGE = `
  query ($first: Int, $last: Int, $after: String, $before: String, $group: Group, $search: String, $includeRetired: Boolean, $catalogueRevision: Int) {
    categories(first: $first, last: $last, after: $after, before: $before, group: $group, search: $search, includeRetired: $includeRetired, catalogueRevision: $catalogueRevision) {
      totalCount catalogueRevision
      edges { cursor node { id code retired catalogueRevision } }
      pageInfo { hasNextPage hasPreviousPage startCursor endCursor }
    }
  }`

interface Page {
  readonly totalCount: number
  readonly catalogueRevision: number
  readonly edges: readonly { cursor: string; node: { id: string; code: string; retired: boolean } }[]
  readonly pageInfo: {
    hasNextPage: boolean
    hasPreviousPage: boolean
    startCursor: string | null
    endCursor: string | null
  }
}

const live = testCategories.filter(({ retired }) => !retired).map(({ code }) => code)

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

const page = async (variables: object = {}): Promise<Page> => (await ask(app, PAGE, variables)).categories
const codes = ({ edges }: Page) => edges.map(({ node }) => node.code)
const userFaults = async (variables: object) => {
  const { status, data, errors } = await refused(app, PAGE, variables)
  expect({ status, data, count: errors.length }).toEqual({
    status: 200,
    data: { categories: null },
    count: 1,
  })
  expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
  return errors[0].extensions.errors as { pointer: string; code: string; message: string }[]
}

describe('the connection of categories', () => {
  test('holds every live category in the order of the codes, with every field of the catalogue', async () => {
    const { categories } = await ask(app, `{ categories { edges { node${everyFieldOf('Category')} } } }`)
    const expected = testCategories
      .filter(({ retired }) => !retired)
      .map((category) => ({
        ...category,
        sampleData: isSample(category),
        layer: 'shared',
        overlayRevision: 0,
        catalogueRevision: 1,
        changedInRevision: 1,
        id: globalId(category.code),
      }))
    expect(categories.edges.map(({ node }: { node: unknown }) => node)).toEqual(
      expected.map((one) => answerOf(one, 'Category')),
    )
  })

  test('says on an empty page that there are no cursors', async () => {
    const empty = await page({ search: 'no such thing' })
    expect(empty).toMatchObject({
      totalCount: 0,
      edges: [],
      pageInfo: { hasNextPage: false, hasPreviousPage: false, startCursor: null, endCursor: null },
    })
  })

  test('gives an empty page for a length of 0, and still says whether there is more', async () => {
    expect(await page({ first: 0 })).toMatchObject({
      totalCount: live.length,
      edges: [],
      pageInfo: { hasNextPage: true },
    })
    expect(await page({ last: 0 })).toMatchObject({
      edges: [],
      pageInfo: { hasPreviousPage: true, hasNextPage: false },
    })
  })

  test.each([
    [{ first: live.length - 1 }, true, false],
    [{ first: live.length }, false, false],
    [{ first: live.length + 1 }, false, false],
    [{ last: live.length - 1 }, false, true],
    [{ last: live.length }, false, false],
    [{ last: live.length + 1 }, false, false],
  ])(
    'for %o says exactly whether there is more after (%s) and before (%s)',
    async (length, hasNextPage, hasPreviousPage) => {
      expect((await page(length)).pageInfo).toMatchObject({ hasNextPage, hasPreviousPage })
    },
  )

  test('has the first and the last edge’s cursors in pageInfo', async () => {
    const { edges, pageInfo } = await page({ first: 3 })
    expect(pageInfo).toMatchObject({ startCursor: edges[0]!.cursor, endCursor: edges[2]!.cursor })
  })

  test('walked forward in pages of any length gives the whole list once, in order', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 8 }), async (first) => {
        const seen: string[] = []
        let after: string | null = null
        for (let more = true; more;) {
          const one: Page = await page({ first, after })
          seen.push(...codes(one))
          expect(one.pageInfo.hasPreviousPage).toBe(after !== null)
          more = one.pageInfo.hasNextPage
          after = one.pageInfo.endCursor
        }
        expect(seen).toEqual(live)
      }),
      { numRuns: 8 },
    )
  })

  test('walked backward in pages of any length gives the whole list once, each page in order', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 8 }), async (last) => {
        const seen: string[] = []
        let before: string | null = null
        for (let more = true; more;) {
          const one: Page = await page({ last, before })
          seen.unshift(...codes(one))
          expect(one.pageInfo.hasNextPage).toBe(before !== null)
          more = one.pageInfo.hasPreviousPage
          before = one.pageInfo.startCursor
        }
        expect(seen).toEqual(live)
      }),
      { numRuns: 8 },
    )
  })

  test('cuts between two cursors, both outside of the page', async () => {
    const all = await page()
    const [after, before] = [all.edges[0]!.cursor, all.edges[4]!.cursor]
    expect(codes(await page({ after, before }))).toEqual(live.slice(1, 4))
    expect(codes(await page({ after, before, last: 1 }))).toEqual(live.slice(3, 4))
    expect((await page({ after, before, first: 1 })).pageInfo).toMatchObject({
      hasNextPage: true,
      hasPreviousPage: true,
    })
  })

  test('is empty where the cursors stand the wrong way round, at the place of the first of them', async () => {
    const all = await page()
    const turned = { after: all.pageInfo.endCursor, before: all.pageInfo.startCursor }
    expect(await page(turned)).toMatchObject({
      edges: [],
      pageInfo: { hasNextPage: false, hasPreviousPage: true },
    })
  })

  test('filters by group and by words, and counts what the filter lets through', async () => {
    expect(codes(await page({ group: 'AUDIO' }))).toEqual(['amplifier'])
    expect(await page({ search: 'tv', first: 1 })).toMatchObject({
      totalCount: 2,
      pageInfo: { hasNextPage: true },
    })
  })

  test('shows retired categories on request only', async () => {
    expect(codes(await page({ includeRetired: true }))).toEqual(testCategories.map(({ code }) => code))
    expect(codes(await page({ includeRetired: false, group: null, search: null }))).toEqual(live)
  })

  test('goes on reading the revision of its first page, whatever is edited meanwhile', async () => {
    const own = await testApp()
    try {
      const start: Page = (await ask(own, PAGE, { first: 2 })).categories
      await own.deps.catalogueStore.append(
        1,
        [{ ...testCategories[0]!, code: 'blender', name: 'Blender' }],
        note,
      )
      await own.deps.catalogueMemory.refresh()
      const next: Page = (await ask(own, PAGE, { first: 9, after: start.pageInfo.endCursor })).categories
      expect(next.catalogueRevision).toBe(1)
      expect([...codes(start), ...codes(next)]).toEqual(live)
      expect((await ask(own, PAGE)).categories).toMatchObject({
        catalogueRevision: 2,
        totalCount: live.length + 1,
      })
      expect((await ask(own, PAGE, { catalogueRevision: 1 })).categories).toMatchObject({
        totalCount: live.length,
      })
    } finally {
      await own.close()
    }
  })

  test('takes a cursor that REST gave out, and gives out cursors that REST takes', async () => {
    const rest = await app.send.get('/v1/categories').query({ limit: 2 })
    expect(codes(await page({ after: rest.body.nextCursor }))).toEqual(live.slice(2))
    const { pageInfo } = await page({ first: 3 })
    const onward = await app.send.get('/v1/categories').query({ cursor: pageInfo.endCursor })
    expect(onward.body.items.map(({ code }: Category) => code)).toEqual(live.slice(3))
  })
})

describe('faulty arguments of the connection', () => {
  test.each([
    'garbage',
    '',
    '%%%',
    globalId('television'),
    Buffer.from('{"after":"tv"}').toString('base64url'),
  ])('the cursor %j is a fault of the caller at the argument', async (cursor) => {
    expect(await userFaults({ after: cursor })).toEqual([
      expect.objectContaining({ pointer: '/after', code: 'faulty-cursor' }),
    ])
    expect(await userFaults({ before: cursor })).toEqual([expect.objectContaining({ pointer: '/before' })])
  })

  test('a cursor of another filter is a fault, and so is one of another revision', async () => {
    const { startCursor: after } = (await page({ group: 'VIDEO' })).pageInfo
    expect(await userFaults({ after, group: 'AUDIO' })).toEqual([
      expect.objectContaining({ pointer: '/after', code: 'faulty-cursor' }),
    ])
    const foreign = writeCursor(
      'tv',
      { catalogueRevision: 2, overlayRevision: 0, organisation: null },
      { includeRetired: false },
    )
    expect(await userFaults({ after: (await page()).pageInfo.startCursor, before: foreign })).toEqual([
      expect.objectContaining({ pointer: '/before', code: 'faulty-cursor' }),
    ])
  })

  test('all of them are named at once', async () => {
    const lengthsAndCursor = await userFaults({ first: -1, after: 'garbage' })
    expect(lengthsAndCursor.map(({ pointer }) => pointer)).toEqual(['/first', '/after'])
    const faults = await userFaults({ first: -1, search: '', catalogueRevision: 0 })
    expect(faults.map(({ pointer }) => pointer).sort()).toEqual(['/catalogueRevision', '/first', '/search'])
  })

  test('first and last exclude each other', async () => {
    expect(await userFaults({ first: 1, last: 1 })).toEqual([
      expect.objectContaining({ pointer: '/last', code: 'first-and-last' }),
    ])
  })

  test('a page of more than 200 is refused, one of 200 is not', async () => {
    expect(await userFaults({ first: 201 })).toEqual([expect.objectContaining({ pointer: '/first' })])
    expect((await page({ first: 200 })).totalCount).toBe(live.length)
  })

  test('an unknown revision is NOT_FOUND and names the newest', async () => {
    const { errors } = await refused(app, PAGE, { catalogueRevision: 7 })
    expect(errors[0].extensions).toEqual({ code: 'NOT_FOUND', reason: 'unknown-revision', newest: 1 })
  })
})

function globalId(name: string) {
  return Buffer.from(`Category:${name}`).toString('base64')
}
const isSample = ({ modes }: Category) =>
  modes.some(({ draws }) => draws.some(({ provenance }) => provenance.kind === 'sample'))
