import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { createLog } from '../../src/log.ts'
import { rawExchange } from '../helpers/rawExchange.ts'
import { type TestApp, testApp } from '../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

const lines = (text: string): Record<string, unknown>[] =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
const linesOf = (id: string) => lines(service.log()).filter(({ requestId }) => requestId === id)

describe('the log', () => {
  test('says of a request its id, method, route pattern, status and time, once', async () => {
    await service.send.get('/v1/categories/TV?catalogueRevision=1').set('x-request-id', 'log-1').expect(200)
    const [line, ...more] = linesOf('log-1')
    expect(more).toEqual([])
    expect(line).toEqual({
      level: 'info',
      time: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
      requestId: 'log-1',
      method: 'GET',
      route: '/v1/categories/:code',
      status: 200,
      durationMs: expect.any(Number),
      msg: 'request answered',
    })
  })

  test('joins every line of a request to the trace that it is part of', async () => {
    const trace = '4bf92f3577b34da6a3ce929d0e0e4736'
    const traceparent = `00-${trace}-00f067aa0ba902b7-01`
    await service.send.get('/v1/api-keys').set({ traceparent, authorization: 'Bearer x' }).expect(401)
    await service.send.get('/%ff').set({ traceparent }).expect(400)
    await service.send.post('/graphql').set({ traceparent }).send({ query: '{ __typename }' }).expect(200)
    const traced = lines(service.log()).filter(({ traceId }) => traceId === trace)
    expect(traced.map(({ msg }) => msg)).toEqual([
      'key refused',
      'request answered',
      'unreadable address refused',
      'request answered',
    ])
  })

  test('holds nothing of a traceparent that is none', async () => {
    const traceparent = '00-00000000000000000000000000000000-00f067aa0ba902b7-01'
    await service.send.get('/health/live').set({ traceparent, 'x-request-id': 'log-t' }).expect(200)
    const [line] = linesOf('log-t')
    expect(line).not.toHaveProperty('traceId')
    expect(JSON.stringify(line)).not.toContain('00f067aa0ba902b7')
  })

  test("calls a caller's mistake information", async () => {
    await service.send.post('/v1/estimates').set('x-request-id', 'log-2').send({}).expect(422)
    await service.send.get('/nowhere').set('x-request-id', 'log-3').expect(404)
    expect([...linesOf('log-2'), ...linesOf('log-3')].map(({ level, status }) => [level, status])).toEqual([
      ['info', 422],
      ['info', 404],
    ])
  })

  test('calls our own failure an error', async () => {
    const failing = await testApp({ checkStore: () => Promise.reject(new Error('down')) })
    await failing.send.get('/health/ready').expect(503)
    expect(lines(failing.log()).find(({ status }) => status === 503)).toMatchObject({ level: 'error' })
    await failing.close()
  })

  test('holds nothing of bodies, addresses, queries and keys, not even of faulty or unreadable requests', async () => {
    const marker = 'Hollow-Lane-7'
    const key = 'Bearer sk-marker'
    const { send } = service
    await send
      .post('/v1/estimates')
      .set('authorization', key)
      .send({ devices: [{ category: 'TV', label: marker }] })
      .expect(401)
    await send
      .post('/v1/estimates')
      .send({ devices: [{ category: 'TV', label: marker }] })
      .expect(200)
    await send
      .post('/v1/estimates')
      .set('cookie', marker)
      .send({ [marker]: 1, devices: [{ category: marker }] })
      .expect(422)
    await send.post('/v1/estimates').set('content-type', 'application/json').send(`{"${marker}`).expect(400)
    await send.get(`/v1/categories/${marker}?search=${marker}`).set('referer', marker).expect(400)
    await send.get(`/v1/categories/${marker}`).expect(404)
    await send.get(`/${marker}`).expect(404)
    await send.get(`/v1/categories/%ff${marker}`).expect(400)
    await send.post('/graphql').send({ query: `{ ${marker.replaceAll('-', '_')} }` })
    await rawExchange(service.url, `${marker}\r\n\r\n`)
    expect(service.log()).toContain('unreadable address refused')
    expect(service.log()).toContain('unreadable request refused')
    expect(service.log()).not.toMatch(/Hollow.Lane|sk-marker/)
  })

  test('takes out by name what must not be in it, at the top and one level down', () => {
    let written = ''
    const log = createLog('info', { write: (line: string) => (written += line) })
    log.info(
      { body: 'secret', request: { headers: 'secret', authorization: 'secret', url: 'secret' } },
      'said',
    )
    expect(JSON.parse(written)).toMatchObject({
      body: '[not logged]',
      request: { headers: '[not logged]', authorization: '[not logged]', url: '[not logged]' },
    })
  })
})
