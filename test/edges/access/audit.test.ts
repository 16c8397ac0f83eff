import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readTable } from '../../../src/schemas/readTable.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { asAdmin, issueTestKey } from '../../helpers/keys.ts'
import { ADMIN_KEY, type TestApp, testApp } from '../../helpers/testApp.ts'
import { type MemoryAuditStore, memoryAuditStore } from '../../stores/memoryAuditStore.ts'
import { originOf } from '../../stores/aKey.ts'

let app: TestApp
let store: MemoryAuditStore
let minute = 0
beforeAll(async () => {
  store = memoryAuditStore()
  app = await testApp({ auditStore: store, clock: () => new Date(Date.UTC(2026, 0, 31, 12, minute)) })
})
afterAll(() => app.close())
const get = (address: string) => app.send.get(address).set(asAdmin)
const items = async (query: string) => (await get(`/v1/audit-events${query}`).expect(200)).body.items

describe('the audit trail', () => {
  test('tells of each write who did it, with which request, and what was before and after', async () => {
    const answer = await app.send
      .post('/v1/api-keys')
      .set({ ...asAdmin, 'x-request-id': 'my-request' })
      .send({ name: 'Intake', scopes: ['intake'] })
    const { key, state, ...written } = answer.body
    expect([key, state]).toEqual([expect.any(String), 'active'])
    const [event] = await items(`?subjectKind=api-key&subjectId=${written.id}`)
    expect(event).toEqual({
      id: event.id,
      at: '2026-01-31T12:00:00.000Z',
      organisation: 'operator',
      keyId: written.issuedBy,
      requestId: 'my-request',
      action: 'api-key.issue',
      subjectKind: 'api-key',
      subjectId: written.id,
      concerns: 'operator',
      before: null,
      after: written,
    })
    expect((await get(`/v1/audit-events/${event.id}`).expect(200)).body).toEqual(event)
  })

  test('leaves an event of every kind of write, in its order, and of none that was refused', async () => {
    minute = 1
    const { id } = await issueTestKey(app, { scopes: ['intake'], organisation: 'a-utility' })
    await app.send.post(`/v1/api-keys/${id}/rotations`).set(asAdmin).send({}).expect(201)
    await app.send.delete(`/v1/api-keys/${id}`).set(asAdmin).expect(200)
    await app.send.delete(`/v1/api-keys/${id}`).set(asAdmin).expect(200)
    await app.send.post(`/v1/api-keys/${id}/rotations`).set(asAdmin).send({}).expect(409)
    await app.send.post('/v1/organisations').set(asAdmin).send({ code: 'a-utility', name: 'x' }).expect(409)
    const actions = (await items('?from=2026-01-31T12:01:00Z')).map(
      ({ action }: { action: string }) => action,
    )
    expect(actions.reverse()).toEqual([
      'organisation.make',
      'api-key.issue',
      'api-key.rotate',
      'api-key.issue',
      'api-key.revoke',
    ])
  })

  test('never holds a secret', async () => {
    const { key } = await issueTestKey(app, { scopes: ['intake'] })
    const whole =
      (await get('/v1/audit-events').set('accept', 'text/csv')).text +
      (await get('/v1/audit-events?limit=200')).text
    expect(whole).not.toContain(key.slice(21))
    expect(whole).not.toContain(ADMIN_KEY)
    expect(whole).not.toContain('digest')
  })

  test('is filtered by action, subject and time, and names every fault of a filter', async () => {
    expect(await items('?action=nothing')).toEqual([])
    for (const event of await items(
      '?action=api-key.issue&organisation=a-utility&to=2026-01-31T13:02:00%2B01:00',
    ))
      expect(event).toMatchObject({ action: 'api-key.issue', concerns: 'a-utility' })
    const problem = expectProblem(
      await get('/v1/audit-events?from=yesterday&limit=0&nothing=1'),
      400,
      'faulty-query',
    )
    expect(faultsOf(problem)).toEqual([
      'query /from invalid-format',
      'query /limit too-small',
      'query /nothing unknown-field',
    ])
  })

  test.each(['put', 'patch', 'delete', 'post'] as const)('cannot be changed: %s', async (method) => {
    const [{ id }] = await items('?limit=1')
    for (const address of [`/v1/audit-events/${id}`, '/v1/audit-events']) {
      const answer = await app.send[method](address).set(asAdmin).send({})
      expectProblem(answer, 405, 'method-not-allowed')
      expect(answer.headers['allow']).toBe('GET, HEAD, OPTIONS')
    }
  })
})

describe('the export', () => {
  test('as CSV holds the whole trail in one file, with what was before and after as JSON', async () => {
    for (let count = 0; count < 1_200; count++)
      store.write({
        at: new Date(Date.UTC(2026, 1, 1)),
        origin: originOf('a-key', 'a-utility'),
        action: 'test.many',
        subjectKind: 'thing',
        subjectId: count === 7 ? '=HYPERLINK("https://evil.example")' : `thing-${count}`,
        before: { text: 'two\nlines, a "quote"; ä', number: count },
        after: null,
      })
    const answer = await get('/v1/audit-events?action=test.many').set('accept', 'text/csv').expect(200)
    expect(answer.headers).toMatchObject({
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': 'attachment; filename="audit-events.csv"',
      'cache-control': 'no-store',
      vary: 'accept',
    })
    const columns = [
      'id',
      'at',
      'organisation',
      'keyId',
      'requestId',
      'action',
      'subjectKind',
      'subjectId',
      'concerns',
      'before',
      'after',
    ] as const
    const { rows, faults } = readTable(answer.text, columns)
    expect(faults).toEqual([])
    expect(rows.map(({ cells }) => JSON.parse(cells.before).number)).toEqual(
      [...Array(1_200).keys()].reverse(),
    )
    expect(new Set(rows.map(({ cells }) => cells.id)).size).toBe(1_200)
    expect(rows[0]!.cells).toMatchObject({ at: '2026-02-01T00:00:00.000Z', keyId: 'a-key', after: '' })
    expect(rows.at(-1)!.cells.before).toBe('{"text":"two\\nlines, a \\"quote\\"; ä","number":0}')
    expect(answer.text).toContain(`"'=HYPERLINK(""https://evil.example"")"`)
  })

  test('as CSV of nothing is the header row alone', async () => {
    const { text } = await get('/v1/audit-events?action=nothing').set('accept', 'text/csv').expect(200)
    expect(text).toBe(
      'id,at,organisation,keyId,requestId,action,subjectKind,subjectId,concerns,before,after\r\n',
    )
  })

  test.each([
    [undefined, 'application/json'],
    ['*/*', 'application/json'],
    ['text/csv;q=0.5, application/json', 'application/json'],
    ['text/csv, application/json;q=0.9', 'text/csv'],
    ['text/*', 'text/csv'],
  ])('goes by Accept: %s', async (accept, type) => {
    const answer = await get('/v1/audit-events?limit=1').set(accept === undefined ? {} : { accept })
    expect(answer.headers['content-type']).toContain(type)
  })

  test('is given in no other form', async () => {
    expectProblem(await get('/v1/audit-events').set('accept', 'application/xml'), 406, 'not-acceptable')
    expectProblem(await get('/v1/api-keys').set('accept', 'text/csv'), 406, 'not-acceptable')
  })
})
