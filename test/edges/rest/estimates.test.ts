import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { estimateSchema } from '../../../src/schemas/estimate.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => (service = await testApp()))
afterAll(() => service.close())

const estimate = (body: object | string, type = 'application/json') =>
  service.send.post('/v1/estimates').set('content-type', type).send(body)

describe('POST /v1/estimates', () => {
  test('answers 8.76 kWh, with its price and emissions, for 1 W read all year', async () => {
    const answer = await estimate({
      tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.5 },
      emissionFactor: { kgCo2ePerKwh: 0.25 },
      devices: [
        {
          id: 'd1',
          category: 'television',
          modes: [
            {
              mode: 'standby',
              hoursPerWeek: 168,
              reading: {
                kind: 'power',
                watts: 1,
                accuracy: { percentOfReading: 0, counts: 0, resolution: 0 },
              },
            },
          ],
        },
      ],
    })
    expect(answer.status).toBe(200)
    expect(answer.headers['content-type']).toBe('application/json; charset=utf-8')
    const { total, devices, currency } = estimateSchema.parse(answer.body)
    expect(total.energyKwhPerYear.expected).toBeCloseTo(8.76, 6)
    expect(total.costPerYear.expected).toBeCloseTo(4.38, 6)
    expect(total.emissionsKgCo2ePerYear.expected).toBeCloseTo(2.19, 6)
    expect([currency, total.confidence, devices[0]?.confidence]).toEqual(['EUR', 'measured', 'measured'])
  })

  test('fills in from the catalogue and the settings what a request leaves out, and says what it used', async () => {
    const { body } = await estimate({ devices: [{ category: 'TV box' }] }).expect(200)
    const { used, devices, catalogueRevision, coverageProbability } = estimateSchema.parse(body)
    expect(used.supply).toEqual({ volts: 230, tolerancePercent: 6, hertz: 50 })
    expect(used.tariffSource).toContain('sample-flat-eur')
    expect(used.emissionFactorSource).toContain('world-2023')
    expect(devices[0]).toMatchObject({ category: 'set-top-box', confidence: 'assumed', quantity: 1 })
    expect([catalogueRevision, coverageProbability]).toEqual([1, 0.9])
  })

  test('gives the same bytes for the same request', async () => {
    const household = { devices: [{ category: 'TV' }, { category: 'router', quantity: 2 }] }
    const [first, second] = [await estimate(household), await estimate(household)]
    expect(first.status).toBe(200)
    expect(second.text).toBe(first.text)
  })

  test('is not kept by caches, since it tells of a home', async () => {
    const answer = await estimate({ devices: [{ category: 'TV' }] })
    expect(answer.headers['cache-control']).toBe('no-store')
  })

  test('names faults of shape, of the trade, unknown fields and unknown parameters all at once', async () => {
    const answer = await service.send.post('/v1/estimates?debug=1').send({
      annualUse: 3200,
      coverageProbability: 2,
      devices: [
        { category: 'televisoin', colour: 'black' },
        {
          category: 'router',
          modes: [
            { mode: 'networked-standby', hoursPerWeek: 100 },
            { mode: 'off', hoursPerWeek: 100 },
          ],
        },
        { category: 'TV', modes: [{ mode: 'standby', reading: { kind: 'power', watts: -1 } }] },
      ],
    })
    const problem = expectProblem(answer, 422, 'faulty-input')
    expect(faultsOf(problem)).toEqual(
      [
        '/annualUse unknown-field',
        '/coverageProbability too-big',
        '/devices/0/category unknown-category',
        '/devices/0/colour unknown-field',
        '/devices/1/modes hours-exceed-week',
        '/devices/1/modes/1/mode mode-without-figure',
        '/devices/2/modes/0/reading/watts too-small',
        'query /debug unknown-field',
      ].sort(),
    )
    expect(problem['detail']).toContain('8 faults')
  })

  test('quotes the bad value and says what is allowed', async () => {
    const problem = expectProblem(
      await estimate({ devices: [{ category: 'TV', quantity: 0 }] }),
      422,
      'faulty-input',
    )
    expect(problem['detail']).toMatch(/1.*but it is 0\./)
  })

  test.each([
    ['an empty list of devices', { devices: [] }, '/devices too-small'],
    ['no devices', {}, '/devices required'],
    ['a list in place of the household', [], 'invalid-type'],
    ['null in place of the household', 'null', 'invalid-type'],
    [
      'a number that overflows',
      '{"devices":[{"category":"TV","quantity":1e999}]}',
      '/devices/0/quantity invalid-type',
    ],
  ])('refuses %s', async (_, body, fault) => {
    expect(faultsOf(expectProblem(await estimate(body), 422, 'faulty-input'))).toEqual([fault])
  })

  test('refuses a list of 30,000 devices and nesting 10,000 deep without failing', async () => {
    const many = JSON.stringify({ devices: Array.from({ length: 30_000 }, () => ({ category: 'TV' })) })
    expectProblem(await estimate(many), 422, 'faulty-input')
    expectProblem(
      await estimate(`{"devices":${'['.repeat(10_000)}${']'.repeat(10_000)}}`),
      422,
      'faulty-input',
    )
  })

  test.each([
    ['JSON that breaks off', '{"devices":['],
    ['an empty body', ''],
    ['a __proto__ key', '{"devices":[{"category":"TV"}],"__proto__":{"polluted":true}}'],
    ['a constructor with a prototype', '{"devices":[],"constructor":{"prototype":{"polluted":true}}}'],
  ])('answers 400 to %s', async (_, body) => {
    expectProblem(await estimate(body), 400, 'malformed-body')
    expect(Reflect.get({}, 'polluted')).toBeUndefined()
  })

  test('answers 400 where no body comes at all', async () => {
    expectProblem(await service.send.post('/v1/estimates'), 400, 'malformed-body')
  })

  test.each([
    'text/plain',
    'application/x-www-form-urlencoded',
    'application/xml',
    'multipart/form-data; boundary=x',
  ])('answers 415 to %s and says what it reads', async (type) => {
    const answer = await estimate('devices=1', type)
    expectProblem(answer, 415, 'unsupported-media-type')
    expect(answer.headers['accept-post']).toBe('application/json')
  })

  test('answers 413 to a body above the limit', async () => {
    expectProblem(await estimate(JSON.stringify({ filler: 'x'.repeat(1_048_576) })), 413, 'body-too-large')
  })

  test('answers 404 to a catalogue revision that there is not, and names the newest', async () => {
    const answer = await estimate({ devices: [{ category: 'TV' }], catalogueRevision: 9 })
    expect(expectProblem(answer, 404, 'unknown-revision')['newest']).toBe(1)
  })
})

describe('where the operator gives no estimates without a key', () => {
  let closed: TestApp
  beforeAll(async () => (closed = await testApp({ anonymousEstimates: false })))
  afterAll(() => closed.close())

  test('an estimate is refused with 401 and WWW-Authenticate, whatever its body', async () => {
    const answer = await closed.send
      .post('/v1/estimates')
      .set('content-type', 'application/json')
      .send('{"devices":')
    expectProblem(answer, 401, 'key-required')
    expect(answer.headers['www-authenticate']).toBe('Bearer realm="standby-draw-estimation"')
  })

  test('GraphQL, where a document may hold an estimate, is refused, too', async () => {
    const answer = await closed.send.post('/graphql').send({ query: '{ __typename }' }).expect(401)
    expect(answer.headers['www-authenticate']).toBe('Bearer realm="standby-draw-estimation"')
    expect(answer.body).not.toHaveProperty('data')
  })

  test('the catalogue stays open', async () => {
    await closed.send.get('/v1/categories').expect(200)
  })
})
