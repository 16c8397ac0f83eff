import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { expectProblem, faultsOf } from '../../../helpers/expectProblem.ts'
import { bearer, issueTestKey } from '../../../helpers/keys.ts'
import { type TestApp, testApp } from '../../../helpers/testApp.ts'
import { editorOf } from '../catalogue/editor.ts'

let service: TestApp
beforeEach(async () => (service = await testApp()))
afterEach(() => service.close())
const editor = editorOf(() => service)
const revisionNow = () => service.deps.referenceMemory.current().revision
const tagOf = async (path: string) => (await service.send.get(path).expect(200)).headers['etag']!
const newest = async () => (await service.send.get(`/v1/reference-revisions/${revisionNow()}`)).body

const tariff = {
  code: 'night-2026',
  name: 'Night price of 2026',
  tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.2, validFrom: '2026-01-01' },
  source: 'Price list of January 2026',
}
const factor = {
  code: 'nowhere-2025',
  regionCode: 'nowhere',
  region: 'Nowhere',
  kind: 'average',
  year: 2025,
  factor: { kgCo2ePerKwh: 0.4 },
  gases: 'CO2e',
  source: 'Report on a grid that there is none of, 2025',
  mark: 'M',
}
/** Both kinds: a new one, an existing one, a field to change, and what the service makes of the new one. */
const KINDS = [
  {
    kind: 'tariff' as const,
    path: '/v1/tariffs',
    there: '/v1/tariffs/sample-flat-eur',
    draft: tariff,
    stored: { ...tariff, retired: false, sampleData: false },
    patch: { tariff: { pricePerKwh: 0.35 } },
    field: { pointer: '/tariff/pricePerKwh', before: 0.3, after: 0.35 },
    faulty: { ...tariff, tariff: { ...tariff.tariff, pricePerKwh: -1, currency: 'XQZ' } },
    faults: ['/tariff/currency unknown-currency', '/tariff/pricePerKwh too-small'],
  },
  {
    kind: 'emission-factor' as const,
    path: '/v1/emission-factors',
    there: '/v1/emission-factors/world-2023',
    draft: factor,
    stored: { ...factor, retired: false },
    patch: { factor: { kgCo2ePerKwh: 0.45 } },
    field: { pointer: '/factor/kgCo2ePerKwh', before: 0.5, after: 0.45 },
    faulty: { ...factor, kind: 'usual', factor: { kgCo2ePerKwh: 0.4, gridLoss: 0.9 } },
    faults: ['/factor/gridLoss too-big', '/kind invalid-value'],
  },
]

describe.each(KINDS)(
  'editing: $path',
  ({ kind, path, there, draft, stored, patch, field, faulty, faults }) => {
    const entry = `${path}/${draft.code}`

    test('POST adds one as one revision with author, time and reason', async () => {
      const answer = await editor.post(path, { body: draft, query: { reason: 'New price list' } })
      expect([answer.status, answer.body]).toEqual([201, stored])
      expect(answer.headers).toMatchObject({
        location: entry,
        'content-location': entry,
        'reference-revision': '2',
        etag: await tagOf(entry),
      })
      expect((await service.send.get(entry)).body).toEqual(stored)
      expect(await newest()).toMatchObject({
        number: 2,
        action: 'create',
        author: { organisation: 'operator', keyId: expect.any(String) },
        reason: 'New price list',
        at: '2026-01-31T12:00:00.000Z',
        changes: [{ of: kind, code: draft.code, kind: 'added', before: null, after: stored, fields: [] }],
      })
    })

    test('POST refuses a code that is taken, also by a retired one', async () => {
      const existing = (await service.send.get(there)).body
      const taken = () => editor.post(path, { body: { ...existing, retired: undefined } })
      expectProblem(await taken(), 409, `${kind}-exists`)
      await editor.retire(there, { headers: { 'if-match': await tagOf(there) } })
      expectProblem(await taken(), 409, `${kind}-exists`)
      expect(revisionNow()).toBe(2)
    })

    test('PUT replaces what was read, changed and sent back as it came; the same content makes no revision', async () => {
      const { body, headers } = await service.send.get(there)
      const same = await editor.put(there, { body, headers: { 'if-match': headers['etag']! } })
      expect([same.status, same.headers['etag'], revisionNow()]).toEqual([200, headers['etag'], 1])
      const source = 'Another source, of 2026'
      const changed = await editor.put(there, {
        body: { ...body, source },
        headers: { 'if-match': headers['etag']! },
      })
      expect([changed.status, changed.body.source]).toEqual([200, source])
      const again = await editor.put(there, {
        body: { ...body, source: 'A third source, of 2026' },
        headers: { 'if-match': changed.headers['etag']! },
      })
      expect([again.status, revisionNow()]).toEqual([200, 3])
    })

    test('PUT with If-None-Match: * makes one, and only where there is none', async () => {
      const headers = { 'if-none-match': '*' }
      const made = await editor.put(entry, { body: draft, headers })
      expect([made.status, made.headers['location']]).toEqual([201, entry])
      expectProblem(await editor.put(entry, { body: draft, headers }), 412, 'already-there')
      expect(revisionNow()).toBe(2)
    })

    test('PUT refuses another code, and another state of retirement, than there is', async () => {
      const headers = { 'if-match': await tagOf(there) }
      const body = { ...(await service.send.get(there)).body, code: 'other', retired: true }
      expect(
        faultsOf(expectProblem(await editor.put(there, { body, headers }), 422, 'faulty-input')),
      ).toEqual(['/code code-fixed', '/retired retired-fixed'])
    })

    test('PATCH changes the members that it names, field by field in the history', async () => {
      const answer = await editor.patch(there, { body: patch, headers: { 'if-match': await tagOf(there) } })
      expect(answer.status).toBe(200)
      expect((await newest()).changes).toMatchObject([{ of: kind, kind: 'changed', fields: [field] }])
    })

    test('PATCH is read as application/merge-patch+json alone, as Accept-Patch says', async () => {
      const answer = await editor.patch(there, {
        body: '{}',
        headers: { 'content-type': 'application/json', 'if-match': '"x"' },
      })
      expectProblem(answer, 415, 'unsupported-media-type')
      expect(answer.headers['accept-patch']).toBe('application/merge-patch+json')
    })

    test('every fault of shape and address is named at once, and nothing is stored', async () => {
      const made = await editor.post(path, { body: { ...faulty, colour: 'red' } })
      expect(faultsOf(expectProblem(made, 422, 'faulty-input'))).toEqual(['/colour unknown-field', ...faults])
      const short = await editor.post(path, { body: faulty, query: { reason: 'x', confirm: 'true' } })
      expect(faultsOf(expectProblem(short, 422, 'faulty-input'))).toEqual([
        ...faults,
        'query /confirm unknown-field',
        'query /reason too-small',
      ])
      expect(revisionNow()).toBe(1)
    })

    test('DELETE takes one out of lists and loses nothing of it; restore brings it back as it was', async () => {
      const before = (await service.send.get(there)).body
      const retired = await editor.retire(there, { headers: { 'if-match': await tagOf(there) } })
      expect(retired.body).toEqual({ ...before, retired: true })
      const codes = async (query: string) =>
        (await service.send.get(`${path}${query}`)).body.items.map(({ code }: { code: string }) => code)
      expect(await codes('')).not.toContain(before.code)
      expect(await codes('?includeRetired=true')).toContain(before.code)
      expect(await codes('?referenceRevision=1')).toContain(before.code)
      expect((await service.send.get(there)).body.retired).toBe(true)
      const restored = await editor.post(`${there}/restore`, {
        headers: { 'if-match': retired.headers['etag']! },
      })
      expect(restored.body).toEqual(before)
      const { body } = await service.send.get('/v1/reference-revisions')
      expect(body.items.map(({ action }: { action: string }) => action)).toEqual([
        'restore',
        'retire',
        'seed',
      ])
    })

    test('one that is retired, or in use, already stays as it is and makes no revision', async () => {
      const headers = { 'if-match': await tagOf(there) }
      expect((await editor.post(`${there}/restore`, { headers })).status).toBe(200)
      const { headers: after } = await editor.retire(there, { headers })
      const again = await editor.retire(there, { headers: { 'if-match': after['etag']! } })
      expect([again.status, revisionNow()]).toEqual([200, 2])
    })

    test('an unknown code is answered with those that there are', async () => {
      const answers = [
        await service.send.get(`${path}/nothing`),
        await editor.retire(`${path}/nothing`, { headers: { 'if-match': '"x"' } }),
      ]
      for (const answer of answers)
        expect(expectProblem(answer, 404, `unknown-${kind}`)['known']).toEqual([there.split('/').at(-1)])
    })

    const EDITS = [
      ['put', (headers: object) => editor.put(there, { body: {}, headers: { ...headers } })],
      ['patch', (headers: object) => editor.patch(there, { body: {}, headers: { ...headers } })],
      ['delete', (headers: object) => editor.retire(there, { headers: { ...headers } })],
      ['post', (headers: object) => editor.post(`${there}/restore`, { headers: { ...headers } })],
    ] as const

    describe.each(EDITS)('%s', (method, edit) => {
      test('without If-Match, or with *, is refused: 428', async () => {
        expectProblem(await edit({}), 428, 'precondition-required')
        expectProblem(await edit({ 'if-match': '*' }), 428, 'precondition-required')
      })

      test('with a stale tag shows what changed meanwhile: by whom, when, why, and in which fields', async () => {
        const stale = await tagOf(there)
        await editor.patch(there, {
          body: patch,
          query: { reason: 'New report' },
          headers: { 'if-match': stale },
        })
        const problem = expectProblem(await edit({ 'if-match': stale }), 412, `stale-${kind}`)
        expect(problem).toMatchObject({
          changedIn: 2,
          etag: await tagOf(there),
          lastEdit: {
            number: 2,
            author: { organisation: 'operator' },
            reason: 'New report',
            at: '2026-01-31T12:00:00.000Z',
          },
          current: (await service.send.get(there)).body,
          changes: [field],
        })
        expect(revisionNow()).toBe(2)
      })

      test('with a tag that is no basis is refused, and says that nobody knows what changed', async () => {
        const tag = await tagOf(there)
        for (const other of [`W/${tag}`, tag.replace('r1', 'r9'), '"reference.r1.json2"', '""'])
          expect(expectProblem(await edit({ 'if-match': other }), 412, `stale-${kind}`)['changes']).toBeNull()
        expectProblem(await edit({ 'if-match': 'no tag' }), 400, 'malformed-condition')
      })

      test('needs a key of the operator with the scope catalogue:edit', async () => {
        const address = method === 'post' ? `${there}/restore` : there
        const type = method === 'patch' ? 'application/merge-patch+json' : 'application/json'
        const attempt = (key?: string) =>
          service.send[method](address)
            .query({ reason: 'a test' })
            .set({ 'content-type': type, 'if-match': '"x"', ...(key !== undefined && bearer(key)) })
            .send('{}')
        expectProblem(await attempt(), 401, 'key-required')
        const without = await issueTestKey(service, { scopes: ['estimate'] })
        expectProblem(await attempt(without.key), 403, 'scope-missing')
        const others = await issueTestKey(service, { scopes: ['catalogue:edit'], organisation: 'a-utility' })
        expectProblem(await attempt(others.key), 403, 'operator-only')
        expect(revisionNow()).toBe(1)
      })
    })

    test('the tag stays fresh whatever is edited elsewhere, and a copy that is kept is not sent again', async () => {
      const tag = await tagOf(there)
      await editor.post(path, { body: draft })
      expect(await tagOf(there)).toBe(tag)
      await service.send.get(there).set('if-none-match', tag).expect(304)
      await service.send.get(path).set('if-none-match', '"reference.r2.json2"').expect(304)
      await service.send.get(path).set('if-none-match', '"reference.r1.json2"').expect(200)
    })
  },
)

describe('the checks that a tariff of a request gets', () => {
  test('apply to one that is kept, by POST, PUT and PATCH, at its place', async () => {
    const overlapping = {
      kind: 'block',
      currency: 'EUR',
      per: 'month',
      blocks: [{ upToKwh: 200, pricePerKwh: 0.1 }, { upToKwh: 100, pricePerKwh: 0.2 }, { pricePerKwh: 0.3 }],
      validFrom: '2026-02-01',
      validTo: '2026-01-01',
    }
    const wanted = ['/tariff/blocks/1/upToKwh blocks-out-of-order', '/tariff/validTo dates-out-of-order']
    const body = { ...tariff, tariff: overlapping }
    const inline = await service.send
      .post('/v1/estimates')
      .send({ devices: [{ category: 'router' }], tariff: overlapping })
    const made = await editor.post('/v1/tariffs', { body })
    const there = '/v1/tariffs/sample-flat-eur'
    const headers = { 'if-match': await tagOf(there) }
    const put = await editor.put(there, { body: { ...body, code: 'sample-flat-eur' }, headers })
    const { kind, currency, ...rest } = overlapping
    const patched = await editor.patch(there, {
      body: { tariff: { kind, currency, pricePerKwh: null, ...rest } },
      headers,
    })
    for (const answer of [inline, made, put, patched])
      expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual(wanted)
  })

  test('refuse a charge on peak demand, and say why', async () => {
    const body = { ...tariff, tariff: { ...tariff.tariff, demandCharge: 3 } }
    expect(faultsOf(expectProblem(await editor.post('/v1/tariffs', { body }), 422, 'faulty-input'))).toEqual([
      '/tariff/demandCharge not-priced',
      '/tariff/demandCharge unknown-field',
    ])
  })

  test('say that a price is sample data where its source says that it is invented, whatever is sent', async () => {
    const body = { ...tariff, source: 'invented sample', sampleData: false }
    expect((await editor.post('/v1/tariffs', { body })).body.sampleData).toBe(true)
  })
})

describe('the checks on a published emission factor', () => {
  test.each(['x', 'a report', 'invented sample'])('refuse "%s", which is no citation', async (source) => {
    const answer = await editor.post('/v1/emission-factors', { body: { ...factor, source } })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual(['/source citation-missing'])
  })

  test('refuse a second one of a grid, kind and year that counts the same, until the first is retired', async () => {
    const body = { ...factor, regionCode: 'world', year: 2023 }
    const twin = () => editor.post('/v1/emission-factors', { body })
    expect(faultsOf(expectProblem(await twin(), 422, 'faulty-input'))).toEqual(['/code factor-twice'])
    const there = '/v1/emission-factors/world-2023'
    const { headers } = await editor.retire(there, { headers: { 'if-match': await tagOf(there) } })
    expect((await twin()).status).toBe(201)
    const back = await editor.post(`${there}/restore`, { headers: { 'if-match': headers['etag']! } })
    expect(faultsOf(expectProblem(back, 422, 'faulty-input'))).toEqual(['/code factor-twice'])
  })
})
