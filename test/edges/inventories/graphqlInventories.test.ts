import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { exampleContent, followUp } from '../../../src/edges/rest/inventories/requestExamples.ts'
import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let app: TestApp
let own: { authorization: string }
let other: { authorization: string }
beforeAll(async () => {
  app = await testApp()
  own = bearer((await issueTestKey(app, { scopes: ['intake'], organisation: 'own' })).key)
  other = bearer((await issueTestKey(app, { scopes: ['intake'], organisation: 'other' })).key)
})
afterAll(() => app.close())

const send = async (query: string, variables: object = {}, as = own) =>
  (await app.send.post('/graphql').set(as).send({ query, variables })).body
const ask = async (query: string, variables: object = {}, as = own) => {
  const { data, errors } = await send(query, variables, as)
  expect(errors).toBeUndefined()
  return data
}

const ERRORS = '... on UserError { code message } ... on FaultyInputError { faults { pointer code } }'
const FIELDS = 'id identifier reference version notes terms visits { date kind deviceCount content }'
const CREATE = `mutation ($input: CreateInventoryInput!) { createInventory(input: $input) { __typename ... on Inventory { ${FIELDS} } ${ERRORS} } }`
const CHANGE = `mutation ($input: ChangeInventoryInput!) { changeInventory(input: $input) { __typename ... on Inventory { ${FIELDS} } ${ERRORS} } }`
const ADD = `mutation ($input: AddVisitInput!) { addVisit(input: $input) { __typename ... on Inventory { ${FIELDS} } ${ERRORS} } }`
const DELETE = `mutation ($input: DeleteInventoryInput!) { deleteInventory(input: $input) { __typename ... on DeletedInventory { inventoryId } ${ERRORS} } }`
const STORED =
  'id estimateId visit estimate { total { energyKwhPerYear { expected low high } } } standing { outOfDate because change { energyKwhPerYear } }'
const STORE = `mutation ($input: StoreEstimateInput!) { storeEstimate(input: $input) { ... on StoredEstimate { ${STORED} } ${ERRORS} } }`

const mode = {
  mode: 'STANDBY',
  hoursPerWeek: { exact: 140 },
  reading: { power: { watts: 0.8, meterId: 'wattmeter' } },
}
const visit = {
  date: followUp.date,
  meters: followUp.meters,
  devices: [
    { id: 'tv', label: 'Television in the living room', category: 'television', year: 2018, modes: [mode] },
  ],
}
let made = 0
const create = async (content: object = {}) =>
  (await ask(CREATE, { input: { content: { reference: `G-${++made}`, ...content } } })).createInventory

describe('a household over GraphQL', () => {
  test('is the very one that REST shows', async () => {
    const { identifier, id } = await create({ annualUseKwh: 3200, visits: [visit] })
    const { body } = await app.send.get(`/v1/inventories/${identifier}`).set(own).expect(200)
    const [{ kind, ...shown }] = body.visits
    expect([kind, shown]).toEqual(['first', { ...followUp }])
    const { inventory } = await ask(`query ($of: String!) { inventory(inventoryId: $of) { ${FIELDS} } }`, {
      of: identifier,
    })
    expect(inventory).toMatchObject({ id, identifier, version: 1, reference: body.reference, notes: null })
    expect(JSON.parse(inventory.terms)).toEqual({ annualUseKwh: 3200 })
    expect(inventory.visits).toHaveLength(1)
    expect(inventory.visits[0]).toMatchObject({ date: followUp.date, kind: 'FIRST', deviceCount: 1 })
    expect(JSON.parse(inventory.visits[0].content)).toEqual({ meters: shown.meters, devices: shown.devices })
    const node = `query ($id: ID!) { node(id: $id) { ... on Inventory { identifier } } }`
    expect((await ask(node, { id })).node).toEqual({ identifier })
    expect((await ask(node, { id }, other)).node).toBeNull()
  })

  test('is changed on the version that was read: a null takes a field away', async () => {
    const { identifier: inventoryId } = await create({ notes: 'x', annualUseKwh: 1, visits: [exampleVisit] })
    const change = (basedOn: number, changes: object) =>
      ask(CHANGE, { input: { inventoryId, basedOn, changes } }).then((data) => data.changeInventory)
    const changed = await change(1, { notes: null, weeksPerYear: 50 })
    expect(changed).toMatchObject({ version: 2, notes: null })
    expect(JSON.parse(changed.terms)).toEqual({ annualUseKwh: 1, weeksPerYear: 50 })
    expect(await change(1, { notes: 'late' })).toMatchObject({
      __typename: 'ConflictError',
      code: 'stale-inventory',
    })
    expect(
      await change(2, {
        visits: [{ ...visit, devices: [{ category: 'nonsense thing' }] }],
        weeksPerYear: -1,
      }),
    ).toMatchObject({
      __typename: 'FaultyInputError',
      faults: [
        { pointer: '/changes/weeksPerYear', code: 'too-small' },
        { pointer: '/changes/visits/0/devices/0/category', code: 'unknown-category' },
      ],
    })
  })

  test('takes a visit once with an idempotency key', async () => {
    const { identifier: inventoryId } = await create()
    const input = { inventoryId, visit, idempotencyKey: 'graphql-visit' }
    const first = (await ask(ADD, { input })).addVisit
    expect((await ask(ADD, { input })).addVisit).toEqual(first)
    expect(first.visits).toHaveLength(1)
    const faulty = {
      ...visit,
      devices: [{ category: 'television', modes: [{ ...mode, reading: { current: { amperes: -1 } } }] }],
    }
    expect((await ask(ADD, { input: { inventoryId, visit: faulty } })).addVisit.faults).toEqual([
      { pointer: '/visit/devices/0/modes/0/reading/current/amperes', code: 'too-small' },
      { pointer: '/visit/date', code: 'duplicate-visit' },
    ])
  })

  test('is estimated, kept and listed with how it stands to today', async () => {
    const { identifier: inventoryId } = await create({ visits: [visit] })
    const stored = (await ask(STORE, { input: { inventoryId } })).storeEstimate
    const rest = await app.send.get(`/v1/inventories/${inventoryId}/estimates/${stored.estimateId}`).set(own)
    expect(stored.estimate.total.energyKwhPerYear).toEqual(rest.body.estimate.total.energyKwhPerYear)
    expect(stored.standing).toEqual({ outOfDate: false, because: [], change: null })
    const { inventory } = await ask(
      `query ($of: String!) { inventory(inventoryId: $of) { estimates(first: 1) { edges { node { ${STORED} } } pageInfo { hasNextPage } } } }`,
      { of: inventoryId },
    )
    expect(inventory.estimates).toEqual({ edges: [{ node: stored }], pageInfo: { hasNextPage: false } })
    const node = `query ($id: ID!) { node(id: $id) { ... on StoredEstimate { estimateId } } }`
    expect((await ask(node, { id: stored.id })).node).toEqual({ estimateId: stored.estimateId })
    expect((await ask(node, { id: stored.id }, other)).node).toBeNull()
    expect((await ask(STORE, { input: { inventoryId } }, other)).storeEstimate).toMatchObject({
      code: 'unknown-inventory',
    })
  })

  test('is deleted, and then is not there', async () => {
    const { identifier: inventoryId } = await create()
    expect((await ask(DELETE, { input: { inventoryId, basedOn: 7 } })).deleteInventory).toMatchObject({
      code: 'stale-inventory',
    })
    expect((await ask(DELETE, { input: { inventoryId, basedOn: 1 } })).deleteInventory).toEqual({
      __typename: 'DeletedInventory',
      inventoryId,
    })
    const { errors } = await send(`query ($of: String!) { inventory(inventoryId: $of) { id } }`, {
      of: inventoryId,
    })
    expect(errors[0].extensions.code).toBe('NOT_FOUND')
  })

  test('stands in a list that pages both ways, and is counted for its own organisation alone', async () => {
    const list =
      'query ($first: Int, $last: Int, $before: String) { inventories(first: $first, last: $last, before: $before) { totalCount edges { cursor node { reference inventory { reference } } } pageInfo { hasNextPage hasPreviousPage } } }'
    const all = (await ask(list, { first: 50 })).inventories
    expect(all.totalCount).toBe(all.edges.length)
    expect(all.totalCount).toBeGreaterThan(2)
    for (const { node } of all.edges) expect(node.inventory.reference).toBe(node.reference)
    const back = (await ask(list, { last: 1, before: all.edges[2].cursor })).inventories
    expect(back.edges).toEqual([all.edges[1]])
    expect((await ask(list, { first: 50 }, other)).inventories).toMatchObject({ totalCount: 0, edges: [] })
    const { inventories } = await ask('{ inventories(followedUp: true) { totalCount } }')
    expect(inventories.totalCount).toBe(0)
  })
})

const { devices, date } = exampleContent.visits[0]!
const exampleVisit = { date, devices }
