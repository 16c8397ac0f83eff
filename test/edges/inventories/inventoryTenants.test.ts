import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import {
  exampleContent,
  followUp,
  INVENTORY_REQUESTS,
} from '../../../src/edges/rest/inventories/requestExamples.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { asAdmin } from '../../helpers/keys.ts'
import { type InventoryClient, inventoryClient } from './inventoryClient.ts'

let client: InventoryClient
beforeAll(async () => {
  client = await inventoryClient()
})
afterAll(() => client.app.close())

describe('the list', () => {
  test('comes newest first, in pages bound to their filter', async () => {
    const lister = await client.keyOf('lister')
    const references: string[] = []
    for (let i = 0; i < 5; i++) {
      client.laterBy(1000)
      const fields = i % 2 === 0 ? { visits: [followUp, exampleContent.visits[0]] } : {}
      references.unshift((await client.create(fields, lister)).reference)
    }
    const page = async (address: string) => (await client.send.get(address).set(lister).expect(200)).body
    const all = await page('/v1/inventories')
    expect(all.items.map(({ reference }: { reference: string }) => reference)).toEqual(references)
    expect(all.items[0]).toMatchObject({ version: 1, visits: 2, lastVisit: '2026-04-20' })
    const first = await page('/v1/inventories?limit=2')
    const second = await page(`/v1/inventories?limit=2&cursor=${first.nextCursor}`)
    expect(second.items).toEqual(all.items.slice(2, 4))
    const followedUp = await page('/v1/inventories?followedUp=true')
    expect(followedUp.items).toEqual([0, 2, 4].map((i) => all.items[i]))
    expect((await page('/v1/inventories?visitedTo=2026-02-01')).items).toHaveLength(2)
    expect((await page(`/v1/inventories?reference=${references[1]}`)).items).toEqual([all.items[1]])
    const bent = await client.send
      .get(`/v1/inventories?limit=2&followedUp=true&cursor=${first.nextCursor}`)
      .set(lister)
    expectProblem(bent, 400, 'faulty-cursor')
  })
})

describe('deletion', () => {
  test('takes the household, its estimates and kept answers, and leaves no content in the audit trail', async () => {
    const sent = client.content({ notes: 'A note to be gone' })
    const headers = { ...client.own, 'idempotency-key': 'to-be-gone' }
    const { id } = (await client.send.post('/v1/inventories').set(headers).send(sent).expect(201)).body
    const stored = await client.send
      .post(`/v1/inventories/${id}/estimates`)
      .set(client.own)
      .send({})
      .expect(201)
    expectProblem(
      await client.send.delete(`/v1/inventories/${id}`).set(client.own),
      428,
      'precondition-required',
    )
    const gone = await client.send
      .delete(`/v1/inventories/${id}`)
      .set({ ...client.own, 'if-match': await client.tagOf(id) })
      .expect(204)
    expect(gone.text).toBe('')
    expectProblem(await client.send.get(`/v1/inventories/${id}`).set(client.own), 404, 'unknown-inventory')
    expectProblem(
      await client.send.get(stored.headers['location']!).set(client.own),
      404,
      'unknown-inventory',
    )
    const remade = await client.send.post('/v1/inventories').set(headers).send(sent).expect(201)
    expect(remade.body.id).not.toBe(id)
    const trail = await client.send.get(`/v1/audit-events?subjectId=${id}`).set(asAdmin).expect(200)
    expect(trail.body.items.map(({ action }: { action: string }) => action)).toEqual([
      'inventory.delete',
      'estimate.store',
      'inventory.create',
    ])
    expect(trail.text).not.toContain('to be gone')
    expect(trail.text).not.toContain(sent.reference)
  })
})

describe('another organisation', () => {
  test('cannot tell a household that is there from one that is not', async () => {
    const { id } = await client.create()
    const stored = (
      await client.send.post(`/v1/inventories/${id}/estimates`).set(client.own).send({}).expect(201)
    ).body
    const missing = 'a'.repeat(16)
    const asked = (inventory: string, estimate: string) => [
      client.send.get(`/v1/inventories/${inventory}`).set(client.other),
      client.send
        .patch(`/v1/inventories/${inventory}`)
        .set({ ...client.other, 'if-match': '"x"', 'content-type': 'application/merge-patch+json' })
        .send('{}'),
      client.send.delete(`/v1/inventories/${inventory}`).set({ ...client.other, 'if-match': '"x"' }),
      client.send.post(`/v1/inventories/${inventory}/visits`).set(client.other).send(followUp),
      client.send.get(`/v1/inventories/${inventory}/export`).set(client.other),
      client.send.post(`/v1/inventories/${inventory}/estimates`).set(client.other).send({}),
      client.send.get(`/v1/inventories/${inventory}/estimates`).set(client.other),
      client.send.get(`/v1/inventories/${inventory}/estimates/${estimate}`).set(client.other),
      client.send.get(`/v1/inventories/${inventory}/estimates/${estimate}/recomputation`).set(client.other),
    ]
    const bare = ({ body, status }: { body: { detail: string }; status: number }, name: string) => ({
      ...body,
      status,
      requestId: '',
      detail: body.detail.replace(name, 'ID'),
    })
    const there = await Promise.all(asked(id, stored.id))
    const notThere = await Promise.all(asked(missing, missing))
    expect(there.map((answer) => bare(answer, id))).toEqual(notThere.map((answer) => bare(answer, missing)))
    for (const { status } of there) expect(status).toBe(404)
    expectProblem(await client.send.get(`/v1/inventories/${id}`).set(asAdmin), 404, 'unknown-inventory')
  })

  test('cannot use a cursor to reach a list that is not its own', async () => {
    await client.create()
    await client.create()
    const { nextCursor } = (await client.send.get('/v1/inventories?limit=1').set(client.own).expect(200)).body
    const theirs = await client.send
      .get(`/v1/inventories?limit=200&cursor=${nextCursor}`)
      .set(client.other)
      .expect(200)
    const mine = (await client.send.get('/v1/inventories?limit=200').set(client.own)).body.items.map(
      ({ id }: { id: string }) => id,
    )
    for (const { id } of theirs.body.items) expect(mine).not.toContain(id)
  })
})

describe('the examples of the API description', () => {
  test('are answered as it says', async () => {
    const { body } = await client.send
      .post('/v1/inventories')
      .set(client.own)
      .send(INVENTORY_REQUESTS.createInventory.firstVisit.value)
      .expect(201)
    const at = `/v1/inventories/${body.id}`
    await client
      .patch(body.id, await client.tagOf(body.id), INVENTORY_REQUESTS.patchInventory.use.value)
      .expect(200)
    await client.addVisit(body.id, INVENTORY_REQUESTS.addVisit.followUp.value).expect(201)
    for (const { value } of Object.values(INVENTORY_REQUESTS.storeEstimate))
      await client.send.post(`${at}/estimates`).set(client.own).send(value).expect(201)
    const exported = (await client.send.get(`${at}/export`).set(client.own).expect(200)).body
    expect(exported.inventory.visits).toHaveLength(2)
    expect(exported.estimates.map(({ visit }: { visit: string }) => visit).sort()).toEqual([
      '2026-01-15',
      '2026-04-20',
    ])
    expect(exported.auditEvents.map(({ action }: { action: string }) => action).sort()).toEqual([
      'estimate.store',
      'estimate.store',
      'inventory.change',
      'inventory.change',
      'inventory.create',
    ])
  })
})
