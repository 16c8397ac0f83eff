import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { expectProblem } from '../../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../../helpers/keys.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import {
  callerOf,
  change,
  editorOf,
  type Headers,
  lay,
  own,
  ownTelevision,
  remove,
  tagOf,
} from './ownFigures.ts'

let service: TestApp
let [editor, us, them]: Headers[] = []
const NOBODY: Headers = {}
beforeAll(async () => {
  service = await testApp()
  editor = await editorOf(service, 'our-utility')
  us = await callerOf(service, 'our-utility')
  them = await callerOf(service, 'their-utility')
  await lay(service, editor, 'television')
  await lay(service, editor, 'our-boiler', { body: own('our-boiler') })
})
afterAll(() => service.close())

const post = async (address: string, body: object, headers: Headers) =>
  (await service.send.post(address).set(headers).send(body).expect(200)).body
const get = (address: string, headers: Headers) => service.send.get(address).set(headers)
const TELEVISION = { devices: [{ category: 'television' }] }
const reading = { kind: 'current', amperes: 0.1 }

/** Every question that is answered with the catalogue, and where the answer says whose figures went in. */
const QUESTIONS = [
  ['/v1/estimates', TELEVISION, 'devices'],
  ['/v1/readings/evaluate', { reading, category: 'television', mode: 'standby' }, null],
  [
    '/v1/tariff-comparisons',
    { ...TELEVISION, tariffs: ['sample-flat-eur', { kind: 'flat', currency: 'EUR', pricePerKwh: 0.2 }] },
    undefined,
  ],
  [
    '/v1/limits/check',
    { mode: 'standby', reading, category: 'television', jurisdiction: 'EU', placedOnMarket: '2020-01-01' },
    undefined,
  ],
  [
    '/v1/population-estimates',
    {
      method: 'stock',
      items: [{ category: 'television', ownership: 0.9 }],
      ladder: [{ name: 'town', homes: 1000 }],
    },
    'items',
  ],
] as const

describe.each(QUESTIONS)('%s', (address, question, where) => {
  const layerIn = (answer: Record<string, unknown>) =>
    where === undefined
      ? undefined
      : where === null
        ? answer['catalogueLayer']
        : (answer[where] as { catalogueLayer: string }[])[0]!.catalogueLayer

  test('answers the callers of an organisation with its own figures, and says so; all others with the shared ones', async () => {
    const ours = await post(address, question, us!)
    const shared = await post(address, question, NOBODY)
    const { overlayRevision } = (await get('/v1/overlay', editor!).expect(200)).body
    expect([ours.catalogueRevision, ours.overlayRevision, layerIn(ours)]).toEqual([
      1,
      overlayRevision,
      where === undefined ? undefined : 'organisation',
    ])
    expect([shared.overlayRevision, layerIn(shared)]).toEqual([0, where === undefined ? undefined : 'shared'])
    expect(await post(address, question, them!)).toEqual(shared)
    expect(await post(address, question, asAdmin)).toEqual(shared)
    expect(await post(address, { ...question, overlayRevision: 0 }, us!)).toEqual(shared)
  })

  test('answers the same for ever to a request that names both revisions', async () => {
    const named = { ...question, catalogueRevision: 1, overlayRevision: 2 }
    const before = await post(address, named, us!)
    const headers = { 'if-match': await tagOf(service, editor!, 'television') }
    const edit = await change(service, editor!, 'television', {
      body: {
        name: `Television, renamed for ${address}`,
        powerFactor: { low: 0.1, typical: 0.2, high: 0.3 },
      },
      headers,
    })
    expect(edit.status).toBeLessThan(300)
    expect(await post(address, named, us!)).toEqual(before)
    // Back as it was, for the next.
    const again = { 'if-match': await tagOf(service, editor!, 'television') }
    const { name, powerFactor } = ownTelevision
    await change(service, editor!, 'television', { body: { name, powerFactor }, headers: again })
  })

  test('knows no overlay revision that the caller’s own organisation has not', async () => {
    const problemFor = async (headers: Headers, overlayRevision: number) =>
      expectProblem(
        await service.send
          .post(address)
          .set(headers)
          .send({ ...question, overlayRevision }),
        404,
        'unknown-overlay-revision',
      )
    await problemFor(us!, 999)
    // Neither what it says nor that it says it tells whether somebody else has a revision 1.
    const [foreign, none] = [await problemFor(them!, 1), await problemFor(NOBODY, 1)]
    expect([foreign['detail'], foreign['newest']]).toEqual([none['detail'], none['newest']])
  })
})

describe('an estimate', () => {
  test('is worked out with the own figures: twice the typical draw gives more energy, and no sample data', async () => {
    const flat = { tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 }, ...TELEVISION }
    const [ours, shared] = [await post('/v1/estimates', flat, us!), await post('/v1/estimates', flat, NOBODY)]
    expect(ours.total.energyKwhPerYear.expected).toBeGreaterThan(1.5 * shared.total.energyKwhPerYear.expected)
    expect([ours.sampleData, shared.sampleData]).toEqual([false, true])
    expect(ours.devices[0].modes[0].origin).toMatchObject({
      detail: 'programme',
      explanation: expect.stringContaining('of the organisation’s own, not a measurement'),
    })
    expect(ours.warnings).toEqual([])
  })

  test('with own and shared categories says of each device whose figures they are', async () => {
    const devices = [{ category: 'telly' }, { category: 'router' }, { category: 'our-boiler' }]
    const { devices: answered } = await post('/v1/estimates', { devices }, us!)
    expect(answered.map(({ catalogueLayer }: { catalogueLayer: string }) => catalogueLayer)).toEqual([
      'organisation',
      'shared',
      'organisation',
    ])
    expect(
      expectProblem(await service.send.post('/v1/estimates').send({ devices }), 422, 'faulty-input'),
    ).toMatchObject({ errors: [{ pointer: '/devices/2/category', code: 'unknown-category' }] })
  })

  test('of a website that shows an organisation’s publishable key has that organisation’s figures', async () => {
    const origins = ['https://www.example.org']
    const { key } = await issueTestKey(service, {
      kind: 'publishable',
      organisation: 'our-utility',
      scopes: ['estimate'],
      origins,
    })
    const answer = await post('/v1/estimates', TELEVISION, { ...bearer(key), origin: origins[0]! })
    expect(answer.devices[0].catalogueLayer).toBe('organisation')
  })

  test('asks the database nothing', async () => {
    const { overlayStore, catalogueStore } = service.deps
    const fail = async (): Promise<never> => {
      throw new Error('An estimate waited for the database.')
    }
    const [states, overlays] = [{ ...catalogueStore }, { ...overlayStore }]
    try {
      for (const store of [catalogueStore, overlayStore])
        for (const name of Object.keys(store)) Object.assign(store, { [name]: fail })
      expect((await post('/v1/estimates', TELEVISION, us!)).devices[0].catalogueLayer).toBe('organisation')
      expect((await post('/v1/estimates', TELEVISION, them!)).overlayRevision).toBe(0)
    } finally {
      Object.assign(catalogueStore, states)
      Object.assign(overlayStore, overlays)
    }
  })
})

describe('the base load', () => {
  test('is explained by an inventory with the own figures', async () => {
    const start = Date.UTC(2026, 0, 5)
    const readings = Array.from({ length: 24 * 14 }, (_, hour) => ({
      start: new Date(start + hour * 3_600_000).toISOString(),
      watts: 80 + (hour % 24) * 10,
    }))
    const question = {
      timeZone: 'UTC',
      blocks: [
        { start: readings[0]!.start, intervalSeconds: 3600, watts: readings.map(({ watts }) => watts) },
      ],
      inventory: TELEVISION,
    }
    const [ours, shared] = [
      await post('/v1/base-load/evaluate', question, us!),
      await post('/v1/base-load/evaluate', question, NOBODY),
    ]
    expect([ours.overlayRevision > 0, shared.overlayRevision]).toEqual([true, 0])
    expect(ours.inventory.powerW.expected).toBeGreaterThan(1.5 * shared.inventory.powerW.expected)
  })
})

describe('the list of categories', () => {
  test('shows own categories in place of the shared ones and beside them, and says of each whose it is', async () => {
    const ours = (await get('/v1/categories?limit=200', us!).expect(200)).body
    const shared = (await get('/v1/categories?limit=200', NOBODY).expect(200)).body
    const layers = Object.fromEntries(
      ours.items.map(({ code, layer }: { code: string; layer: string }) => [code, layer]),
    )
    expect(layers).toMatchObject({
      'our-boiler': 'organisation',
      television: 'organisation',
      router: 'shared',
    })
    expect(ours.items).toHaveLength(Number(shared.items.length) + 1)
    expect(JSON.stringify(shared)).not.toMatch(/organisation|boiler/)
    expect((await get('/v1/categories?limit=200', them!)).body).toEqual(shared)
    expect((await get('/v1/categories?limit=200&overlayRevision=0', us!)).body).toEqual(shared)
  })

  test('varies with the key: other tags, and only its caller may keep it', async () => {
    const [ours, theirs, nobodys] = await Promise.all(
      [us!, them!, NOBODY].map((headers) => get('/v1/categories', headers)),
    )
    for (const { headers } of [ours!, theirs!, nobodys!])
      expect(headers['vary']).toBe('accept, authorization')
    expect(ours!.headers['etag']).not.toBe(nobodys!.headers['etag'])
    expect(theirs!.headers['etag']).toBe(nobodys!.headers['etag'])
    expect(ours!.headers).toMatchObject({ 'cache-control': 'private, no-cache' })
    const kept = { 'if-none-match': ours!.headers['etag']! }
    await get('/v1/categories', { ...us!, ...kept }).expect(304)
    await get('/v1/categories', { ...them!, ...kept }).expect(200)
    await get('/v1/categories', kept).expect(200)
  })

  test('as CSV has the own figures and a tag of their own; the export has none of them', async () => {
    const csv = (address: string, headers: Headers) =>
      get(address, { ...headers, accept: 'text/csv' }).expect(200)
    const [ours, shared] = [await csv('/v1/categories', us!), await csv('/v1/categories', NOBODY)]
    expect(ours.text).toContain('our-boiler')
    expect(shared.text).not.toContain('our-boiler')
    expect(ours.headers['etag']).not.toBe(shared.headers['etag'])
    expect((await csv('/v1/catalogue/export', us!)).text).toBe(
      (await csv('/v1/catalogue/export', NOBODY)).text,
    )
  })

  test('walks on with the revisions of its first page, and a cursor is good for its own caller alone', async () => {
    const first = (await get('/v1/categories?limit=1', us!).expect(200)).body
    await change(service, editor!, 'amplifier', { body: { name: 'Our amplifier' } })
    const pages = [first]
    while (pages.at(-1).nextCursor !== null)
      pages.push(
        (await get(`/v1/categories?limit=1&cursor=${pages.at(-1).nextCursor}`, us!).expect(200)).body,
      )
    expect(new Set(pages.map(({ overlayRevision }) => overlayRevision)).size).toBe(1)
    expect(pages.flatMap(({ items }) => items.map(({ code }: { code: string }) => code))).toContain(
      'our-boiler',
    )
    for (const headers of [them!, NOBODY])
      expectProblem(await get(`/v1/categories?cursor=${first.nextCursor}`, headers), 400, 'faulty-cursor')
    await remove(service, editor!, 'amplifier', { 'if-match': await tagOf(service, editor!, 'amplifier') })
  })
})

describe('one category', () => {
  test('is the own one to its callers and the shared one to all others, each with a tag of its own', async () => {
    const [ours, theirs] = [await get('/v1/categories/tv', us!), await get('/v1/categories/tv', them!)]
    expect([ours.body.layer, ours.body.sampleData, theirs.body.layer]).toEqual([
      'organisation',
      false,
      'shared',
    ])
    expect(ours.headers['etag']).not.toBe(theirs.headers['etag'])
    expect(ours.headers['vary']).toBe('accept, authorization')
    await get('/v1/categories/tv', { ...them!, 'if-none-match': ours.headers['etag']! }).expect(200)
    const past = await get('/v1/categories/tv?overlayRevision=0', us!)
    expect(past.body).toEqual(theirs.body)
    expectProblem(await get('/v1/categories/tv?overlayRevision=', us!), 400, 'faulty-query')
  })

  test('that the shared catalogue says must stay powered later on, must so for its own callers too', async () => {
    const { headers } = await get('/v1/categories/set-top-box', NOBODY)
    await change(service, editor!, 'set-top-box', { body: { defaultQuantity: 2 } })
    const keepPowered = { reason: 'scheduled-recording', note: 'It records at night.' }
    await service.send
      .patch('/v1/categories/set-top-box?reason=a+test')
      .set({ ...asAdmin, 'content-type': 'application/merge-patch+json', 'if-match': headers['etag']! })
      .send(JSON.stringify({ keepPowered }))
      .expect(200)
    expect((await get('/v1/categories/set-top-box', us!)).body).toMatchObject({
      layer: 'organisation',
      defaultQuantity: 2,
      keepPowered,
    })
  })
})

test('a household that is kept can name own categories, and its estimate is made again with the revisions of its time', async () => {
  const { key } = await issueTestKey(service, { scopes: ['intake'], organisation: 'our-utility' })
  const intake = bearer(key)
  const visits = [{ date: '2026-01-15', devices: [{ category: 'our-boiler' }, { category: 'router' }] }]
  const kept = await service.send.post('/v1/inventories').set(intake).send({ reference: 'home-1', visits })
  expect([kept.status, kept.body.errors]).toEqual([201, undefined])
  const address = `/v1/inventories/${kept.body.id}/estimates`
  const stored = await service.send.post(address).set(intake).send({})
  expect([stored.status, stored.body.estimate.devices[0].catalogueLayer]).toEqual([201, 'organisation'])
  const changed = await change(service, editor!, 'our-boiler', {
    body: { name: 'Our boiler, renamed' },
    headers: { 'if-match': await tagOf(service, editor!, 'our-boiler') },
  })
  expect(changed.status).toBe(200)
  const again = (await get(`${address}/${stored.body.id}/recomputation`, intake).expect(200)).body
  expect(again.same).toBe(true)
  expect((await get(`${address}/${stored.body.id}`, intake)).body.standing.because).toEqual(['catalogue'])
})
