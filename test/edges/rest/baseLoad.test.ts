import { readFileSync } from 'node:fs'
import { request as httpRequest } from 'node:http'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { BASE_LOAD_REQUESTS, exampleBaseLoadEvaluation } from '../../../src/edges/rest/baseLoadExamples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

const LIMIT = 60_000
let service: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  const settings = settingsOf(readConfig({}), seed)
  service = await testApp({ categories: seed.categories, settings, baseLoadLimitBytes: LIMIT })
})
afterAll(() => service.close())

const PATH = '/v1/base-load/evaluate'
const sample = (name: string) =>
  readFileSync(new URL(`../../core/baseLoad/samples/${name}`, import.meta.url), 'utf8')
const send = (type: string, body: string, query = '') =>
  service.send.post(`${PATH}${query}`).set('Content-Type', type).send(body)
const json = (body: object, query = '') => service.send.post(`${PATH}${query}`).send(body)
const week = BASE_LOAD_REQUESTS.hourly.value
const dates = (from: string, to: string) => `daysAway=${from}/${to}`

describe('the three forms', () => {
  test('JSON: the example is answered as the API description shows', async () => {
    const { body, headers } = await json(week).expect(200)
    expect(body).toEqual(exampleBaseLoadEvaluation)
    expect(headers['cache-control']).toBe('no-store')
  })

  test.each(['application/xml', 'application/atom+xml', 'application/xml; charset=utf-8'])(
    'ESPI as %s',
    async (type) => {
      const { body } = await send(type, sample('two-weeks-in-spring.xml')).expect(200)
      expect(body.data).toMatchObject({ form: 'espi', completeDays: 13, duplicates: 24 })
    },
  )

  test('CSV, with its options in the query', async () => {
    const query = `?timeZone=Europe/Berlin&estimator=percentile-10&coverageProbability=0.8&nightFromHour=2&nightToHour=4&${dates('2024-10-23', '2024-10-24')}&inventoryExpectedW=20&inventoryLowW=10&inventoryHighW=35`
    const { body } = await send('text/csv', sample('ten-days-in-autumn.csv'), query).expect(200)
    expect(body).toMatchObject({
      coverageProbability: 0.8,
      night: { fromHour: 2, toHour: 4 },
      data: { form: 'csv', timeZone: 'Europe/Berlin' },
      chosen: { estimator: 'percentile-10', days: 8 },
      daysAway: { named: [{ from: '2024-10-23', to: '2024-10-24' }] },
      inventory: { from: 'request', powerW: { expected: 20, low: 10, high: 35 } },
    })
  })

  test('the same readings give the same figures in all forms', async () => {
    const [block] = week.blocks
    const start = Date.parse(block!.start) / 1000
    const csv = block!.wattHours.map(
      (value, i) => `${new Date((start + i * 3600) * 1000).toISOString().slice(0, 19)}Z,3600,${value}`,
    )
    const readings = block!.wattHours.map(
      (value, i) =>
        `<IntervalReading><timePeriod><duration>3600</duration><start>${start + i * 3600}</start></timePeriod><value>${value}</value></IntervalReading>`,
    )
    const xml = `<f><e:ReadingType xmlns:e="http://naesb.org/espi"><e:uom>72</e:uom></e:ReadingType><IntervalBlock xmlns="http://naesb.org/espi">${readings.join('')}</IntervalBlock></f>`
    const answers = [
      await json({ ...week, inventory: undefined }).expect(200),
      await send('text/csv', `start,durationSeconds,Wh\n${csv.join('\n')}`, '?timeZone=Europe/Berlin').expect(
        200,
      ),
      await send('application/xml', xml, '?timeZone=Europe/Berlin').expect(200),
    ].map(({ body }) => [body.chosen, body.estimators])
    expect(answers[1]).toEqual(answers[0])
    expect(answers[2]).toEqual(answers[0])
  })

  test('a null in JSON is a gap', async () => {
    const [block] = week.blocks
    const wattHours = block!.wattHours.map((value, i) => (i === 30 ? null : value))
    const { body } = await json({ ...week, blocks: [{ ...block, wattHours }] }).expect(200)
    expect(body.data).toMatchObject({ readings: 191, gaps: 1, longestGapHours: 1 })
  })
})

describe('refusals', () => {
  test('faults of JSON are named all at once, those of the inventory too', async () => {
    const bad = {
      timeZone: 'Europe/Nowhere',
      nightFromHour: 30,
      blocks: [{ start: '2025-02-03', intervalSeconds: 0, wattHours: [1], watts: [1] }],
      inventory: { devices: [{ category: 'no such thing at all' }] },
      more: 1,
    }
    expect(faultsOf(expectProblem(await json(bad), 422, 'faulty-input'))).toEqual([
      '/blocks/0 either-or',
      '/blocks/0/intervalSeconds too-small',
      '/blocks/0/start invalid-time',
      '/inventory/devices/0/category unknown-category',
      '/more unknown-field',
      '/nightFromHour too-big',
      '/timeZone unknown-time-zone',
    ])
  })

  test('the rules beyond the shape are named by pointer', async () => {
    const bad = {
      ...week,
      nightFromHour: 5,
      nightToHour: 5,
      daysAway: [{ from: '2025-02-05', to: '2025-02-04' }],
      inventoryPowerW: { expected: 5, low: 6, high: 7 },
    }
    expect(faultsOf(expectProblem(await json(bad), 422, 'faulty-input'))).toEqual([
      '/daysAway/0/to range-out-of-order',
      '/inventoryPowerW either-or',
      '/inventoryPowerW range-out-of-order',
      '/nightToHour range-out-of-order',
    ])
  })

  test('with JSON an option in the query is a fault', async () => {
    const problem = expectProblem(await json(week, '?timeZone=UTC'), 400, 'faulty-query')
    expect(faultsOf(problem)).toEqual(['query /timeZone belongs-in-body'])
  })

  test('faults of the query say so', async () => {
    const csv = sample('ten-days-in-autumn.csv')
    const shape = await send('text/csv', csv, '?timeZone=Nowhere&nightFromHour=late&daysAway=soon&colour=red')
    expect(faultsOf(expectProblem(shape, 400, 'faulty-query'))).toEqual([
      'query /colour unknown-field',
      'query /daysAway/0/from invalid-date',
      'query /daysAway/0/to invalid-date',
      'query /nightFromHour invalid-format',
      'query /timeZone unknown-time-zone',
    ])
    const rules = await send('text/csv', csv, '?timeZone=Europe/Berlin&nightFromHour=6&inventoryLowW=1')
    expect(faultsOf(expectProblem(rules, 400, 'faulty-query'))).toEqual([
      'query /inventoryExpectedW required',
      'query /nightToHour range-out-of-order',
    ])
  })

  test('faults of a file are named by line', async () => {
    const bad = sample('ten-days-in-autumn.csv')
      .replace('2024-10-21 00:30', 'half past')
      .replace('\n2024-10-21 02:00;', '\n2024-10-21 02:00;;')
    const problem = expectProblem(await send('text/csv', bad, '?timeZone=Europe/Berlin'), 422, 'faulty-input')
    expect(faultsOf(problem)).toEqual(['/lines/3 invalid-time', '/lines/6 wrong-cell-count'])
  })

  test('too few days are refused, with what to do', async () => {
    const [block] = week.blocks
    const short = { ...week, blocks: [{ ...block, wattHours: block!.wattHours.slice(0, 100) }] }
    const { detail } = expectProblem(await json(short), 422, 'faulty-input')
    expect(detail).toContain('at least 7 are needed. Send a longer period')
  })

  test.each(['text/plain', 'application/pdf', 'multipart/form-data'])('%s is not read', async (type) => {
    const response = await send(type, 'x')
    expectProblem(response, 415, 'unsupported-media-type')
    expect(response.headers['accept-post']).toContain('application/atom+xml')
  })

  test('a request without a body is refused', async () => {
    expectProblem(await service.send.post(PATH), 400, 'malformed-body')
  })

  test('a DOCTYPE is refused, and a file that ends in the middle', async () => {
    const doctype = await send('application/xml', '<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>')
    expect(faultsOf(expectProblem(doctype, 422, 'faulty-input'))).toEqual(['/lines/1 doctype-refused'])
    const cut = await send('application/xml', sample('two-weeks-in-spring.xml').slice(0, 20_000))
    expect(faultsOf(expectProblem(cut, 422, 'faulty-input'))[0]).toMatch(/not-well-formed$/)
  })
})

/** Sends pieces without a length, and gives the status of the answer. */
const statusOfStream = (pieces: number, piece: string) =>
  new Promise<number | undefined>((resolve, reject) => {
    const request = httpRequest(`${service.url}${PATH}?timeZone=UTC`, {
      method: 'POST',
      headers: { 'content-type': 'text/csv' },
    })
    request.on('response', (response) => {
      response.resume()
      response.on('end', () => resolve(response.statusCode))
    })
    request.on('error', reject)
    for (let i = 0; i < pieces; i++) request.write(piece)
    request.end()
  })

describe('the limit of the body', () => {
  test('is the same for JSON and for files, with a length and without', async () => {
    expectProblem(await json({ ...week, more: 'x'.repeat(LIMIT) }), 413, 'body-too-large')
    expectProblem(
      await send('text/csv', `start,Wh\n${'\n'.repeat(LIMIT)}`, '?timeZone=UTC'),
      413,
      'body-too-large',
    )
    expect(await statusOfStream(20, '\n'.repeat(LIMIT / 10))).toBe(413)
  })

  test('a file that is refused early is answered, though there is more of it', async () => {
    expect(await statusOfStream(8, `what,is,this\n${'1,2,3\n'.repeat(1_000)}`)).toBe(422)
  })
})
