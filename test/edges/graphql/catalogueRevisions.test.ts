import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { aNote } from '../../stores/aNote.ts'
import { ask, refused } from './ask.ts'

const LIST = `query ($first: Int, $last: Int, $after: String, $before: String) {
  catalogueRevisions(first: $first, last: $last, after: $after, before: $before) {
    totalCount pageInfo { hasNextPage hasPreviousPage startCursor endCursor } edges { cursor node { id number } } } }`
const CHANGES = `query ($number: Int!, $first: Int, $last: Int, $after: String, $before: String) {
  catalogueRevision(number: $number) { changes(first: $first, last: $last, after: $after, before: $before) {
    totalCount pageInfo { hasNextPage hasPreviousPage startCursor endCursor } edges { cursor node { code } } } } }`
const NEWEST = 9

let app: TestApp
beforeAll(async () => {
  app = await testApp()
  const television = testCategories.find(({ code }) => code === 'television')!
  for (let revision = 1; revision < NEWEST; revision++)
    await app.deps.catalogueStore.append(
      revision,
      [{ ...television, name: `Television ${revision + 1}` }],
      aNote,
    )
  await app.deps.catalogueMemory.refresh()
})
afterAll(() => app.close())

interface Connection {
  readonly totalCount: number
  readonly pageInfo: { readonly hasNextPage: boolean; readonly hasPreviousPage: boolean }
  readonly edges: readonly { readonly cursor: string; readonly node: { number?: number; code?: string } }[]
}
const LISTS: readonly (readonly [
  string,
  () => readonly (string | number)[],
  (variables: object) => Promise<Connection>,
])[] = [
  [
    'catalogueRevisions, newest first',
    () => Array.from({ length: NEWEST }, (_, index) => NEWEST - index),
    async (variables) => (await ask(app, LIST, variables)).catalogueRevisions,
  ],
  [
    'the changes of a revision, in the order of the codes',
    () => testCategories.map(({ code }) => code),
    async (variables) => (await ask(app, CHANGES, { number: 1, ...variables })).catalogueRevision.changes,
  ],
]
const keysOf = ({ edges }: Connection) => edges.map(({ node }) => node.number ?? node.code!)

describe.each(LISTS)('%s', (_, all, read) => {
  test('gives any page in either direction, and says exactly what lies beyond it', async () => {
    const whole = await read({})
    expect(keysOf(whole)).toEqual(all())
    const place = fc.option(fc.nat(all().length - 1), { nil: undefined })
    await fc.assert(
      fc.asyncProperty(
        place,
        place,
        fc.nat(all().length + 1),
        fc.boolean(),
        async (from, to, size, forward) => {
          const page = await read({
            after: from === undefined ? undefined : whole.edges[from]!.cursor,
            before: to === undefined ? undefined : whole.edges[to]!.cursor,
            [forward ? 'first' : 'last']: size,
          })
          const between = all().slice(from === undefined ? 0 : from + 1, to)
          const kept = forward ? between.slice(0, size) : between.slice(Math.max(between.length - size, 0))
          expect(keysOf(page)).toEqual(kept)
          expect(page.totalCount).toBe(all().length)
          if (kept.length === 0) return
          const { hasNextPage, hasPreviousPage } = page.pageInfo
          expect([hasPreviousPage, hasNextPage]).toEqual([kept[0] !== all()[0], kept.at(-1) !== all().at(-1)])
        },
      ),
      { numRuns: 60 },
    )
  })

  test('refuses both lengths at once and cursors that were not made for it', async () => {
    await expect(read({ first: 1, last: 1 })).rejects.toThrow('first-and-last')
    await expect(read({ after: 'garbage' })).rejects.toThrow('faulty-cursor')
  })
})

describe('a revision', () => {
  const FIELDS = '{ id number action author { organisation keyId } reason at }'

  test('is read by its number and, with the same content, by its id', async () => {
    const { catalogueRevision } = await ask(app, `{ catalogueRevision(number: 3) ${FIELDS} }`)
    expect(catalogueRevision).toMatchObject({
      number: 3,
      action: 'CHANGE',
      author: { organisation: 'an-organisation', keyId: 'a-key' },
      reason: 'a test',
      at: '2024-02-29T23:59:58.789Z',
    })
    const query = `query ($id: ID!) { node(id: $id) { __typename ... on CatalogueRevision ${FIELDS} } }`
    const { node } = await ask(app, query, { id: catalogueRevision.id })
    expect(node).toEqual({ __typename: 'CatalogueRevision', ...catalogueRevision })
  })

  test.each(['99', '0', '-1', 'x', '1.5', '2147483648'])('of the id %s is null', async (id) => {
    const global = Buffer.from(`CatalogueRevision:${id}`).toString('base64')
    expect((await ask(app, 'query ($id: ID!) { node(id: $id) { id } }', { id: global })).node).toBeNull()
  })

  test('that there is none of is NOT_FOUND, and the newest is named', async () => {
    const { data, errors } = await refused(app, '{ catalogueRevision(number: 99) { id } }')
    expect(data).toEqual({ catalogueRevision: null })
    expect(errors[0].extensions).toMatchObject({
      code: 'NOT_FOUND',
      reason: 'unknown-revision',
      newest: NEWEST,
    })
  })

  test('of no possible number is bad input', async () => {
    const { errors } = await refused(app, '{ catalogueRevision(number: 0) { id } }')
    expect(errors[0].extensions).toMatchObject({ code: 'BAD_USER_INPUT', errors: [{ pointer: '/number' }] })
  })
})

describe('a change', () => {
  const node = async (id: string) =>
    (
      await ask(
        app,
        'query ($id: ID!) { node(id: $id) { ... on CategoryChange { id code name kind fields { pointer } } } }',
        {
          id,
        },
      )
    ).node

  test('is read again by its id', async () => {
    const { catalogueRevision } = await ask(
      app,
      '{ catalogueRevision(number: 5) { changes { edges { node { id code name kind fields { pointer } } } } } }',
    )
    const [{ node: change }] = catalogueRevision.changes.edges
    expect(change).toMatchObject({ code: 'television', name: 'Television 5', fields: [{ pointer: '/name' }] })
    expect(await node(change.id)).toEqual(change)
    for (const { code } of testCategories)
      expect(await node(Buffer.from(`CategoryChange:1.${code}`).toString('base64'))).toMatchObject({ code })
  })

  test.each(['5.router', '99.television', '5.', '.television', '5.televisio', '5.television-', 'x'])(
    'of the name %s is null',
    async (name) => {
      expect(await node(Buffer.from(`CategoryChange:${name}`).toString('base64'))).toBeNull()
    },
  )
})

describe('a category', () => {
  test('says which revision gave it its state, now and at a past revision', async () => {
    const query =
      '{ tv: category(code: "tv") { changedInRevision } then: category(code: "tv", catalogueRevision: 4) { changedInRevision } router: category(code: "router") { changedInRevision } }'
    expect(await ask(app, query)).toEqual({
      tv: { changedInRevision: NEWEST },
      then: { changedInRevision: 4 },
      router: { changedInRevision: 1 },
    })
  })
})
