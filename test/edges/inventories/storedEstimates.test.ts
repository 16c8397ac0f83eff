import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { exampleContent, followUp } from '../../../src/edges/rest/inventories/requestExamples.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../helpers/keys.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { settingsNow } from '../../../src/useCases/settingsAt.ts'

let app: TestApp
let now = new Date('2026-01-31T12:00:00Z')
let own: { authorization: string }
beforeAll(async () => {
  app = await testApp({ clock: () => now })
  own = bearer((await issueTestKey(app, { scopes: ['intake'], organisation: 'own' })).key)
})
afterAll(() => app.close())

let made = 0
const create = async (fields: object = {}): Promise<string> => {
  const sent = { ...exampleContent, reference: `H-${++made}`, ...fields }
  return (await app.send.post('/v1/inventories').set(own).send(sent).expect(201)).body.id
}
const store = (id: string, wanted: object = {}, headers: object = {}) => {
  now = new Date(now.getTime() + 1000)
  return app.send
    .post(`/v1/inventories/${id}/estimates`)
    .set({ ...own, ...headers })
    .send(wanted)
}
const read = async (address: string) => (await app.send.get(address).set(own).expect(200)).body
const standings = async (id: string) =>
  (await read(`/v1/inventories/${id}/estimates`)).items.map(({ standing }: { standing: object }) => standing)

/** Edits the typical draw of televisions, as an editor of the catalogue does. */
async function editTelevision(factor: number) {
  const { body, headers } = await app.send.get('/v1/categories/television').expect(200)
  const modes = body.modes.map((mode: { draws: { lowW: number; typicalW: number; highW: number }[] }) => ({
    ...mode,
    draws: mode.draws.map((draw) => ({
      ...draw,
      lowW: draw.lowW * factor,
      typicalW: draw.typicalW * factor,
      highW: draw.highW * factor,
    })),
  }))
  await app.send
    .patch('/v1/categories/television?reason=a%20test')
    .set({ ...asAdmin, 'if-match': headers['etag'], 'content-type': 'application/merge-patch+json' })
    .send(JSON.stringify({ modes }))
    .expect(200)
}

describe('a stored estimate', () => {
  test('has the figures that POST /v1/estimates gives for the household as it was on the visit', async () => {
    const id = await create({ visits: [followUp, exampleContent.visits[0]] })
    const ofLast = (await store(id).expect(201)).body
    expect(ofLast.visit).toBe('2026-04-20')
    const { annualUseKwh } = exampleContent
    const direct = async (visit: { devices: object[]; meters?: object[] }) =>
      (
        await app.send
          .post('/v1/estimates')
          .send({ annualUseKwh, ...(visit.meters && { meters: visit.meters }), devices: visit.devices })
          .expect(200)
      ).body
    expect(ofLast.estimate).toEqual(await direct(followUp))
    const ofFirst = (await store(id, { visit: '2026-01-15' }).expect(201)).body
    expect(ofFirst.estimate).toEqual(await direct(exampleContent.visits[0]!))
    expect(ofFirst.estimate).not.toEqual(ofLast.estimate)
    expect(await read(`/v1/inventories/${id}/estimates/${ofFirst.id}`)).toEqual(ofFirst)
  })

  test('is refused for a visit that there is not, and before there is one, saying what there is', async () => {
    const id = await create()
    const answer = await store(id, { visit: '2026-02-01', coverageProbability: 0.9 })
    expectProblem(answer, 422, 'faulty-input')
    expect(answer.body.errors).toMatchObject([{ pointer: '/visit', code: 'unknown-visit' }])
    expect(answer.body.detail).toContain('2026-01-15')
    const none = await store(await create({ visits: [] }))
    expect(none.body.detail).toContain('add one first')
    expectProblem(
      await app.send.get(`/v1/inventories/${id}/estimates/${'a'.repeat(16)}`).set(own),
      404,
      'unknown-estimate',
    )
  })

  test('is made once with an Idempotency-Key', async () => {
    const id = await create()
    const first = await store(id, {}, { 'idempotency-key': 'estimate-1' }).expect(201)
    const again = await store(id, {}, { 'idempotency-key': 'estimate-1' }).expect(201)
    expect(again.body).toEqual(first.body)
    expect(again.headers['location']).toBe(first.headers['location'])
    expect((await read(`/v1/inventories/${id}/estimates`)).items).toHaveLength(1)
  })

  test('is made again to the last byte after the catalogue has been edited', async () => {
    const id = await create({ visits: [exampleContent.visits[0], followUp] })
    const stored = (await store(id, { visit: '2026-01-15', coverageProbability: 0.8 }).expect(201)).body
    await editTelevision(1.5)
    const remade = await app.send
      .get(`/v1/inventories/${id}/estimates/${stored.id}/recomputation`)
      .set(own)
      .expect(200)
    expect(remade.body.same).toBe(true)
    expect(JSON.stringify(remade.body.estimate)).toBe(JSON.stringify(stored.estimate))
    // The edit would have changed it, or this would show nothing.
    const today = await app.send.post('/v1/estimates').send({ devices: stored.household.devices }).expect(200)
    expect(today.body.total.energyKwhPerYear).not.toEqual(stored.estimate.total.energyKwhPerYear)
    await editTelevision(1 / 1.5)
  })

  test('is made again to the last byte after tariffs, factors and settings have moved on', async () => {
    const id = await create()
    const stored = (await store(id).expect(201)).body
    const settings = settingsNow(app.deps)
    const moved = await testApp({
      settings: {
        ...settings,
        weeksPerYear: 52,
        supply: { volts: 120, tolerancePercent: 5, hertz: 60 },
        tariffs: new Map(
          [...settings.tariffs].map(([code, named]) => [
            code,
            { ...named, tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.9 } },
          ]),
        ),
      },
      inventoryStore: app.deps.inventoryStore,
      keyStore: app.deps.keyStore,
      catalogueStore: app.deps.catalogueStore,
      categories: [],
    })
    const at = `/v1/inventories/${id}/estimates/${stored.id}`
    const remade = await moved.send.get(`${at}/recomputation`).set(own).expect(200)
    expect(remade.body.same).toBe(true)
    expect(JSON.stringify(remade.body.estimate)).toBe(JSON.stringify(stored.estimate))
    const { standing } = (await moved.send.get(at).set(own).expect(200)).body
    expect(standing.because).toEqual(['tariff', 'settings'])
    await moved.close()
  })
})

describe('the list of stored estimates', () => {
  test('tells that an edit of the tariff changes them, and they are still made again from their own', async () => {
    const id = await create()
    const stored = (await store(id).expect(201)).body
    const path = '/v1/tariffs/sample-flat-eur'
    const priced = async (pricePerKwh: number) => {
      const { headers } = await app.send.get(path)
      await app.send
        .patch(path)
        .query({ reason: 'a test' })
        .set({ ...asAdmin, 'content-type': 'application/merge-patch+json', 'if-match': headers['etag']! })
        .send(JSON.stringify({ tariff: { pricePerKwh } }))
        .expect(200)
    }
    await priced(0.6)
    const [standing] = await standings(id)
    expect([stored.estimate.referenceRevision, standing.because]).toEqual([1, ['tariff']])
    const remade = await app.send.get(`/v1/inventories/${id}/estimates/${stored.id}/recomputation`).set(own)
    expect(remade.body.same).toBe(true)
    const past = (await store(id, { referenceRevision: 1 }).expect(201)).body.estimate
    expect([past.referenceRevision, past.total]).toEqual([1, stored.estimate.total])
    await priced(0.3)
  })

  test('tells which are out of date, why, and by how much they would change', async () => {
    const id = await create()
    const before = (await store(id).expect(201)).body.estimate.total
    expect(await standings(id)).toEqual([{ outOfDate: false, because: [], change: null }])
    await editTelevision(2)
    const after = (await store(id).expect(201)).body.estimate.total
    const [newer, older] = await standings(id)
    expect(newer).toEqual({ outOfDate: false, because: [], change: null })
    expect(older).toMatchObject({ outOfDate: true, because: ['catalogue'] })
    expect(older.change.energyKwhPerYear).toBeCloseTo(
      after.energyKwhPerYear.expected - before.energyKwhPerYear.expected,
      2,
    )
    // Twice the draw is twice the energy.
    expect(older.change.energyKwhPerYear).toBeCloseTo(before.energyKwhPerYear.expected, 1)
    await editTelevision(0.5)
  })

  test('does not call an estimate out of date for an edit that does not concern it', async () => {
    const id = await create({ visits: [followUp] })
    await store(id).expect(201)
    // The follow-up's television was read, so its typical draw is not used.
    await editTelevision(1.5)
    expect(await standings(id)).toEqual([{ outOfDate: false, because: [], change: null }])
    await editTelevision(1 / 1.5)
  })

  test('tells a change of the household or of the visit, and a visit that is gone', async () => {
    const id = await create()
    await store(id).expect(201)
    const change = async (changes: object) => {
      const { headers } = await app.send.get(`/v1/inventories/${id}`).set(own)
      await app.send
        .patch(`/v1/inventories/${id}`)
        .set({ ...own, 'if-match': headers['etag'], 'content-type': 'application/merge-patch+json' })
        .send(JSON.stringify(changes))
        .expect(200)
    }
    const devices = [{ id: 'tv', category: 'television', year: 2018, quantity: 3 }]
    await change({ visits: [{ date: '2026-01-15', devices }] })
    expect(await standings(id)).toMatchObject([{ outOfDate: true, because: ['inventory'] }])
    await change({ visits: [followUp] })
    expect(await standings(id)).toEqual([{ outOfDate: true, because: ['visit-gone'], change: null }])
  })

  test('comes newest first, in pages bound to their inventory', async () => {
    const id = await create()
    for (let i = 0; i < 3; i++) await store(id).expect(201)
    const all = (await read(`/v1/inventories/${id}/estimates`)).items
    expect(all.map(({ madeAt }: { madeAt: string }) => madeAt)).toEqual(
      all
        .map(({ madeAt }: { madeAt: string }) => madeAt)
        .toSorted()
        .reverse(),
    )
    const first = await app.send.get(`/v1/inventories/${id}/estimates?limit=2`).set(own).expect(200)
    expect(first.body.items).toEqual(all.slice(0, 2))
    expect(first.headers['link']).toContain(`cursor=${first.body.nextCursor}`)
    const rest = await read(`/v1/inventories/${id}/estimates?limit=2&cursor=${first.body.nextCursor}`)
    expect(rest).toEqual({ items: all.slice(2), nextCursor: null })
    const elsewhere = await app.send
      .get(`/v1/inventories/${await create()}/estimates?cursor=${first.body.nextCursor}`)
      .set(own)
    expectProblem(elsewhere, 400, 'faulty-cursor')
  })
})
