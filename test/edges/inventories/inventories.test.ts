import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { exampleContent, followUp } from '../../../src/edges/rest/inventories/requestExamples.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type InventoryClient, inventoryClient } from './inventoryClient.ts'

let client: InventoryClient
beforeAll(async () => {
  client = await inventoryClient()
})
afterAll(() => client.app.close())

const pointers = (body: { errors: { pointer: string; code: string }[] }) =>
  body.errors.map(({ pointer, code }) => `${pointer} ${code}`).sort()

describe('an inventory', () => {
  test('is answered as it is kept, with its address and tag', async () => {
    const sent = client.content()
    const answer = await client.send.post('/v1/inventories').set(client.own).send(sent).expect(201)
    const { id, version, createdAt, updatedAt, ...rest } = answer.body
    expect(rest).toEqual({ ...sent, visits: [{ ...sent.visits[0], kind: 'first' }] })
    expect([version, createdAt, updatedAt]).toEqual([
      1,
      client.now().toISOString(),
      client.now().toISOString(),
    ])
    expect(answer.headers['location']).toBe(`/v1/inventories/${id}`)
    const read = await client.send.get(`/v1/inventories/${id}`).set(client.own).expect(200)
    expect(read.body).toEqual(answer.body)
    expect(read.headers['etag']).toBe(answer.headers['etag'])
    expect(read.headers['cache-control']).toBe('private, no-cache')
    await client.send
      .get(`/v1/inventories/${id}`)
      .set({ ...client.own, 'if-none-match': read.headers['etag'] })
      .expect(304)
  })

  test('shows visits in the order of their dates, and which is the first', async () => {
    const { id } = await client.create({ visits: [followUp, exampleContent.visits[0]] })
    const { body } = await client.send.get(`/v1/inventories/${id}`).set(client.own)
    expect(body.visits.map(({ date, kind }: { date: string; kind: string }) => [date, kind])).toEqual([
      ['2026-01-15', 'first'],
      ['2026-04-20', 'follow-up'],
    ])
  })

  test('is refused with every fault of shape and of the trade at once', async () => {
    const answer = await client.send
      .post('/v1/inventories')
      .set(client.own)
      .send({
        reference: 'has a space',
        tariffCode: 'nowhere',
        annualUseKwh: -1,
        visits: [
          { date: '2026-02-30', devices: [] },
          { date: '2026-01-15', devices: [{ category: 'no such thing at all' }] },
          { date: '2026-01-15', devices: [{ category: 'television', modes: [{ mode: 'no-load' }] }] },
        ],
      })
    expectProblem(answer, 422, 'faulty-input')
    expect(pointers(answer.body)).toEqual([
      '/annualUseKwh too-small',
      '/reference invalid-format',
      '/tariffCode unknown-code',
      '/visits/0/date invalid-format',
      '/visits/0/devices too-small',
      '/visits/1/devices/0/category unknown-category',
      '/visits/2/date duplicate-visit',
      '/visits/2/devices/0/modes/0/mode mode-without-figure',
    ])
  })

  test('keeps no names and addresses: neither fields for them nor texts that look like them', async () => {
    const answer = await client.send
      .post('/v1/inventories')
      .set(client.own)
      .send({
        ...client.content(),
        customerName: 'x',
        post_code: 'x',
        colour: 'x',
        notes: 'Call 0176 123 45678 before the visit',
        visits: [
          {
            date: '2026-01-15',
            notes: 'Mrs Example is at home in the mornings',
            devices: [
              { category: 'television', label: 'someone@example.org', outlet: '12 Long Road' },
              { category: 'television', email: 'x' },
            ],
          },
        ],
      })
    expectProblem(answer, 422, 'faulty-input')
    expect(pointers(answer.body)).toEqual([
      '/colour unknown-field',
      '/customerName personal-data',
      '/notes personal-data',
      '/post_code personal-data',
      '/visits/0/devices/0/label personal-data',
      '/visits/0/devices/0/outlet personal-data',
      '/visits/0/devices/1/email personal-data',
      '/visits/0/notes personal-data',
    ])
    expect(answer.body.errors.at(-1).message).toContain('under your own reference')
  })

  test.each([
    'Reads 0.5 W at 230 V, 0.02 A; again at 20:15',
    'TV in the living room, strip 3',
    'meter 1.5 % + 3 counts, 2026-01-15',
    'Route through the garden road',
    'lamp @ hall, 12 W max',
  ])('takes notes as assessors write them: %s', async (notes) => {
    expect((await client.create({ notes })).notes).toBe(notes)
  })

  test('needs a key with the scope intake', async () => {
    const estimateOnly = bearer((await issueTestKey(client.app, { scopes: ['estimate'] })).key)
    expectProblem(await client.send.get('/v1/inventories').set(estimateOnly), 403, 'scope-missing')
    expectProblem(await client.send.post('/v1/inventories').send(client.content()), 401, 'key-required')
  })

  test('is one under its reference, which another organisation may use, too', async () => {
    const { id, reference } = await client.create()
    const again = await client.send
      .post('/v1/inventories')
      .set(client.own)
      .send(client.content({ reference }))
    expectProblem(again, 409, 'inventory-exists')
    expect(again.body.id).toBe(id)
    const theirs = await client.send
      .post('/v1/inventories')
      .set(client.other)
      .send(client.content({ reference }))
      .expect(201)
    expect(theirs.body.id).not.toBe(id)
  })
})

describe('a change', () => {
  test('by merge patch takes fields, adds and removes them, and makes the next version', async () => {
    const { id } = await client.create({ notes: 'Look again', weeksPerYear: 50 })
    const answer = await client
      .patch(id, await client.tagOf(id), { annualUseKwh: 2950, notes: null })
      .expect(200)
    expect(answer.body).toMatchObject({ version: 2, annualUseKwh: 2950, weeksPerYear: 50 })
    expect(answer.body).not.toHaveProperty('notes')
    expect(answer.headers['etag']).toBe(await client.tagOf(id))
  })

  test('says what it is based on, and is refused where that has changed', async () => {
    const { id } = await client.create()
    const tag = await client.tagOf(id)
    const without = await client.send
      .patch(`/v1/inventories/${id}`)
      .set({ ...client.own, 'content-type': 'application/merge-patch+json' })
      .send('{}')
    expectProblem(without, 428, 'precondition-required')
    expectProblem(await client.patch(id, '*', {}), 428, 'precondition-required')
    await client.patch(id, tag, { annualUseKwh: 1 }).expect(200)
    const stale = await client.patch(id, tag, { annualUseKwh: 2 })
    expectProblem(stale, 412, 'stale-inventory')
    expect(stale.body.version).toBe(2)
    expectProblem(await client.patch(id, `W/${tag}`, {}), 412, 'stale-inventory')
  })

  test('of two at once on the same version is done once', async () => {
    const { id } = await client.create()
    const tag = await client.tagOf(id)
    const answers = await Promise.all(
      [1, 2, 3].map((annualUseKwh) => client.patch(id, tag, { annualUseKwh })),
    )
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412, 412])
  })

  test('is checked as a whole: nothing is half stored', async () => {
    const { id } = await client.create()
    const before = (await client.send.get(`/v1/inventories/${id}`).set(client.own)).body
    const answer = await client.patch(id, await client.tagOf(id), {
      annualUseKwh: 1,
      visits: [{ date: 'x' }],
      street: 'y',
    })
    expectProblem(answer, 422, 'faulty-input')
    expect(pointers(answer.body)).toEqual([
      '/street personal-data',
      '/visits/0/date invalid-format',
      '/visits/0/devices required',
    ])
    expect((await client.send.get(`/v1/inventories/${id}`).set(client.own)).body).toEqual(before)
  })
})

describe('a visit', () => {
  test('is added beside those that there are', async () => {
    const { id } = await client.create()
    const answer = await client.addVisit(id).expect(201)
    expect(answer.body.version).toBe(2)
    expect(answer.body.visits.map(({ kind }: { kind: string }) => kind)).toEqual(['first', 'follow-up'])
  })

  test('has its faults told at their place in what was sent', async () => {
    const { id } = await client.create()
    const answer = await client.addVisit(id, {
      date: '2026-01-15',
      devices: [{ category: 'television', colour: 1 }],
    })
    expectProblem(answer, 422, 'faulty-input')
    expect(pointers(answer.body)).toEqual(['/date duplicate-visit', '/devices/0/colour unknown-field'])
  })

  test('is added once with an Idempotency-Key, and answered the same each time', async () => {
    const { id } = await client.create()
    const first = await client.addVisit(id, followUp, { 'idempotency-key': '"visit-1"' }).expect(201)
    const again = await client.addVisit(id, followUp, { 'idempotency-key': 'visit-1' }).expect(201)
    expect(again.body).toEqual(first.body)
    expect(again.headers['etag']).toBe(first.headers['etag'])
    expect([first.headers['idempotency-replayed'], again.headers['idempotency-replayed']]).toEqual([
      undefined,
      'true',
    ])
    const changed = await client.addVisit(
      id,
      { ...followUp, date: '2026-05-01' },
      { 'idempotency-key': 'visit-1' },
    )
    expectProblem(changed, 422, 'idempotency-key-reused')
    expect((await client.send.get(`/v1/inventories/${id}`).set(client.own)).body.visits).toHaveLength(2)
  })
})

describe('an Idempotency-Key', () => {
  test('keeps a household from being made twice', async () => {
    const sent = client.content()
    const headers = { ...client.own, 'idempotency-key': 'make-1' }
    const first = await client.send.post('/v1/inventories').set(headers).send(sent).expect(201)
    const again = await client.send.post('/v1/inventories').set(headers).send(sent).expect(201)
    expect(again.body).toEqual(first.body)
    expect(again.headers['location']).toBe(first.headers['location'])
  })

  test('is each organisation’s own', async () => {
    const sent = client.content()
    const first = await client.send
      .post('/v1/inventories')
      .set({ ...client.own, 'idempotency-key': 'shared' })
      .send(sent)
      .expect(201)
    const theirs = await client.send
      .post('/v1/inventories')
      .set({ ...client.other, 'idempotency-key': 'shared' })
      .send(client.content())
      .expect(201)
    expect(theirs.body.id).not.toBe(first.body.id)
    expect(theirs.headers['idempotency-replayed']).toBeUndefined()
  })

  test.each(['', 'x'.repeat(201), 'two words'])('is refused where it is %j', async (key) => {
    const answer = await client.send
      .post('/v1/inventories')
      .set({ ...client.own, 'idempotency-key': key })
      .send(client.content())
    expectProblem(answer, 400, 'idempotency-key-malformed')
  })
})
