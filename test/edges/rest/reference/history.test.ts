import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { REFERENCE_REQUESTS } from '../../../../src/edges/rest/reference/examples.ts'
import { expectProblem, faultsOf } from '../../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { memoryReferenceStore } from '../../../stores/memoryReferenceStore.ts'
import { editorOf, pagesOf } from '../catalogue/editor.ts'

let service: TestApp
beforeEach(async () => (service = await testApp()))
afterEach(() => service.close())
const editor = editorOf(() => service)
const TARIFF = '/v1/tariffs/sample-flat-eur'
const FACTOR = '/v1/emission-factors/world-2023'
const tagOf = async (path: string) => (await service.send.get(path).expect(200)).headers['etag']!
const patch = async (path: string, body: object) => {
  const answer = await editor.patch(path, { body, headers: { 'if-match': await tagOf(path) } })
  expect(answer.status).toBe(200)
}
const retire = async (path: string) => editor.retire(path, { headers: { 'if-match': await tagOf(path) } })

/** A household whose energy is known exactly, so that its cost and emissions tell price and factor. */
const household = {
  weeksPerYear: 50,
  devices: [
    {
      category: 'router',
      modes: [{ mode: 'networked-standby', hoursPerWeek: 100, reading: { kind: 'power', watts: 20 } }],
    },
  ],
}
const estimate = async (more: object = {}) =>
  service.send.post('/v1/estimates').send({ ...household, ...more })
const figures = ({ body }: { body: Awaited<ReturnType<typeof estimate>>['body'] }) => [
  body.referenceRevision,
  body.total.costPerYear.expected,
  body.total.emissionsKgCo2ePerYear.expected,
]
const warningsOf = ({ body }: { body: { warnings: { code: string }[] } }) =>
  body.warnings.map(({ code }) => code)

describe('an estimate', () => {
  test('names the revision of tariffs and factors that it used, and is made again from it to the byte', async () => {
    const first = await estimate()
    expect(figures(first)).toEqual([1, 30, 50])
    await patch(TARIFF, { tariff: { pricePerKwh: 0.4 } })
    await patch(FACTOR, { factor: { kgCo2ePerKwh: 0.25 } })
    expect(figures(await estimate())).toEqual([3, 40, 25])
    expect(figures(await estimate({ referenceRevision: 2 }))).toEqual([2, 40, 50])
    expect((await estimate({ referenceRevision: 1 })).text).toBe(first.text)
  })

  test('with a tariff or a factor that was retired is still made, and says so', async () => {
    const before = await estimate({ tariffCode: 'sample-flat-eur', emissionFactorCode: 'world-2023' })
    await retire(TARIFF)
    await retire(FACTOR)
    const after = await estimate({ tariffCode: 'sample-flat-eur', emissionFactorCode: 'world-2023' })
    expect(figures(after)).toEqual([3, ...figures(before).slice(1)])
    expect(warningsOf(after)).toEqual(expect.arrayContaining(['tariff-retired', 'emission-factor-retired']))
    const again = {
      tariffCode: 'sample-flat-eur',
      emissionFactorCode: 'world-2023',
      referenceRevision: 1,
    }
    expect((await estimate(again)).text).toBe(before.text)
    expect(warningsOf(await estimate({ referenceRevision: 1 }))).not.toContain('tariff-retired')
  })

  test('by region and year takes no factor that was retired', async () => {
    await retire(FACTOR)
    const answer = await estimate({ emissionFactorFor: { region: 'world' } })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
      '/emissionFactorFor/region unknown-region',
    ])
  })

  test('at a revision that there is none of is refused, naming the newest', async () => {
    const problem = expectProblem(await estimate({ referenceRevision: 7 }), 404, 'unknown-reference-revision')
    expect(problem['newest']).toBe(1)
  })

  test('at a revision before a code was there says so, also of the operator’s own default', async () => {
    const { tariff, name, source } = (await service.send.get(TARIFF)).body
    await editor.post('/v1/tariffs', { body: { code: 'later', tariff, name, source } })
    const early = await estimate({ referenceRevision: 1, tariffCode: 'later' })
    expect(faultsOf(expectProblem(early, 422, 'faulty-input'))).toEqual(['/tariffCode unknown-code'])
    const { settings } = service.deps
    Object.assign(settings, { defaultTariffCode: 'later' })
    const fallback = expectProblem(await estimate({ referenceRevision: 1 }), 422, 'faulty-input')
    expect(faultsOf(fallback)).toEqual(['/tariffCode required'])
    expect((await estimate()).status).toBe(200)
  })

  test('asks no store for the newest revision, and for a past one once', async () => {
    const asked: string[] = []
    const store = memoryReferenceStore()
    const other = await testApp({
      referenceStore: {
        ...store,
        latestRevision: () => {
          asked.push('latest')
          return store.latestRevision()
        },
        dataAt: (revision) => {
          asked.push(`at ${revision}`)
          return store.dataAt(revision)
        },
      },
    })
    await editorOf(() => other).patch(TARIFF, {
      body: { name: 'Renamed' },
      headers: { 'if-match': (await other.send.get(TARIFF)).headers['etag']! },
    })
    asked.length = 0
    for (const referenceRevision of [undefined, 2, 1, 1])
      await other.send
        .post('/v1/estimates')
        .send({ ...household, referenceRevision })
        .expect(200)
    expect(asked).toEqual(['at 1'])
    await other.close()
  })

  test('says where the tariff does not hold on the day that is named', async () => {
    await patch(TARIFF, { tariff: { validFrom: '2026-01-01', validTo: '2026-06-30' } })
    const on = async (tariffDate: string) => warningsOf(await estimate({ tariffDate }))
    for (const day of ['2026-01-01', '2026-06-30']) expect(await on(day)).not.toContain('tariff-not-in-force')
    for (const day of ['2025-12-31', '2026-07-01']) expect(await on(day)).toContain('tariff-not-in-force')
    const { body } = await estimate({ tariffDate: '2027-01-01' })
    const warning = body.warnings.find(({ code }: { code: string }) => code === 'tariff-not-in-force')
    expect(warning.message).toContain('from 2026-01-01 up to 2026-06-30, and so not on 2027-01-01')
  })
})

test('a comparison of tariffs and a stock of devices follow a revision in the same way', async () => {
  await patch(TARIFF, { tariff: { pricePerKwh: 0.6 } })
  const own = { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 }
  const compare = async (more: object) =>
    (
      await service.send
        .post('/v1/tariff-comparisons')
        .send({ ...household, tariffs: ['sample-flat-eur', own], ...more })
    ).body
  const costOf = ({ tariffs }: { tariffs: { costPerYear: { expected: number } }[] }) =>
    tariffs.map(({ costPerYear }) => costPerYear.expected)
  expect([costOf(await compare({})), costOf(await compare({ referenceRevision: 1 }))]).toEqual([
    [60, 30],
    [30, 30],
  ])
  const stock = {
    method: 'stock',
    items: [{ category: 'router', ownership: 1 }],
    ladder: [{ name: 'home', homes: 1 }],
  }
  const used = async (more: object) => {
    const { body } = await service.send.post('/v1/population-estimates').send({ ...stock, ...more })
    return [body.referenceRevision, body.used.price.pricePerKwh]
  }
  expect([await used({}), await used({ referenceRevision: 1 })]).toEqual([
    [2, 0.6],
    [1, 0.3],
  ])
})

describe('the history', () => {
  test('lists revisions newest first, each once, page by page', async () => {
    for (const pricePerKwh of [0.31, 0.32, 0.33, 0.34]) await patch(TARIFF, { tariff: { pricePerKwh } })
    const pages = await pagesOf(service, '/v1/reference-revisions?limit=2')
    expect(pages.flatMap(({ items }) => items.map(({ number }: { number: number }) => number))).toEqual([
      5, 4, 3, 2, 1,
    ])
    expect(pages.map(({ referenceRevision }) => referenceRevision)).toEqual([5, 5, 5])
    const catalogues = await service.send.get('/v1/catalogue/revisions?limit=1')
    expect(catalogues.body.nextCursor).toBeNull()
  })

  test('tells of the first revision what was loaded, and by whom', async () => {
    const { body } = await service.send.get('/v1/reference-revisions/1').expect(200)
    expect(body).toMatchObject({ action: 'seed', author: { organisation: 'system', keyId: null } })
    expect(body.changes.map(({ of, code, kind }: Record<string, string>) => [of, code, kind])).toEqual([
      ['tariff', 'sample-flat-eur', 'added'],
      ['emission-factor', 'world-2023', 'added'],
    ])
  })

  test('reads one tariff or factor as it was at any revision, with the tag of that state', async () => {
    const [first, tag] = [(await service.send.get(TARIFF)).body, await tagOf(TARIFF)]
    await patch(TARIFF, { name: 'Renamed' })
    await patch(FACTOR, { region: 'Renamed' })
    const past = await service.send.get(`${TARIFF}?referenceRevision=1`)
    expect([past.body, past.headers['etag'], past.headers['reference-revision']]).toEqual([first, tag, '1'])
    expect((await service.send.get(`${TARIFF}?referenceRevision=2`)).body.name).toBe('Renamed')
    expect((await service.send.get(`${FACTOR}?referenceRevision=2`)).body.region).toBe('Nowhere')
    expectProblem(await service.send.get(`${TARIFF}?referenceRevision=9`), 404, 'unknown-reference-revision')
    expectProblem(await service.send.get('/v1/reference-revisions/9'), 404, 'unknown-reference-revision')
  })
})

test('the examples of the API description are taken by the service, one after the other', async () => {
  const examples = REFERENCE_REQUESTS
  for (const [path, create, replace, change] of [
    ['/v1/tariffs', examples.createTariff.blocks, examples.replaceTariff.dearer, examples.patchTariff.end],
    [
      '/v1/emission-factors',
      examples.createEmissionFactor.national,
      examples.replaceEmissionFactor.loss,
      examples.patchEmissionFactor.mark,
    ],
  ] as const) {
    const made = await editor.post(path, { body: create.value })
    expect(made.status).toBe(201)
    const there = `${path}/${create.value.code}`
    const replaced = await editor.put(there, {
      body: replace.value,
      headers: { 'if-match': made.headers['etag']! },
    })
    expect(replaced.status).toBe(200)
    const patched = await editor.patch(there, {
      body: change.value,
      headers: { 'if-match': replaced.headers['etag']! },
    })
    expect([patched.status, patched.headers['etag'] === replaced.headers['etag']]).toEqual([200, false])
  }
})
