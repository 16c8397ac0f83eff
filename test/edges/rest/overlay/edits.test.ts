import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { expectProblem, faultsOf } from '../../../helpers/expectProblem.ts'
import { bearer, issueTestKey } from '../../../helpers/keys.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { OVERLAY_REQUEST_EXAMPLES } from '../../../../src/edges/rest/overlay/requestExamples.ts'
import { change, editorOf, type Headers, lay, own, ownTelevision, remove, tagOf } from './ownFigures.ts'

let service: TestApp
let us: Headers
beforeEach(async () => {
  service = await testApp()
  us = await editorOf(service, 'our-utility')
})
afterEach(() => service.close())
const get = (address: string, headers = us) => service.send.get(address).set(headers)

describe('PUT /v1/overlay/categories/{code}', () => {
  test('lays a category over the shared one, with If-None-Match: * where there is none of its own yet', async () => {
    const answer = await lay(service, us, 'television')
    expect([answer.status, answer.body]).toEqual([
      201,
      { ...ownTelevision, retired: false, sampleData: false, layer: 'organisation' },
    ])
    expect(answer.headers).toMatchObject({
      location: '/v1/overlay/categories/television',
      'overlay-revision': '1',
      etag: await tagOf(service, us, 'television'),
    })
    expectProblem(await lay(service, us, 'television'), 412, 'already-there')
  })

  test('lays one under a code that the shared catalogue lacks, which is then found by its names', async () => {
    const { body } = await lay(service, us, 'our-boiler', { body: own('our-boiler') })
    expect(body.layer).toBe('organisation')
    expect((await get('/v1/categories/Our%20our-boiler').expect(200)).body).toEqual(body)
  })

  test('replaces it with If-Match; the same content makes no revision', async () => {
    const laid = await lay(service, us, 'television')
    const headers = { 'if-match': laid.headers['etag']! }
    const same = await lay(service, us, 'television', { headers })
    expect([same.status, same.headers['etag'], same.headers['overlay-revision']]).toEqual([
      200,
      laid.headers['etag'],
      '1',
    ])
    const renamed = await lay(service, us, 'television', {
      headers,
      body: { ...ownTelevision, defaultQuantity: 2 },
    })
    expect([renamed.status, renamed.body.defaultQuantity]).toEqual([200, 2])
    expect(renamed.headers['etag']).not.toBe(laid.headers['etag'])
  })

  test('takes an answer back, changed, with what answers add to a category', async () => {
    const { body, headers } = await lay(service, us, 'television')
    const answer = await lay(service, us, 'television', {
      body: { ...body, defaultQuantity: 3 },
      headers: { 'if-match': headers['etag']! },
    })
    expect([answer.status, answer.body.defaultQuantity]).toEqual([200, 3])
  })

  test('without a condition is refused: 428; with a stale tag: 412 and what changed meanwhile', async () => {
    expectProblem(await lay(service, us, 'television', { headers: {} }), 428, 'precondition-required')
    const stale = (await lay(service, us, 'television')).headers['etag']!
    await change(service, us, 'television', {
      body: { defaultQuantity: 2 },
      headers: { 'if-match': stale },
    })
    const late = await lay(service, us, 'television', { headers: { 'if-match': stale } })
    expect(expectProblem(late, 412, 'stale-overlay')).toMatchObject({
      changedIn: 2,
      etag: await tagOf(service, us, 'television'),
      lastEdit: { number: 2, action: 'change', author: { organisation: 'our-utility' } },
      current: { defaultQuantity: 2, layer: 'organisation' },
      changes: [{ pointer: '/defaultQuantity', before: 1, after: 2 }],
    })
  })

  test('is no edit of what it does not know: a tag of the shared category, or of one that is gone', async () => {
    const shared = (await get('/v1/categories/television').expect(200)).headers['etag']!
    const answer = await lay(service, us, 'television', { headers: { 'if-match': shared } })
    expect(expectProblem(answer, 412, 'stale-overlay')).toMatchObject({ current: null, etag: null })
    const { headers } = await lay(service, us, 'television')
    await remove(service, us, 'television', { 'if-match': headers['etag']! })
    const gone = await lay(service, us, 'television', { headers: { 'if-match': headers['etag']! } })
    expectProblem(gone, 412, 'stale-overlay')
  })

  test('checks what every edit of the shared catalogue checks, and names every fault at once', async () => {
    const draw = {
      ...ownTelevision.modes[0]!.draws[0]!,
      lowW: 3,
      provenance: { kind: 'programme', citation: null, n: null },
    }
    const body = {
      ...ownTelevision,
      aliases: ['decoder'],
      modes: [{ mode: 'standby', defaultHoursPerWeek: 140, draws: [draw] }],
    }
    expect(
      faultsOf(expectProblem(await lay(service, us, 'television', { body }), 422, 'faulty-input')),
    ).toEqual([
      '/aliases/0 name-taken',
      '/modes/0/draws/0/lowW range-out-of-order',
      '/modes/0/draws/0/provenance/n n-missing',
    ])
    const other = await lay(service, us, 'television', { body: own('radio') })
    expect(faultsOf(expectProblem(other, 422, 'faulty-input'))).toEqual(['/code code-fixed'])
  })

  test('asks for confirm where a figure differs from what its callers see by more than a factor of three', async () => {
    const draws = [{ ...ownTelevision.modes[0]!.draws[0]!, typicalW: 3.5 }]
    const body = { ...ownTelevision, modes: [{ ...ownTelevision.modes[0]!, draws }] }
    const refused = expectProblem(await lay(service, us, 'television', { body }), 409, 'large-change')
    expect(refused['changes']).toMatchObject([{ figure: 'typicalW', beforeW: 1, afterW: 3.5 }])
    const answer = await lay(service, us, 'television', { body, query: { confirm: 'true' } })
    expect(answer.status).toBe(201)
  })

  test('cannot say that what must stay powered for all need not', async () => {
    const body = { ...own('freezer'), group: 'kitchen' }
    const refused = await lay(service, us, 'freezer', { body })
    expect(faultsOf(expectProblem(refused, 422, 'faulty-input'))).toEqual(['/keepPowered keep-powered-fixed'])
    const keepPowered = { reason: 'refrigeration', note: 'Medicine spoils.' }
    expect((await lay(service, us, 'freezer', { body: { ...body, keepPowered } })).status).toBe(201)
  })

  test('takes a category out of its own lists where it is retired', async () => {
    await lay(service, us, 'television', { body: { ...ownTelevision, retired: true } })
    const codes = async (headers: Headers) =>
      (await get('/v1/categories?limit=200', headers)).body.items.map(({ code }: { code: string }) => code)
    expect(await codes(us)).not.toContain('television')
    expect(await codes({})).toContain('television')
  })
})

describe('PATCH /v1/overlay/categories/{code}', () => {
  test('makes the shared category with the changes its own, where there is none yet', async () => {
    const answer = await change(service, us, 'set-top-box', { body: { defaultQuantity: 2 } })
    expect([answer.status, answer.body]).toMatchObject([
      201,
      {
        code: 'set-top-box',
        defaultQuantity: 2,
        aliases: ['TV box', 'decoder'],
        layer: 'organisation',
        sampleData: true,
      },
    ])
    const headers = { 'if-match': answer.headers['etag']! }
    const next = await change(service, us, 'set-top-box', { body: { aliases: [] }, headers })
    expect([next.status, next.body.aliases, next.body.defaultQuantity]).toEqual([200, [], 2])
  })

  test('of a code that neither layer has is refused', async () => {
    expectProblem(await change(service, us, 'no-such', { body: { name: 'x' } }), 404, 'unknown-category')
  })
})

describe('DELETE /v1/overlay/categories/{code}', () => {
  test('brings the shared figure back, as a new overlay revision', async () => {
    const shared = (await get('/v1/categories/television', {}).expect(200)).body
    const { headers } = await lay(service, us, 'television')
    expect((await get('/v1/categories/television')).body.layer).toBe('organisation')
    const answer = await remove(service, us, 'television', { 'if-match': headers['etag']! })
    expect([answer.status, answer.body]).toMatchObject([
      200,
      { revision: { number: 2, action: 'remove', code: 'television' }, shared, overlayRevision: 2 },
    ])
    expect((await get('/v1/categories/television')).body).toEqual(shared)
    expectProblem(await get('/v1/overlay/categories/television'), 404, 'unknown-overlay-category')
  })

  test('of an own code leaves nothing, and can be laid again', async () => {
    const { headers } = await lay(service, us, 'our-boiler', { body: own('our-boiler') })
    const answer = await remove(service, us, 'our-boiler', { 'if-match': headers['etag']! })
    expect(answer.body.shared).toBeNull()
    expectProblem(await get('/v1/categories/our-boiler'), 404, 'unknown-category')
    expect((await lay(service, us, 'our-boiler', { body: own('our-boiler') })).status).toBe(201)
  })

  test('needs If-Match, and something to take away', async () => {
    expectProblem(await remove(service, us, 'television', {}), 404, 'unknown-overlay-category')
    await lay(service, us, 'television')
    expectProblem(await remove(service, us, 'television', {}), 428, 'precondition-required')
    expectProblem(await remove(service, us, 'television', { 'if-match': '"x"' }), 412, 'stale-overlay')
  })
})

describe('the history', () => {
  test('lists the revisions newest first in pages, and reads one with its category before and after', async () => {
    const { headers } = await lay(service, us, 'television', { query: { reason: 'Read in 42 homes' } })
    await lay(service, us, 'router', {
      body: { ...own('router'), group: 'networking' },
      query: { confirm: 'true' },
    })
    await remove(service, us, 'television', { 'if-match': headers['etag']! })
    const first = await get('/v1/overlay/revisions?limit=2').expect(200)
    expect(first.body).toMatchObject({ items: [{ number: 3 }, { number: 2 }], overlayRevision: 3 })
    const last = await get(`/v1/overlay/revisions?limit=2&cursor=${first.body.nextCursor}`).expect(200)
    expect(last.body).toMatchObject({ items: [{ number: 1, reason: 'Read in 42 homes' }], nextCursor: null })
    const removal = (await get('/v1/overlay/revisions/3').expect(200)).body
    expect(removal).toMatchObject({
      action: 'remove',
      before: { code: 'television' },
      after: null,
      fields: [],
    })
    expectProblem(await get('/v1/overlay/revisions/4'), 404, 'unknown-overlay-revision')
  })

  test('reads all that lay over the shared catalogue at an older revision, in pages', async () => {
    await lay(service, us, 'television')
    await lay(service, us, 'our-boiler', { body: own('our-boiler') })
    const codes = ({ body }: { body: { items: { code: string }[] } }) => body.items.map(({ code }) => code)
    expect(codes(await get('/v1/overlay?overlayRevision=1').expect(200))).toEqual(['television'])
    expect(codes(await get('/v1/overlay?overlayRevision=0').expect(200))).toEqual([])
    const first = await get('/v1/overlay?limit=1').expect(200)
    expect([codes(first), first.body.overlayRevision]).toEqual([['our-boiler'], 2])
    expect(first.headers['link']).toContain('rel="next"')
    expect(codes(await get(`/v1/overlay?limit=1&cursor=${first.body.nextCursor}`))).toEqual(['television'])
    const kept = { ...us, 'if-none-match': first.headers['etag']! }
    await get('/v1/overlay?limit=1', kept).expect(304)
    expectProblem(await get('/v1/overlay?overlayRevision=3'), 404, 'unknown-overlay-revision')
  })

  test('each write leaves an audit event with before and after, which the own admin can read', async () => {
    const { headers } = await lay(service, us, 'television')
    await change(service, us, 'television', {
      body: { defaultQuantity: 2 },
      headers: { 'if-match': headers['etag']! },
    })
    const admin = bearer(
      (await issueTestKey(service, { scopes: ['admin'], organisation: 'our-utility' })).key,
    )
    const { body } = await get('/v1/audit-events?subjectKind=overlay-category', admin).expect(200)
    expect(body.items).toMatchObject([
      {
        action: 'overlay.change',
        subjectId: 'television',
        organisation: 'our-utility',
        concerns: 'our-utility',
        before: { overlayRevision: 1, category: { defaultQuantity: 1 } },
        after: { overlayRevision: 2, reason: 'a test', category: { defaultQuantity: 2 } },
      },
      { action: 'overlay.lay', before: null },
    ])
  })
})

test('edits at once of one organisation lose nothing: each accepted one is its own revision', async () => {
  const codes = Array.from({ length: 24 }, (_, index) => `own-${String(index).padStart(2, '0')}`)
  const answers = await Promise.all(codes.map((code) => lay(service, us, code, { body: own(code) })))
  expect(answers.map(({ status }) => status)).toEqual(codes.map(() => 201))
  const { body } = await get('/v1/overlay?limit=200').expect(200)
  expect(body.items.map(({ code }: { code: string }) => code)).toEqual(codes)
  expect(body.overlayRevision).toBe(24)
})

test('the examples of the API description are taken', async () => {
  const { layCategory, patchOverlayCategory } = OVERLAY_REQUEST_EXAMPLES
  const { value } = layCategory.own
  expect((await lay(service, us, value.code, { body: value })).status).toBe(201)
  const patched = await change(service, us, 'television', { body: patchOverlayCategory.quantity.value })
  expect(patched.status).toBe(201)
})
