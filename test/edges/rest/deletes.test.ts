import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import openApi from '../../../src/edges/rest/openapi.json' with { type: 'json' }
import { expectProblem } from '../../helpers/expectProblem.ts'
import { asAdmin, bearer, issueTestKey } from '../../helpers/keys.ts'
import { rawExchange } from '../../helpers/rawExchange.ts'
import { ADMIN_KEY, type TestApp, testApp } from '../../helpers/testApp.ts'

let app: TestApp
beforeAll(async () => (app = await testApp()))
afterAll(() => app.close())

const deletes = Object.entries(openApi.paths as Record<string, object>)
  .filter(([, item]) => 'delete' in item)
  .map(([path]) => path.replaceAll(/\{\w+\}/g, 'anything'))

/** As clients send it: with a length of 0, or without a word on length. */
const LENGTHS = ['Content-Length: 0\r\n', '']

test('there are routes that delete', () => {
  expect(deletes).toContain('/v1/api-keys/anything')
})

describe.each(deletes)('DELETE %s', (address) => {
  test.each(LENGTHS)('takes application/json without a body for no body (%j)', async (length) => {
    const send = (type: string) =>
      rawExchange(
        app.url,
        `DELETE ${address} HTTP/1.1\r\nHost: x\r\nAuthorization: Bearer ${ADMIN_KEY}\r\n${type}${length}Connection: close\r\n\r\n`,
      )
    const [plain, named] = [await send(''), await send('Content-Type: application/json\r\n')]
    const outcome = (answer: string) => [
      /^HTTP\/1\.1 (\d+)/.exec(answer)?.[1],
      /"code":"[^"]+"/.exec(answer)?.[0],
    ]
    expect(outcome(named)).toEqual(outcome(plain))
    expect(named).not.toContain('malformed-body')
  })
})

test('a key is revoked so', async () => {
  const { id, key } = await issueTestKey(app, { scopes: ['estimate'] })
  const { body } = await app.send
    .delete(`/v1/api-keys/${id}`)
    .set({ ...asAdmin, 'content-type': 'application/json' })
    .expect(200)
  expect(body.state).toBe('revoked')
  await app.send.get('/v1/categories').set(bearer(key)).expect(401)
})

test('a body that is there and no JSON is refused, and so is none where one is needed', async () => {
  const { id } = await issueTestKey(app, { scopes: ['estimate'] })
  const json = { ...asAdmin, 'content-type': 'application/json' }
  expectProblem(
    await app.send.delete(`/v1/api-keys/${id}`).set(json).send('{ this is none'),
    400,
    'malformed-body',
  )
  expectProblem(await app.send.post('/v1/api-keys').set(json), 400, 'malformed-body')
  expectProblem(
    await app.send.post('/v1/estimates').set(json).send('{"devices":[],"__proto__":{}}'),
    400,
    'malformed-body',
  )
})
