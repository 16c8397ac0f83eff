import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openMetrics } from '../../../src/edges/rest/metrics.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../helpers/keys.ts'
import { ADMIN_KEY, type TestApp, testApp } from '../../helpers/testApp.ts'

const sources = { catalogueRevision: () => 7, referenceRevision: () => 3 }
const sessions = { busy: 2, idle: 1, waiting: 4 }

async function meteredApp(isOpen: boolean): Promise<TestApp> {
  const counted = openMetrics({ ...sources, databaseSessions: () => sessions })
  return testApp({ metrics: { counted, isOpen }, onEstimate: counted.countEstimate })
}
const read = async ({ send }: TestApp) => (await send.get('/metrics').set(asAdmin).expect(200)).text

/** Figures by their names with labels, as the text format has them: the labels in the order of their names. */
function figuresOf(text: string): ReadonlyMap<string, number> {
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'))
  return new Map(
    lines.map((line) => {
      const end = line.lastIndexOf(' ')
      return [line.slice(0, end), Number(line.slice(end))]
    }),
  )
}
const count = (labels: string) => `standby_http_request_duration_seconds_count{${labels}}`

describe('/metrics', () => {
  let app: TestApp
  beforeAll(async () => (app = await meteredApp(true)))
  afterAll(() => app.close())

  test('is text in the format of Prometheus, and is not kept', async () => {
    const { headers } = await app.send.get('/metrics').expect(200)
    expect(headers['content-type']).toBe('text/plain; version=0.0.4; charset=utf-8')
    expect(headers['cache-control']).toBe('no-store')
  })

  test('counts requests by method, pattern of the route and status', async () => {
    for (const code of ['television', 'television', 'nothing']) await app.send.get(`/v1/categories/${code}`)
    await app.send.post('/graphql').send({ query: '{ __typename }' }).expect(200)
    const figures = figuresOf(await read(app))
    expect(figures.get(count('method="GET",route="/v1/categories/:code",status="200"'))).toBe(2)
    expect(figures.get(count('method="GET",route="/v1/categories/:code",status="404"'))).toBe(1)
    expect(figures.get(count('method="POST",route="/graphql",status="200"'))).toBe(1)
  })

  test('says how long answers took, as numbers of answers within so many seconds', async () => {
    await app.send.get('/v1/limits').expect(200)
    const figures = figuresOf(await read(app))
    const labels = 'method="GET",route="/v1/limits",status="200"'
    expect(figures.get(`standby_http_request_duration_seconds_bucket{le="+Inf",${labels}}`)).toBe(1)
    expect(figures.get(`standby_http_request_duration_seconds_sum{${labels}}`)).toBeGreaterThan(0)
  })

  test('counts estimates by the flag of their total, however they were asked for', async () => {
    const before = figuresOf(await read(app))
    const measured = {
      category: 'television',
      modes: [{ mode: 'standby', hoursPerWeek: 100, reading: { kind: 'power', watts: 1 } }],
    }
    await app.send
      .post('/v1/estimates')
      .send({ devices: [measured] })
      .expect(200)
    await app.send
      .post('/v1/estimates')
      .send({ devices: [{ category: 'television' }] })
      .expect(200)
    await app.send.post('/v1/estimates').send({ devices: [] }).expect(422)
    const query =
      'query { estimate(input: { devices: [{ category: "television" }] }) { total { confidence } } }'
    await app.send.post('/graphql').send({ query }).expect(200)
    await app.send
      .post('/v1/intake-batches')
      .set({ ...asAdmin, 'content-type': 'application/x-ndjson' })
      .send('{"devices":[{"category":"television"}]}\n{"devices":[{"category":"television"}]}\n')
      .expect(200)
    const after = figuresOf(await read(app))
    const more = (flag: string) => {
      const name = `standby_estimates_total{confidence="${flag}"}`
      return after.get(name)! - (before.get(name) ?? 0)
    }
    expect([more('measured'), more('assumed')]).toEqual([1, 4])
  })

  test('says which revisions are used, how the database sessions are, and how the process is', async () => {
    const figures = figuresOf(await read(app))
    expect(figures.get('standby_catalogue_revision')).toBe(7)
    expect(figures.get('standby_reference_revision')).toBe(3)
    expect(figures.get('standby_database_sessions_busy')).toBe(2)
    expect(figures.get('standby_database_sessions_idle')).toBe(1)
    expect(figures.get('standby_database_sessions_waiting')).toBe(4)
    expect(figures.get('process_resident_memory_bytes')).toBeGreaterThan(1_000_000)
  })

  test('holds nothing that a caller typed, and no key', async () => {
    const marker = 'Hollow-Lane-7'
    const { key, id } = await issueTestKey(app, { scopes: ['estimate'] })
    await app.send.get(`/v1/categories/${marker}?search=${marker}`).set(bearer(key))
    await app.send.get(`/${marker}`).set('user-agent', marker)
    await app.send.post('/v1/estimates').send({ devices: [{ category: marker, label: marker }] })
    const text = await read(app)
    expect(text).toContain(count('method="GET",route="unknown path",status="404"'))
    for (const secret of [marker, key, id, ADMIN_KEY, '127.0.0.1']) expect(text).not.toContain(secret)
  })

  test('has no line on sessions where the database is embedded', async () => {
    const { text } = await openMetrics(sources).read()
    expect(text).toContain('standby_catalogue_revision 7')
    expect(text).not.toContain('database_sessions')
  })
})

describe('/metrics that need a key', () => {
  let app: TestApp
  beforeAll(async () => (app = await meteredApp(false)))
  afterAll(() => app.close())

  test('are refused to callers without one', async () => {
    expectProblem(await app.send.get('/metrics'), 401, 'key-required')
  })

  test('are refused to keys without the scope admin, and to admins of other organisations', async () => {
    const editor = await issueTestKey(app, { scopes: ['catalogue:edit'] })
    expectProblem(await app.send.get('/metrics').set(bearer(editor.key)), 403, 'scope-missing')
    const foreign = await issueTestKey(app, { scopes: ['admin'], organisation: 'other' })
    expectProblem(await app.send.get('/metrics').set(bearer(foreign.key)), 403, 'operator-only')
  })

  test("are shown to the operator's admins", async () => {
    expect(await read(app)).toContain('standby_catalogue_revision 7')
  })
})

describe('what the operator closes', () => {
  let app: TestApp
  beforeAll(async () => (app = await testApp({ docs: false })))
  afterAll(() => app.close())

  test('is not there', async () => {
    for (const address of ['/metrics', '/docs', '/docs/', '/docs/static/swagger-ui.css', '/docs/json'])
      expectProblem(await app.send.get(address).set(asAdmin), 404, 'unknown-path')
  })

  test('leaves the document that the page shows', async () => {
    await app.send.get('/openapi.json').expect(200)
  })
})
