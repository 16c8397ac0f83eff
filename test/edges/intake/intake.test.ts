import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { household, type IntakeClient, intakeClient, NDJSON, sendBatch } from './intakeClient.ts'

let client: IntakeClient
beforeAll(async () => {
  client = await intakeClient()
})
afterAll(() => client.app.close())

describe('a batch', () => {
  test('is answered line by line with what POST /v1/estimates gives, and counted in the last', async () => {
    const devices = [{ category: 'television', year: 2018, quantity: 2 }]
    const lines = await client.take(`${household('a', { devices })}\n${household('b')}\n`)
    const { body } = await client.app.send.post('/v1/estimates').send({ devices }).expect(200)
    expect(lines[0]).toEqual({ line: 1, reference: 'a', status: 'estimated', estimate: body })
    expect(lines[1]).toMatchObject({ line: 2, reference: 'b', status: 'estimated' })
    expect(lines[2]).toEqual({
      status: 'done',
      lines: 2,
      lastLine: 2,
      estimated: 2,
      stored: 0,
      alreadyStored: 0,
      problems: 0,
    })
  })

  test('answers a line with faults with every one of them, and goes on', async () => {
    const lines = await client.take(
      [
        household('a'),
        '{ not json',
        JSON.stringify({ devices: [{ category: 'nonsense thing', quantity: -1 }], surname: 'x' }),
        '',
        '[]',
        household('b'),
      ].join('\n'),
    )
    expect(lines.map(({ line, status, code }) => [line, status, code])).toEqual([
      [1, 'estimated', undefined],
      [2, 'problem', 'faulty-input'],
      [3, 'problem', 'faulty-input'],
      [5, 'problem', 'faulty-input'],
      [6, 'estimated', undefined],
      [undefined, 'done', undefined],
    ])
    expect(lines[1]?.['errors']).toMatchObject([{ pointer: '', code: 'malformed-json' }])
    const pointers = (lines[2]?.['errors'] as { pointer: string }[]).map(({ pointer }) => pointer)
    expect(pointers.sort()).toEqual(['/devices/0/category', '/devices/0/quantity', '/surname'])
    expect(lines.at(-1)).toMatchObject({ lines: 5, lastLine: 6, estimated: 2, problems: 3 })
  })

  test('with detail=total has the totals alone', async () => {
    const [line] = await client.take(household('a'), '?detail=total')
    expect(Object.keys(line?.['estimate'] as object)).toEqual([
      'catalogueRevision',
      'coverageProbability',
      'currency',
      'sampleData',
      'total',
    ])
  })

  test('names every fault of its address, and needs a name where it is kept', async () => {
    const bad = await client.app.send
      .post('/v1/intake-batches?store=yes&after=-1&colour=1')
      .set({ ...client.own, 'content-type': NDJSON })
      .send('{}')
    expectProblem(bad, 400, 'faulty-query')
    expect(bad.body.errors).toHaveLength(3)
    const unnamed = await client.app.send
      .post('/v1/intake-batches?store=true')
      .set({ ...client.own, 'content-type': NDJSON })
      .send('{}')
    expectProblem(unnamed, 400, 'faulty-query')
    expect(unnamed.body.errors).toMatchObject([{ pointer: '/batch', code: 'required' }])
  })

  test('needs a key with the scope intake, a body, and a form that is read', async () => {
    const send = (headers: object) =>
      client.app.send
        .post('/v1/intake-batches')
        .set({ 'content-type': NDJSON, ...headers })
        .send('{}')
    expectProblem(await send({}), 401, 'key-required')
    const estimateOnly = bearer((await issueTestKey(client.app, { scopes: ['estimate'] })).key)
    expectProblem(await send(estimateOnly), 403, 'scope-missing')
    expectProblem(
      await send({ ...client.own, 'content-type': 'application/json' }),
      415,
      'unsupported-media-type',
    )
    expectProblem(await send({ ...client.own, accept: 'text/html' }), 406, 'not-acceptable')
    expectProblem(await client.app.send.post('/v1/intake-batches').set(client.own), 400, 'malformed-body')
  })

  test('of a line that is far too long keeps no more of it than is allowed, and reads the next', async () => {
    const lines = await client.take(`${' '.repeat(3_000_000)}x\n${household('a')}`)
    expect(lines[0]).toMatchObject({ line: 1, status: 'problem', errors: [{ code: 'line-too-long' }] })
    expect(lines[1]).toMatchObject({ line: 2, status: 'estimated' })
  })

  test('that is empty is counted as nothing', async () => {
    expect(await client.take('\n\n')).toMatchObject([{ status: 'done', lines: 0, lastLine: 0 }])
  })
})

describe('a batch that is kept', () => {
  const list = async (as = client.own) =>
    (await client.app.send.get('/v1/inventories?limit=200').set(as).expect(200)).body.items as {
      id: string
    }[]

  test('becomes inventories with one visit and an estimate each', async () => {
    const meters = [{ id: 'm', percentOfReading: 1, counts: 2, resolution: 0.1 }]
    const [line, last] = await client.take(
      household('kept-1', { date: '2026-01-10', notes: 'from the form', annualUseKwh: 3000, meters }),
      '?store=true&batch=first',
    )
    expect(last).toMatchObject({ status: 'done', stored: 1 })
    const address = `/v1/inventories/${line!['inventoryId'] as string}`
    const { body } = await client.app.send.get(address).set(client.own).expect(200)
    expect(body).toMatchObject({
      reference: 'kept-1',
      notes: 'from the form',
      annualUseKwh: 3000,
      visits: [{ date: '2026-01-10', kind: 'first', meters, devices: [{ category: 'television' }] }],
    })
    const stored = await client.app.send
      .get(`${address}/estimates/${line!['estimateId'] as string}`)
      .set(client.own)
      .expect(200)
    expect(stored.body.estimate).toEqual(line!['estimate'])
    expect(stored.body.standing.outOfDate).toBe(false)
  })

  test('is stored once however often its lines are sent, and goes on after the last answered one', async () => {
    const text = ['r1', 'r2', 'r3', 'r4'].map((name) => household(name)).join('\n')
    const before = (await list()).length
    const firstTwo = await client.take(text.split('\n').slice(0, 2).join('\n'), '?store=true&batch=again')
    const whole = await client.take(text, '?store=true&batch=again')
    expect(whole.map(({ status }) => status)).toEqual([
      'already-stored',
      'already-stored',
      'stored',
      'stored',
      'done',
    ])
    expect(whole[0]).toEqual({ ...firstTwo[0], status: 'already-stored' })
    expect(whole.at(-1)).toMatchObject({ lines: 4, stored: 2, alreadyStored: 2, problems: 0 })
    const rest = await client.take(text, '?store=true&batch=again&after=3')
    expect(rest).toMatchObject([
      { line: 4, status: 'already-stored' },
      { status: 'done', lines: 1, lastLine: 4 },
    ])
    expect((await list()).length).toBe(before + 4)
  })

  test('tells what is in the way: another line with the number, another household with the reference', async () => {
    const [first] = await client.take(household('taken'), '?store=true&batch=one')
    const changed = await client.take(household('taken', { annualUseKwh: 1 }), '?store=true&batch=one')
    expect(changed[0]).toMatchObject({
      status: 'problem',
      code: 'intake-line-changed',
      inventoryId: first!['inventoryId'],
    })
    const [taken] = await client.take(household('taken'), '?store=true&batch=two')
    expect(taken).toMatchObject({
      status: 'problem',
      code: 'inventory-exists',
      inventoryId: first!['inventoryId'],
    })
  })

  test('keeps nothing of a line with faults, nor of one without a reference', async () => {
    const before = await list()
    const lines = await client.take(
      `${JSON.stringify({ devices: [{ category: 'television' }] })}\n${household('bad', { devices: [] })}`,
      '?store=true&batch=faulty',
    )
    expect(lines.slice(0, 2)).toMatchObject([
      { status: 'problem', errors: [{ pointer: '/reference', code: 'required' }] },
      { status: 'problem', reference: null, errors: [{ pointer: '/devices', code: 'too-small' }] },
    ])
    expect(await list()).toEqual(before)
  })

  test('is another organisation’s own', async () => {
    const [mine] = await client.take(household('shared'), '?store=true&batch=shared')
    const [theirs] = await client.take(household('shared'), '?store=true&batch=shared', NDJSON, client.other)
    expect(theirs).toMatchObject({ status: 'stored' })
    expect(theirs!['inventoryId']).not.toBe(mine!['inventoryId'])
    expect(await list(client.other)).toHaveLength(1)
  })

  test('says where to go on when the store fails on the way', async () => {
    const { inventoryStore } = client.app.deps
    let calls = 0
    const failing = await testApp({
      keyStore: client.app.deps.keyStore,
      inventoryStore: {
        ...inventoryStore,
        addBatch: async (...given) => {
          if (++calls === 3) throw new Error('the database is gone')
          return inventoryStore.addBatch(...given)
        },
      },
    })
    const text = Array.from({ length: 450 }, (_, i) => household(`f${i}`)).join('\n')
    const send = (to: TestApp, query: string) =>
      sendBatch(to, text, { query: `?store=true&batch=failing&detail=total${query}`, as: client.own })
    const broken = await send(failing, '')
    expect(broken.at(-1)).toMatchObject({
      status: 'broken-off',
      lines: 200,
      lastLine: 200,
      stored: 200,
      code: 'internal',
    })
    expect(failing.log()).toContain('the database is gone')
    expect(JSON.stringify(broken)).not.toContain('the database is gone')
    const rest = await send(client.app, '&after=200')
    // The part that was under way beside the one that failed was stored, and is told so.
    expect(rest.at(-1)).toMatchObject({ status: 'done', lines: 250, lastLine: 450, problems: 0 })
    const { items } = (
      await client.app.send.get('/v1/inventories?reference=f449').set(client.own).expect(200)
    ).body
    expect(items).toHaveLength(1)
    await failing.close()
  })
})
