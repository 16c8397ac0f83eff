import {
  type GraphQLField,
  getNamedType,
  isInputObjectType,
  isNonNullType,
  isListType,
  type GraphQLInputType,
} from 'graphql'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { SCOPES, type Scope } from '../../../src/core/access/caller.ts'
import { schema } from '../../../src/edges/graphql/schema.ts'
import openApi from '../../../src/edges/rest/openapi.json' with { type: 'json' }
import { expectProblem } from '../../helpers/expectProblem.ts'
import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let app: TestApp
let keys: ReadonlyMap<Scope, string>
beforeAll(async () => {
  app = await testApp()
  const issued = SCOPES.map(
    async (scope) => [scope, (await issueTestKey(app, { scopes: [scope] })).key] as const,
  )
  keys = new Map(await Promise.all(issued))
})
afterAll(() => app.close())

interface Operation {
  readonly operationId: string
  readonly security?: readonly { readonly key: readonly Scope[] }[]
}
const operations = Object.entries(
  openApi.paths as unknown as Record<string, Record<string, Operation>>,
).flatMap(([path, item]) =>
  Object.entries(item).map(([method, operation]) => ({
    ...operation,
    method,
    address: path.replaceAll(/\{\w+\}/g, 'anything'),
    scope: operation.security?.[0]?.key[0],
  })),
)

/** What changes nothing, though it is sent with POST: it answers a question that is too long for an address. */
const QUESTIONS = [
  'estimateHousehold',
  'evaluateReading',
  'compareTariffs',
  'checkAgainstLimit',
  'planSavings',
  'verifySavings',
  'estimatePopulation',
  'evaluateBaseLoad',
  'answerQuiz',
]
/** What a key needs is also what it must not lack: every scope but this one, and but `admin`, which holds all. */
const lacking = (scope: Scope) => SCOPES.filter((other) => other !== scope && other !== 'admin')

test('every route that can change something needs a key with a scope', () => {
  const open = operations.filter(({ method, scope }) => method !== 'get' && scope === undefined)
  expect(open.map(({ operationId }) => operationId).filter((name) => !QUESTIONS.includes(name))).toEqual([])
  expect(operations.filter(({ scope }) => scope !== undefined).length).toBeGreaterThan(8)
})

const guarded = operations.flatMap(({ scope, ...rest }) => (scope ? [{ ...rest, scope }] : []))
describe.each(guarded)('$method $address', ({ method, address, scope }) => {
  const send = (headers: Record<string, string>) =>
    app.send[method as 'get'](address).set({ ...headers, 'content-type': 'application/json' })

  test('refuses a caller without a key, before it reads the body', async () => {
    const answer = method === 'get' ? send({}) : send({}).send('{ this is no JSON')
    expectProblem(await answer, 401, 'key-required')
  })

  test('refuses keys that lack its scope', async () => {
    for (const held of lacking(scope)) {
      const problem = expectProblem(await send(bearer(keys.get(held)!)), 403, 'scope-missing')
      expect(problem['scope']).toBe(scope)
    }
  })
})

/** An argument that fits its type, so that what refuses is the mutation and not the type. */
function anyValue(type: GraphQLInputType): string {
  if (isNonNullType(type)) return anyValue(type.ofType)
  if (isListType(type)) return `[${anyValue(type.ofType)}]`
  const named = getNamedType(type)
  if (isInputObjectType(named)) {
    const fields = Object.values(named.getFields())
    const needed = named.isOneOf ? fields.slice(0, 1) : fields.filter((field) => isNonNullType(field.type))
    return `{ ${needed.map((field) => `${field.name}: ${anyValue(field.type)}`).join(', ')} }`
  }
  const plain: Readonly<Record<string, string>> = {
    Int: '1',
    Float: '1',
    Boolean: 'true',
    String: '"x"',
    ID: '"x"',
  }
  return plain[named.name] ?? ('getValues' in named ? named.getValues()[0]!.name : '"x"')
}

const callOf = ({ name, args }: GraphQLField<unknown, unknown>) => {
  const needed = args
    .filter(({ type }) => isNonNullType(type))
    .map((arg) => `${arg.name}: ${anyValue(arg.type)}`)
  const list = needed.length > 0 ? `(${needed.join(', ')})` : ''
  return `${name}${list}`
}
const documentOf = (field: GraphQLField<unknown, unknown>) =>
  `mutation { ${callOf(field)} { __typename ... on UserError { code message } } }`
const mutations = Object.values(schema.getMutationType()?.getFields() ?? {})

test('there are mutations', () => {
  expect(mutations.map(({ name }) => name)).toContain('issueApiKey')
})

describe.each(mutations)('mutation $name', (mutation) => {
  const run = async (headers: Record<string, string>) => {
    const { status, body } = await app.send
      .post('/graphql')
      .set(headers)
      .send({ query: documentOf(mutation) })
    expect([status, body.errors]).toEqual([200, undefined])
    return body.data[mutation.name]
  }

  test('refuses a caller without a key', async () => {
    expect(await run({})).toMatchObject({ __typename: 'AccessError', code: 'key-required' })
  })

  test('refuses every key that has one scope, but those of the one scope that it needs, and of admin', async () => {
    const outcomes = await Promise.all(
      SCOPES.map(
        async (scope) => [scope, (await run(bearer(keys.get(scope)!))).code === 'scope-missing'] as const,
      ),
    )
    const refused = outcomes.filter(([, isRefused]) => isRefused).map(([scope]) => scope)
    expect(refused.length).toBeGreaterThanOrEqual(SCOPES.length - 2)
    expect(refused).not.toContain('admin')
    expect(refused).toContain('estimate')
  })

  test('is refused as a GET', async () => {
    const query = encodeURIComponent(documentOf(mutation))
    const answer = await app.send.get(`/graphql?query=${query}`).set('apollo-require-preflight', '1')
    expect(answer.status).toBe(405)
  })
})

describe('where the operator gives no estimates to callers without a key', () => {
  let closed: TestApp
  beforeAll(async () => (closed = await testApp({ anonymousEstimates: false })))
  afterAll(() => closed.close())
  const household = { devices: [{ category: 'television' }] }
  const rest = (headers: Record<string, string>) =>
    closed.send.post('/v1/estimates').set(headers).send(household)
  const graphql = (
    headers: Record<string, string>,
    query = '{ estimate(input: { devices: [{ category: "television" }] }) { currency } }',
  ) => closed.send.post('/graphql').set(headers).send({ query })

  test('estimates and GraphQL need a key', async () => {
    const answer = await rest({})
    expectProblem(answer, 401, 'key-required')
    expect(answer.headers['www-authenticate']).toBe('Bearer realm="standby-draw-estimation"')
    for (const query of [undefined, '{ __typename }']) {
      const { status, body } = await graphql({}, query)
      expect([status, body.errors[0].extensions.reason]).toEqual([401, 'key-required'])
    }
  })

  test.each(SCOPES)('and of the scopes estimate and admin are good for them: %s', async (scope) => {
    const headers = bearer((await issueTestKey(closed, { scopes: [scope] })).key)
    if (scope === 'estimate' || scope === 'admin') {
      await rest(headers).expect(200)
      const { body } = await graphql(headers).expect(200)
      expect(body).toEqual({ data: { estimate: { currency: 'EUR' } } })
    } else {
      expectProblem(await rest(headers), 403, 'scope-missing')
      const { status, body } = await graphql(headers)
      expect([status, body.errors[0].extensions]).toMatchObject([
        200,
        { code: 'FORBIDDEN', reason: 'scope-missing', scope: 'estimate' },
      ])
      expect(body.data).toEqual({ estimate: null })
    }
  })

  test.each(SCOPES)('a key of any scope reads the catalogue at /graphql: %s', async (scope) => {
    const headers = bearer((await issueTestKey(closed, { scopes: [scope] })).key)
    const { body } = await graphql(headers, '{ category(code: "television") { ... on Category { code } } }')
    expect(body).toEqual({ data: { category: { code: 'television' } } })
  })

  test('a key edits at /graphql what its scope lets it edit', async () => {
    const editor = bearer((await issueTestKey(closed, { scopes: ['catalogue:edit'] })).key)
    const edit = documentOf(mutations.find(({ name }) => name === 'createCategory')!)
    const { body } = await graphql(editor, edit)
    expect(body.errors).toBe(undefined)
    expect(body.data.createCategory.code).not.toBe('scope-missing')
    const estimator = bearer((await issueTestKey(closed, { scopes: ['estimate'] })).key)
    expect((await graphql(estimator, edit)).body.data.createCategory.code).toBe('scope-missing')
  })

  const workedOut = Object.values(schema.getQueryType()!.getFields()).filter(({ args }) =>
    args.some(({ name }) => name === 'input'),
  )

  test('there is a field of GraphQL for every route that answers a question', () => {
    expect(workedOut.map(({ name }) => name).sort()).toEqual([
      'checkAgainstLimit',
      'compareTariffs',
      'estimate',
      'evaluateBaseLoad',
      'evaluateReading',
      'populationOfStock',
      'populationOfSurvey',
      'quizEstimate',
      'savingsPlan',
      'verifySavings',
    ])
  })

  test.each(workedOut)('$name needs the scope estimate', async (field) => {
    for (const scope of lacking('estimate')) {
      const headers = bearer((await issueTestKey(closed, { scopes: [scope] })).key)
      const { body } = await graphql(headers, `{ ${callOf(field)} { __typename } }`)
      expect([body.data, body.errors[0].extensions.reason]).toEqual([{ [field.name]: null }, 'scope-missing'])
    }
    const headers = bearer((await issueTestKey(closed, { scopes: ['estimate'] })).key)
    const { status, body } = await graphql(headers, `{ ${callOf(field)} { __typename } }`)
    // What it says of the input is another matter: it was looked at.
    const errors = (body.errors ?? []) as { extensions: { code: string; reason?: string } }[]
    expect(errors.filter(({ extensions }) => extensions.code === 'FORBIDDEN')).toEqual([])
    expect(status).toBe(200)
  })

  test('the rest stays open', async () => {
    for (const address of ['/v1/categories', '/health/live', '/openapi.json', '/problems/key-required'])
      await closed.send.get(address).expect(200)
  })
})

test('a method that is named in a header or a parameter is not the method of the request', async () => {
  const { id } = await issueTestKey(app, { scopes: ['admin'] })
  const admin = bearer(keys.get('admin')!)
  for (const header of ['x-http-method-override', 'x-http-method', 'x-method-override'])
    await app.send
      .get(`/v1/api-keys/${id}`)
      .set({ ...admin, [header]: 'DELETE' })
      .expect(200)
  expectProblem(await app.send.get(`/v1/api-keys/${id}?_method=DELETE`).set(admin), 400, 'faulty-query')
  const { body } = await app.send.get(`/v1/api-keys/${id}`).set(admin)
  expect(body.state).toBe('active')
})
