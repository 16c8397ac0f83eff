import { once } from 'node:events'
import { connect } from 'node:net'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { problemSchema } from '../../../src/edges/rest/problem.ts'
import { expectProblem } from '../../helpers/expectProblem.ts'
import { rawExchange } from '../../helpers/rawExchange.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

describe('addresses and methods', () => {
  test.each([
    '/',
    '/v1',
    '/v1/nothing',
    '/docs/static/nothing.js',
    '/docs/static/%2e%2e%2findex.js',
    '/v1/categories/',
    '/V1/categories',
    '/graphql/x',
    '/health',
  ])('%s is not found', async (path) => {
    expectProblem(await service.send.get(path), 404, 'unknown-path')
  })

  test.each([
    ['PUT', '/v1/estimates', 'POST, OPTIONS'],
    ['GET', '/v1/estimates', 'POST, OPTIONS'],
    ['DELETE', '/v1/catalogue/export?x=1', 'GET, HEAD, OPTIONS'],
    ['POST', '/health/live', 'GET, HEAD, OPTIONS'],
    ['TRACE', '/v1/categories', 'GET, HEAD, POST, OPTIONS'],
  ])('%s %s is refused with the methods that there are', async (method, path, allowed) => {
    const answer = await rawExchange(
      service.url,
      `${method} ${path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`,
    )
    expect(answer).toMatch(/^HTTP\/1\.1 405 /)
    expect(answer).toContain(`\r\nallow: ${allowed}\r\n`)
    expect(problemSchema.parse(bodyOf(answer)).code).toBe('method-not-allowed')
  })

  test('a path that leaves the folder of the pages is no address', async () => {
    const answer = await rawExchange(
      service.url,
      'GET /docs/static/../../package.json HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n',
    )
    expect(problemSchema.parse(bodyOf(answer))).toMatchObject({ status: 404, code: 'unknown-path' })
  })

  test('a wrong method with a body is refused for the method, not for the body', async () => {
    const answer = await service.send.put('/v1/estimates').set('content-type', 'text/plain').send('x')
    expectProblem(answer, 405, 'method-not-allowed')
  })

  test('OPTIONS is told the methods', async () => {
    const answer = await service.send.options('/v1/categories').expect(204)
    expect(answer.headers['allow']).toBe('GET, HEAD, POST, OPTIONS')
    expectProblem(await service.send.options('/nothing'), 404, 'unknown-path')
  })

  test('HEAD answers as GET does, without the body', async () => {
    const [get, head] = [await service.send.get('/v1/categories'), await service.send.head('/v1/categories')]
    expect([head.status, head.text]).toEqual([200, undefined])
    expect(head.headers['content-length']).toBe(get.headers['content-length'])
    expect(head.headers['etag']).toBe(get.headers['etag'])
  })

  test('an address that cannot be decoded is a malformed one', async () => {
    expectProblem(await service.send.get('/v1/categories/%ff'), 400, 'malformed-url')
  })

  test('a part of an address above 500 characters is too long', async () => {
    expectProblem(await service.send.get(`/v1/categories/${'a'.repeat(501)}`), 414, 'address-too-long')
    expectProblem(await service.send.get(`/v1/categories/${'a'.repeat(500)}`), 404, 'unknown-category')
  })
})

describe('Accept', () => {
  test.each(['text/html', 'application/xml, image/*', 'application/json;q=0', '*/*;q=0'])(
    '%s cannot be met',
    async (accept) => {
      const path = '/v1/catalogue/revisions'
      expectProblem(await service.send.get(path).set('accept', accept), 406, 'not-acceptable')
    },
  )

  test.each(['*/*', 'application/*', 'text/html, application/json;q=0.1', ''])(
    '%s can be met',
    async (accept) => {
      await service.send.get('/v1/categories').set('accept', accept).expect(200)
    },
  )
})

describe('what every answer carries', () => {
  test.each(['/v1/categories', '/nothing', '/v1/categories/%ff', '/docs', '/health/live'])(
    '%s: nosniff, a referrer policy, a strict content policy, a request id, and no word of the software',
    async (path) => {
      const { headers } = await service.send.get(path)
      expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer' })
      expect(headers['content-security-policy']).toMatch(/^default-src 'none'; .*frame-ancestors 'none'$/)
      expect(headers['content-security-policy']).not.toMatch(/unsafe|https?:/)
      expect(headers['x-request-id']).toMatch(/^[0-9a-f-]{36}$/)
      expect(headers).not.toHaveProperty('server')
      expect(headers).not.toHaveProperty('x-powered-by')
    },
  )

  test("a caller's request id is kept where it is safe", async () => {
    const id = `Visit_7.b-${'x'.repeat(54)}`
    const answer = await service.send.get('/v1/nothing').set('x-request-id', id)
    expect(answer.headers['x-request-id']).toBe(id)
    expect(expectProblem(answer, 404, 'unknown-path')['requestId']).toBe(id)
  })

  test.each(['', 'x'.repeat(65), 'two words', '<script>', 'a"b', 'ü'])(
    'a request id of %j is replaced',
    async (id) => {
      const answer = await rawExchange(
        service.url,
        `GET /health/live HTTP/1.1\r\nHost: x\r\nX-Request-Id: ${id}\r\nConnection: close\r\n\r\n`,
      )
      expect(answer).toMatch(/\r\nx-request-id: [0-9a-f-]{36}\r\n/)
    },
  )
})

describe('bytes that are no proper HTTP request', () => {
  test.each([
    ['plain garbage', 'garbage\r\n\r\n', 400, 'malformed-request'],
    ['no Host', 'GET /health/live HTTP/1.1\r\nConnection: close\r\n\r\n', 400, 'malformed-request'],
    [
      'an unknown expectation',
      'GET /health/live HTTP/1.1\r\nHost: x\r\nExpect: 200-ok\r\n\r\n',
      417,
      'unknown-expectation',
    ],
    ['an unknown method', 'FETCH / HTTP/1.1\r\nHost: x\r\n\r\n', 400, 'malformed-request'],
    [
      'two lengths',
      'POST /v1/estimates HTTP/1.1\r\nHost: x\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}',
      400,
      'malformed-request',
    ],
    [
      'a length beside chunks',
      'POST /v1/estimates HTTP/1.1\r\nHost: x\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n',
      400,
      'malformed-request',
    ],
    [
      'headers above 16 KiB',
      `GET / HTTP/1.1\r\nHost: x\r\nX-Long: ${'a'.repeat(17_000)}\r\n\r\n`,
      431,
      'headers-too-large',
    ],
    [
      'an address above 16 KiB',
      `GET /${'a'.repeat(17_000)} HTTP/1.1\r\nHost: x\r\n\r\n`,
      431,
      'headers-too-large',
    ],
  ])('%s: the connection ends with a problem answer', async (_, bytes, status, code) => {
    const answer = await rawExchange(service.url, bytes)
    expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} [A-Z]`))
    expect(answer).toMatch(/\r\nContent-Type: application\/problem\+json; charset=utf-8\r\n/i)
    const body = bodyOf(answer)
    expect(problemSchema.parse(body)).toMatchObject({ status, code })
    expect(answer).toMatch(new RegExp(`\r\nX-Request-Id: ${body.requestId}\r\n`, 'i'))
    expect(Number(/Content-Length: (\d+)/i.exec(answer)?.[1])).toBe(
      Buffer.byteLength(answer.split('\r\n\r\n')[1]!),
    )
  })

  test('a body shorter than its length is never taken for a whole one', async () => {
    const head =
      'POST /v1/estimates HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 99\r\n\r\n'
    const slow = await testApp({ arrivalMs: 100 })
    const answer = await rawExchange(slow.url, `${head}{}`)
    await slow.close()
    expect(answer).toMatch(/^HTTP\/1\.1 408 Request Timeout\r\n/)
    expect(problemSchema.parse(bodyOf(answer))).toMatchObject({ status: 408, code: 'request-timeout' })
  })

  test('a caller that goes away in the middle of a body is no failure of ours', async () => {
    const service = await testApp()
    const { hostname, port } = new URL(service.url)
    const socket = connect(Number(port), hostname)
    const arrived = once(service.app.server, 'request')
    socket.write('POST /v1/estimates HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n')
    socket.write('Content-Length: 99\r\n\r\n{"devices":')
    await arrived
    socket.destroy()
    await vi.waitUntil(() => service.log().includes('unreadable request refused'))
    await service.close()
    expect(service.log()).not.toContain('"error"')
  })

  test('a caller that never ends its headers is told so and loses the connection', async () => {
    const slow = await testApp({ arrivalMs: 100 })
    const answer = await rawExchange(slow.url, 'GET /v1/categories HTTP/1.1\r\nHost: x\r\nX-Slow: ')
    await slow.close()
    expect(problemSchema.parse(bodyOf(answer))).toMatchObject({ status: 408, code: 'request-timeout' })
  })
})

const bodyOf = (answer: string) => JSON.parse(answer.slice(answer.indexOf('\r\n\r\n') + 4))
