import { getIntrospectionQuery, parse } from 'graphql'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { complexityFromQuery } from '@pothos/plugin-complexity'
import { GRAPHQL_LIMITS } from '../../../src/edges/graphql/limits.ts'
import { schema } from '../../../src/edges/graphql/schema.ts'
import { LIMITS } from '../../../src/schemas/common.ts'
import { testApp, type TestApp } from '../../helpers/testApp.ts'
import { post } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

let app: TestApp
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

/** Refused with 400 in the shape of a GraphQL answer, before anything was resolved. */
async function refusedUnresolved(query: string, variables: object = {}, operationName?: string) {
  const looked = vi.spyOn(app.deps.catalogueMemory, 'current')
  try {
    const { status, body, headers } = await post(app, query, variables, operationName)
    expect({ status, type: headers['content-type'], data: body.data }).toEqual({
      status: 400,
      type: 'application/json; charset=utf-8',
      data: undefined,
    })
    expect(looked).not.toHaveBeenCalled()
    return body.errors as { message: string; extensions: { code: string; reason?: string } }[]
  } finally {
    looked.mockRestore()
  }
}
const reasonsOf = async (query: string, variables: object = {}, operationName?: string) =>
  (await refusedUnresolved(query, variables, operationName)).map(({ extensions }) => extensions.reason)

describe('a request is refused with 400', () => {
  test.each([
    ['fields', (levels: number) => `${'{ node '.repeat(levels)}{ id }${' }'.repeat(levels)}`],
    [
      'inline fragments',
      (levels: number) =>
        `{ categories { ... { edges ${'{ ... { node '.repeat(levels)} { id } ${'} }'.repeat(levels)} } } }`,
    ],
  ])('for %s nested 11 deep', async (_what, nested) => {
    expect(await reasonsOf(nested(11))).toContain('too-deep')
  })

  test('for 11 levels made of fragments', async () => {
    const chain = Array.from({ length: 10 }, (_, i) => `fragment F${i} on Query { node { ...F${i + 1} } }`)
    expect(await reasonsOf(`{ ...F0 } ${chain.join(' ')} fragment F10 on Query { node { id } }`)).toContain(
      'too-deep',
    )
  })

  test.each(['__typename', 'node(id: "x") { id }'])('for 200 aliases of %s', async (field) => {
    const query = `{ ${Array.from({ length: 200 }, (_, i) => `a${i}: ${field}`).join(' ')} }`
    expect(await reasonsOf(query)).toEqual(['too-many-aliases'])
  })

  test('for 200 directives, and for 1000 on one field', async () => {
    expect(await reasonsOf(`{ ${'__typename @include(if: true) '.repeat(200)} }`)).toEqual([
      'too-many-directives',
    ])
    await refusedUnresolved(`{ __typename ${'@include(if: true) '.repeat(1000)} }`)
  })

  test('for more than 5000 tokens, and says so', async () => {
    const [error] = await refusedUnresolved(`{ ${'__typename '.repeat(20_000)} }`)
    expect(error).toMatchObject({ extensions: { code: 'GRAPHQL_PARSE_FAILED' } })
    expect(error!.message).toContain(`${GRAPHQL_LIMITS.tokens} tokens`)
  })

  test('for circular fragments', async () => {
    const [error] = await refusedUnresolved(
      '{ ...A } fragment A on Query { ...B } fragment B on Query { ...A }',
    )
    expect(error!.extensions.code).toBe('GRAPHQL_VALIDATION_FAILED')
  })

  test('for introspection that goes round in circles', async () => {
    const round =
      '{ __type(name: "Query") { fields { type { fields { type { fields { type { fields { name } } } } } } } } }'
    expect((await refusedUnresolved(round))[0]!.extensions.code).toBe('GRAPHQL_VALIDATION_FAILED')
  })

  test('for an array of operations', async () => {
    const answer = await app.send
      .post('/graphql')
      .send([{ query: '{ __typename }' }, { query: '{ __typename }' }])
    expect(answer.status).toBe(400)
    expect(answer.body.errors[0].extensions.code).toBe('BAD_REQUEST')
  })
})

describe('the cost of an operation', () => {
  const costOf = (query: string, variables = {}) =>
    complexityFromQuery(parse(query), { schema, variables }).complexity
  const page = (length: string) => costOf(`{ categories(${length}) { edges { node { code } } } }`)

  test('grows with the length of a page, in both directions', () => {
    expect(page('first: 100') - page('first: 0')).toBeCloseTo(
      ((page('first: 5') - page('first: 0')) * 99) / 4,
      6,
    )
    expect(page('last: 100')).toBe(page('first: 100'))
    expect(page('includeRetired: true')).toBe(page(`first: ${GRAPHQL_LIMITS.defaultPageSize}`))
  })

  test('grows with the number of ids and of devices', () => {
    const nodes = (count: number) =>
      costOf('query ($ids: [ID!]!) { nodes(ids: $ids) { id } }', { ids: new Array(count).fill('x') })
    expect(nodes(100) - nodes(50)).toBe(nodes(150) - nodes(100))
    expect(nodes(100)).toBeGreaterThan(100)
    expect(costOf(EVERYTHING, homeOf(100)) * 2).toBeCloseTo(costOf(EVERYTHING, homeOf(200)), 6)
  })

  const EVERYTHING = `query ($input: EstimateInput!) { estimate(input: $input)${everyFieldOf('Estimate')} }`
  const homeOf = (devices: number) => ({
    input: { devices: new Array(devices).fill({ category: 'television' }) },
  })

  test('lets every field of the largest household through, once', async () => {
    const { status, body } = await post(app, EVERYTHING, homeOf(LIMITS.devices))
    expect({ status, errors: body.errors }).toEqual({ status: 200, errors: undefined })
    expect(body.data.estimate.devices).toHaveLength(LIMITS.devices)
    const twice =
      'query ($input: EstimateInput!) { a: estimate(input: $input) { currency } b: estimate(input: $input) { currency } }'
    expect(await reasonsOf(twice, homeOf(LIMITS.devices))).toEqual(['too-costly'])
  })

  test('lets every field of a full page of categories through, and every field there is for thirty devices', async () => {
    const { status, body } = await post(
      app,
      `{ categories(first: 200)${everyFieldOf('CategoryConnection')} }`,
    )
    expect({ status, errors: body.errors }).toEqual({ status: 200, errors: undefined })
    expect((await post(app, EVERYTHING, homeOf(30))).status).toBe(200)
  })

  test('is that of the operation asked for, not of the first in the document', async () => {
    const selection = everyFieldOf('Estimate')
    const document = `query Cheap { __typename } query Costly($input: EstimateInput!) { a: estimate(input: $input)${selection} b: estimate(input: $input)${selection} }`
    expect(await reasonsOf(document, homeOf(LIMITS.devices), 'Costly')).toEqual(['too-costly'])
    const other = await post(app, document, homeOf(LIMITS.devices), 'Cheap')
    expect(other.body).toEqual({ data: { __typename: 'Query' } })
  })

  test('of more ids than are read counts before they are', async () => {
    const query = `query ($ids: [ID!]!) { nodes(ids: $ids) { id __typename ... on Category${everyFieldOf('Category')} } }`
    expect(await reasonsOf(query, { ids: new Array(5000).fill('x') })).toEqual(['too-costly'])
  })

  test('leaves it to execution to name variables that do not fit and operations that are not there', async () => {
    const misfit = await refusedUnresolved(
      'query ($ids: [ID!]!, $n: Int) { nodes(ids: $ids) { id } categories(first: $n) { totalCount } }',
      { n: 'many' },
    )
    expect(misfit.map(({ extensions }) => extensions.code)).toEqual(['BAD_USER_INPUT', 'BAD_USER_INPUT'])
    const [missing] = await refusedUnresolved('query A { __typename }', {}, 'B')
    expect(missing!.extensions.code).toBe('OPERATION_RESOLUTION_FAILURE')
  })

  test('is not stumbled over by a null where the argument’s default hid that it is required', async () => {
    const query = 'query ($ids: [ID!] = []) { nodes(ids: $ids) { id } }'
    expect(await reasonsOf(query, { ids: null })).toEqual(['faulty-argument'])
    expect((await post(app, query)).body).toEqual({ data: { nodes: [] } })
  })
})

test('the usual introspection query is answered, as the written policy says', async () => {
  const { status, body } = await post(
    app,
    getIntrospectionQuery({ descriptions: true, inputValueDeprecation: true, oneOf: true }),
  )
  expect({ status, errors: body.errors }).toEqual({ status: 200, errors: undefined })
  expect(body.data.__schema.types.map(({ name }: { name: string }) => name)).toContain('Estimate')
})
