import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import {
  exampleProposal,
  exampleProposalList,
  exampleRejectedProposal,
} from '../../../src/edges/rest/proposals/examples.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { READINGS_W, readHomes } from './readHomes.ts'

let client: Awaited<ReturnType<typeof readHomes>>
beforeEach(async () => (client = await readHomes()))
afterEach(() => client.app.close())

const CLOSE_W = [1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8]
const tagOf = async () => (await client.get(client.amplifier).expect(200)).headers['etag']!
const reject = async (tag?: string) =>
  client.post(`${client.amplifier}/rejection`, { reason: 'Too few' }, { 'if-match': tag ?? (await tagOf()) })
const accept = async (query: object = {}, tag?: string) =>
  client.post(
    `${client.amplifier}/acceptance`,
    { reason: 'Enough', ...query },
    { 'if-match': tag ?? (await tagOf()) },
  )
const open = async () => (await client.get(client.PATH).expect(200)).body.items

describe('a proposal', () => {
  test('is what the API description shows, in the list and alone, before and after it is rejected', async () => {
    await client.homes(READINGS_W)
    expect((await client.get(client.PATH).expect(200)).body).toEqual(exampleProposalList)
    expect((await client.get(client.amplifier).expect(200)).body).toEqual(exampleProposal)
    const { body } = await reject()
    const keyId = expect.any(String)
    const rejection = {
      ...exampleRejectedProposal.rejection,
      reason: 'Too few',
      author: { organisation: 'operator', keyId },
    }
    expect(body).toEqual({ ...exampleRejectedProposal, version: expect.any(String), rejection })
  })

  test('needs eight readings, of eight households', async () => {
    await client.homes(CLOSE_W.slice(1))
    expect(await open()).toEqual([])
    await client.home([{ watts: 2 }, { watts: 3 }])
    expect(await open()).toHaveLength(1)
  })

  test('does not come of many devices in few households', async () => {
    for (const watts of CLOSE_W.slice(1)) await client.home([{ watts }, { watts: watts + 1 }])
    expect(await open()).toEqual([])
    expectProblem(await client.get(client.amplifier), 404, 'unknown-proposal')
  })

  test('counts devices that go by a name or an alias, and leaves out readings of several devices', async () => {
    await client.homes(CLOSE_W, 'Hi-Fi Amplifier')
    await client.home([{ watts: 100, quantity: 2 }])
    const [only] = await open()
    expect([only.category, only.n, only.leftOut.severalDevices]).toEqual(['amplifier', 8, 1])
  })

  test.each([
    'no-category/standby/all',
    'amplifier/asleep/all',
    'amplifier/standby/2010',
    'amplifier/off/all',
  ])('is not known by %s', async (place) => {
    await client.homes(CLOSE_W)
    expectProblem(await client.get(`${client.PATH}/${place}`), 404, 'unknown-proposal')
    const answer = client.post(
      `${client.PATH}/${place}/acceptance`,
      { reason: 'Enough' },
      { 'if-match': '"x"' },
    )
    expectProblem(await answer, 404, 'unknown-proposal')
  })

  test('is not sent again to whoever has it', async () => {
    await client.homes(CLOSE_W)
    const tag = await tagOf()
    await client.get(client.amplifier).set('if-none-match', tag).expect(304)
    await reject(tag)
    await client.get(client.amplifier).set('if-none-match', tag).expect(200)
  })
})

describe('the list', () => {
  test('comes in pages, in the order of categories', async () => {
    for (const category of ['television', 'amplifier', 'game-console']) await client.homes(CLOSE_W, category)
    const seen: string[] = []
    let path: string | null = `${client.PATH}?limit=1`
    while (path !== null) {
      const { body }: { body: { items: { category: string }[]; nextCursor: string | null } } = await client
        .get(path)
        .expect(200)
      seen.push(...body.items.map(({ category }) => category))
      path = body.nextCursor && `${client.PATH}?limit=1&cursor=${body.nextCursor}`
    }
    expect(seen).toEqual(['amplifier', 'game-console', 'television'])
  })

  test('refuses a cursor of another filter', async () => {
    for (const category of ['television', 'amplifier']) await client.homes(CLOSE_W, category)
    const { nextCursor } = (await client.get(`${client.PATH}?limit=1`).expect(200)).body
    const other = await client.get(`${client.PATH}?limit=1&includeAnswered=true&cursor=${nextCursor}`)
    expectProblem(other, 400, 'faulty-cursor')
  })

  test('is for editors of the operator alone, and so is all else of a proposal', async () => {
    await client.homes(CLOSE_W)
    const theirs = await client.keyOf('first-programme', 'catalogue:edit')
    const tag = await tagOf()
    const answers = [
      await client.get(client.PATH, theirs),
      await client.get(client.amplifier, theirs),
      await client.post(`${client.amplifier}/acceptance`, { reason: 'Enough' }, { 'if-match': tag }, theirs),
      await client.post(`${client.amplifier}/rejection`, { reason: 'Too few' }, { 'if-match': tag }, theirs),
    ]
    for (const answer of answers) expectProblem(answer, 403, 'operator-only')
    expect((await open())[0].status).toBe('open')
  })

  test('tells nothing of households, references and organisations but how many there are', async () => {
    await client.homes(READINGS_W)
    const { text } = await client.get(`${client.PATH}?includeAnswered=true`).expect(200)
    expect(text).not.toMatch(/programme|H-\d|2026-01-15/)
  })
})

describe('accepting', () => {
  test('makes one revision with figures of a programme, which say how many readings they have', async () => {
    await client.homes(CLOSE_W)
    const answer = (await accept()).body
    expect(answer.modes[0].draws).toEqual([
      {
        yearFrom: null,
        yearTo: null,
        lowW: 1.1,
        typicalW: 1.45,
        highW: 1.8,
        provenance: { kind: 'programme', citation: null, n: 8 },
      },
    ])
    const { items } = (await client.get('/v1/catalogue/revisions').expect(200)).body
    expect(items[0]).toMatchObject({ number: 2, action: 'accept-proposal', reason: 'Enough' })
    expect(await open()).toEqual([])
    const { body } = await client.get(client.amplifier).expect(200)
    expect([body.status, body.openAgainAt, body.todayIsSampleData]).toEqual(['accepted', 16, false])
  })

  test('asks to confirm a figure that changes by more than a factor of three', async () => {
    await client.homes(READINGS_W)
    const problem = expectProblem(await accept(), 409, 'large-change')
    expect(problem['changes']).toMatchObject([{ figure: 'highW', beforeW: 3, afterW: 30 }])
    expect((await accept({ confirm: true })).status).toBe(200)
  })

  test('is refused where readings came since, and tells the proposal as it is now', async () => {
    await client.homes(CLOSE_W)
    const tag = await tagOf()
    await client.homes([5])
    const problem = expectProblem(await accept({}, tag), 412, 'stale-proposal')
    expect(problem['current']).toMatchObject({ n: 9 })
    expect(problem['etag']).toBe(await tagOf())
    expect((await accept({}, String(problem['etag']))).status).toBe(200)
  })

  test('is refused without If-Match, and with the tag of another proposal', async () => {
    await client.homes(CLOSE_W)
    await client.homes(CLOSE_W, 'television')
    const path = `${client.amplifier}/acceptance`
    expectProblem(await client.post(path, { reason: 'Enough' }), 428, 'precondition-required')
    const other = (await client.get(`${client.PATH}/television/standby/all`)).headers['etag']!
    expectProblem(await accept({}, other), 412, 'stale-proposal')
    expectProblem(await accept({}, 'no tag'), 400, 'malformed-condition')
  })
})

describe('rejecting', () => {
  test('keeps the reason, and hides the proposal until there are eight more readings', async () => {
    await client.homes(CLOSE_W)
    await reject()
    expect(await open()).toEqual([])
    const { items } = (await client.get(`${client.PATH}?includeAnswered=true`).expect(200)).body
    expect(items).toMatchObject([
      { status: 'rejected', openAgainAt: 16, rejection: { n: 8, reason: 'Too few' } },
    ])
    await client.homes(CLOSE_W.slice(1))
    expect(await open()).toEqual([])
    await client.homes([1.5])
    expect(await open()).toMatchObject([{ status: 'open', n: 16, openAgainAt: null, rejection: { n: 8 } }])
  })

  test('is refused twice; but what was rejected can be accepted', async () => {
    await client.homes(CLOSE_W)
    await reject()
    const problem = expectProblem(await reject(), 409, 'proposal-not-open')
    expect(problem['openAgainAt']).toBe(16)
    expect((await accept()).status).toBe(200)
  })

  test('leaves an audit event', async () => {
    await client.homes(CLOSE_W)
    await reject()
    const events = await client.app.deps.auditStore.list(
      { action: 'proposal.reject' },
      { limit: 9, keep: 'first' },
    )
    expect(events).toMatchObject([
      {
        organisation: 'operator',
        subjectId: 'amplifier',
        after: { n: 8, typicalW: 1.45, reason: 'Too few' },
      },
    ])
  })
})
