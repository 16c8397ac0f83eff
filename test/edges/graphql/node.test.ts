import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { testApp, type TestApp } from '../../helpers/testApp.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { aNote } from '../../stores/aNote.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const CATEGORY = everyFieldOf('Category')
const BY_NAME = `query ($code: String!, $catalogueRevision: Int) { category(code: $code, catalogueRevision: $catalogueRevision)${CATEGORY} }`
const BY_ID = `query ($id: ID!) { node(id: $id) { __typename id ... on Category${CATEGORY} } }`
const BY_IDS = 'query ($ids: [ID!]!) { nodes(ids: $ids) { __typename id } }'
const globalId = (text: string) => Buffer.from(text).toString('base64')
const television = testCategories.find(({ code }) => code === 'television')!

let app: TestApp
beforeAll(async () => {
  app = await testApp()
  const dearer = { ...television.modes[0]!.draws[0]!, lowW: 2, typicalW: 4, highW: 9 }
  const changed = { ...television, modes: [{ ...television.modes[0]!, draws: [dearer] }] }
  await app.deps.catalogueStore.append(1, [changed], aNote)
  await app.deps.catalogueMemory.refresh()
})
afterAll(() => app.close())

const category = async (code: string, catalogueRevision?: number | null) =>
  (await ask(app, BY_NAME, { code, catalogueRevision })).category
const node = async (id: string) => (await ask(app, BY_ID, { id })).node
const typicalW = (found: { modes: { draws: { typicalW: number }[] }[] }) => found.modes[0]!.draws[0]!.typicalW

describe('category', () => {
  test.each(['television', 'Television', 'TELLY', ' tv '])(
    'is found by the code, name or alias %j',
    async (name) => {
      expect(await category(name)).toMatchObject({ code: 'television', catalogueRevision: 2 })
    },
  )

  test('is read as it was at a revision', async () => {
    expect([
      typicalW(await category('tv')),
      typicalW(await category('tv', 2)),
      typicalW(await category('tv', 1)),
    ]).toEqual([4, 4, 1])
    expect(await category('tv', null)).toEqual(await category('tv'))
  })

  test('that is unknown is null, and an error NOT_FOUND with the nearest three', async () => {
    const { status, data, errors } = await refused(app, BY_NAME, { code: 'televisoin' })
    expect({ status, data }).toEqual({ status: 200, data: { category: null } })
    expect(errors).toHaveLength(1)
    expect(errors[0]).toMatchObject({
      path: ['category'],
      extensions: { code: 'NOT_FOUND', reason: 'unknown-category' },
    })
    expect(errors[0].extensions.nearest).toHaveLength(3)
    expect(errors[0].extensions.nearest[0]).toEqual({ code: 'television', name: 'Television' })
  })

  test('that is unknown leaves the other fields of the request their answers', async () => {
    const { data } = await refused(
      app,
      '{ known: category(code: "tv") { code } unknown: category(code: "nothing") { code } }',
    )
    expect(data).toEqual({ known: { code: 'television' }, unknown: null })
  })

  test.each([
    [{ code: '' }, ['/code']],
    [{ code: 'x'.repeat(121) }, ['/code']],
    [{ code: '   ', catalogueRevision: -1 }, ['/code', '/catalogueRevision']],
  ])('of the arguments %o names every fault', async (variables, pointers) => {
    const { errors } = await refused(app, BY_NAME, variables)
    expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
    expect(errors[0].extensions.errors.map(({ pointer }: { pointer: string }) => pointer)).toEqual(pointers)
  })
})

describe('node', () => {
  test.each(testCategories.map(({ code }) => code))(
    'gives %s back by its id, every field of it',
    async (code) => {
      const found = await category(code)
      expect(await node(found.id)).toEqual(found)
    },
  )

  test('gives a category of a named revision back as it was then, under an id of its own', async () => {
    const [now, then] = [await category('tv'), await category('tv', 1)]
    expect(then.id).not.toBe(now.id)
    expect(await node(then.id)).toEqual(then)
    expect(typicalW(await node(then.id))).toBe(1)
  })

  test.each([
    ['of no object', globalId('Category:no-such')],
    ['of an alias', globalId('Category:tv')],
    ['of an unknown revision', globalId('Category:television@99')],
    ['of revision 0', globalId('Category:television@0')],
    ['of an unknown type', globalId('Unicorn:1')],
    ['of a type without identity', globalId('Interval:1')],
    ['of an inherited name', globalId('__proto__:1')],
    ['that is garbled', 'garbage'],
    ['that is empty', ''],
  ])('is null for an id %s', async (_what, id) => {
    expect(await node(id)).toBeNull()
  })

  test('nodes keep the order and the number of the ids', async () => {
    const [tv, router] = [(await category('tv')).id, (await category('router')).id]
    const { nodes } = await ask(app, BY_IDS, {
      ids: [router, 'garbage', tv, router, globalId('Category:gone')],
    })
    expect(nodes.map((one: { id: string } | null) => one?.id ?? null)).toEqual([
      router,
      null,
      tv,
      router,
      null,
    ])
  })

  test('nodes of more than 200 ids are refused', async () => {
    const { errors } = await refused(app, BY_IDS, { ids: new Array(201).fill(globalId('Category:tv')) })
    expect(errors[0].extensions).toMatchObject({
      code: 'BAD_USER_INPUT',
      errors: [{ pointer: '/ids', code: 'too-big' }],
    })
  })
})
