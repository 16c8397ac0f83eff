import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import {
  exampleContent,
  followUp,
  INVENTORY_REQUESTS,
} from '../../../src/edges/rest/inventories/requestExamples.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { type InventoryClient, inventoryClient } from './inventoryClient.ts'

let client: InventoryClient
let id: string
const first = exampleContent.visits[0]!
beforeAll(async () => {
  client = await inventoryClient()
  id = (await client.create({ visits: [followUp, first] })).id
})
afterAll(() => client.app.close())

const post = (path: string, body: object, as = client.own, of = id) =>
  client.send.post(`/v1/inventories/${of}/${path}`).set(as).send(body)
const { annualUseKwh } = exampleContent
const pointers = (body: { errors: { pointer: string; code: string }[] }) =>
  body.errors.map(({ pointer, code }) => `${pointer} ${code}`).sort()

describe('a savings plan of a kept household', () => {
  test('is that of the same household as it was on the visit, the last one where none is named', async () => {
    const { value } = INVENTORY_REQUESTS.planForInventory.budget
    const { meters, devices } = followUp
    const direct = await client.send
      .post('/v1/savings-plans')
      .send({ annualUseKwh, meters, devices, ...value })
      .expect(200)
    expect((await post('savings-plan', value).expect(200)).body).toEqual(direct.body)
    const ofFirst = await client.send
      .post('/v1/savings-plans')
      .send({ annualUseKwh, devices: first.devices, coverageProbability: 0.8 })
      .expect(200)
    const asked = { visit: first.date, coverageProbability: 0.8 }
    expect((await post('savings-plan', asked).expect(200)).body).toEqual(ofFirst.body)
    expect(ofFirst.body.measures).not.toEqual(direct.body.measures)
  })

  test('names every fault of its options at once, and a visit that there is not', async () => {
    const faulty = await post('savings-plan', {
      plan: { budget: -1, measures: [{ code: 'nonsense' }] },
      colour: 1,
    })
    expectProblem(faulty, 422, 'faulty-input')
    expect(pointers(faulty.body)).toEqual(['/colour unknown-field', '/plan/budget too-small'])
    const unknown = await post('savings-plan', { plan: { measures: [{ code: 'nonsense' }] } })
    expect(pointers(unknown.body)).toEqual(['/plan/measures/0/code unknown-code'])
    expect(pointers((await post('savings-plan', { visit: '2020-01-01' })).body)).toEqual([
      '/visit unknown-visit',
    ])
  })

  test('is not there for another organisation', async () => {
    expectProblem(await post('savings-plan', {}, client.other), 404, 'unknown-inventory')
  })
})

describe('a verification of a kept household', () => {
  test('is that of its first visit and its last where none are named', async () => {
    const { value } = INVENTORY_REQUESTS.verifyInventory.firstAndLast
    const direct = await client.send
      .post('/v1/verifications')
      .send({
        annualUseKwh,
        before: { devices: first.devices },
        after: { meters: followUp.meters, devices: followUp.devices },
      })
      .expect(200)
    expect((await post('verification', value).expect(200)).body).toEqual(direct.body)
    const named = await post('verification', { before: first.date, after: followUp.date }).expect(200)
    expect(named.body).toEqual(direct.body)
    // The television was only read the second time: nothing was saved by that.
    expect(direct.body.betterKnown.items).toHaveLength(1)
  })

  test('needs two visits, the first before the second', async () => {
    const { id: once } = await client.create()
    expect(pointers((await post('verification', {}, client.own, once)).body)).toEqual([
      '/after visits-not-in-order',
    ])
    const swapped = await post('verification', { before: followUp.date, after: first.date })
    expect(pointers(swapped.body)).toEqual(['/after visits-not-in-order'])
    const { id: never } = await client.create({ visits: [] })
    const none = await post('verification', {}, client.own, never)
    expect(none.body.detail).toContain('add one first')
  })

  test('asks for the ids of devices, at their place in the visit', async () => {
    const devices = [{ category: 'television' }]
    const { id: nameless } = await client.create({ visits: [{ date: '2026-01-01', devices }, followUp] })
    expect(pointers((await post('verification', {}, client.own, nameless)).body)).toEqual([
      '/before/devices/0/id required',
    ])
  })

  test('is not there for another organisation', async () => {
    expectProblem(await post('verification', {}, client.other), 404, 'unknown-inventory')
  })
})

test('GraphQL gives the same plan and the same verification as fields of the household', async () => {
  const query = `query ($of: String!) { inventory(inventoryId: $of) {
    savingsPlan(plan: { budget: 20 }) { measures { measureCode } plan { figures { savedKwhPerYear { expected low high } } } }
    verification { total { all { energyKwhPerYear { expected low high } } } }
  } }`
  const { body } = await client.send
    .post('/graphql')
    .set(client.own)
    .send({ query, variables: { of: id } })
  expect(body.errors).toBeUndefined()
  const plan = (await post('savings-plan', { plan: { budget: 20 } }).expect(200)).body
  const verified = (await post('verification', {}).expect(200)).body
  const { savingsPlan, verification } = body.data.inventory
  expect(savingsPlan.measures.map(({ measureCode }: { measureCode: string }) => measureCode)).toEqual(
    plan.measures.map(({ measureCode }: { measureCode: string }) => measureCode),
  )
  expect(savingsPlan.plan.figures.savedKwhPerYear).toEqual(plan.plan.figures.savedKwhPerYear)
  expect(verification.total.all.energyKwhPerYear).toEqual(verified.total.all.energyKwhPerYear)
  const bad = await client.send
    .post('/graphql')
    .set(client.own)
    .send({
      query: `query ($of: String!) { inventory(inventoryId: $of) { verification(before: "2020-01-01") { currency } } }`,
      variables: { of: id },
    })
  expect(bad.body.errors[0].extensions.code).toBe('BAD_USER_INPUT')
})
