import type { Response } from 'supertest'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import {
  exampleCautionList,
  exampleLimitCheck,
  exampleLimitList,
  LIMIT_REQUESTS,
} from '../../../src/edges/rest/limits/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { cautionListSchema } from '../../../src/schemas/caution.ts'
import { limitListSchema } from '../../../src/schemas/limit.ts'
import { limitAnswerSchema } from '../../../src/schemas/limitCheck.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  service = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => service.close())

const check = (body: object) => service.send.post('/v1/limits/check').send(body)
const refused = async (body: object) => faultsOf(expectProblem(await check(body), 422, 'faulty-input'))

describe('GET /v1/limits', () => {
  const list = async (query = '') =>
    limitListSchema.parse((await service.send.get(`/v1/limits${query}`).expect(200)).body)

  test('walks all limits in pages, in the order of their codes, each once', async () => {
    const codes: string[] = []
    let address: string | undefined = '/v1/limits?limit=7'
    while (address) {
      const answer: Response = await service.send.get(address).expect(200)
      codes.push(...limitListSchema.parse(answer.body).items.map(({ code }) => code))
      address = /<([^>]+)>/.exec(answer.headers['link'] ?? '')?.[1]
    }
    expect(codes).toEqual([...codes].sort())
    expect(codes).toEqual((await list('?limit=200')).items.map(({ code }) => code))
    expect(codes.length).toBeGreaterThan(40)
  })

  test('filters by place, purpose, mode and day', async () => {
    const codes = (query: string) => list(query).then(({ items }) => items.map(({ code }) => code))
    expect(await codes('?jurisdiction=EU&mode=standby&placedOnMarket=2026-01-01')).toEqual([
      'eu-2025-standby',
      'eu-2025-standby-display',
    ])
    expect(await codes('?purpose=purchasing')).toEqual(['us-2001-purchasing-standby'])
  })

  test('refuses an unknown parameter, a day that is none and a foreign cursor', async () => {
    const answer = await service.send.get('/v1/limits?placedOnMarket=2026&country=EU')
    expect(faultsOf(expectProblem(answer, 400, 'faulty-query'))).toEqual([
      'query /country unknown-field',
      'query /placedOnMarket invalid-format',
    ])
    expectProblem(await service.send.get('/v1/limits?cursor=abc'), 400, 'faulty-cursor')
  })

  test('has as its example what it answers', async () => {
    const answer = await service.send.get('/v1/limits?jurisdiction=EU&mode=off&placedOnMarket=2028-01-01')
    expect(answer.body).toEqual(exampleLimitList)
  })
})

describe('POST /v1/limits/check', () => {
  test('holds a reading against the limit of its year', async () => {
    const at = async (placedOnMarket: string) => {
      const answer = await check({ ...LIMIT_REQUESTS.television.value, placedOnMarket }).expect(200)
      expect(answer.headers['cache-control']).toBe('no-store')
      const { verdict, compared, notice } = limitAnswerSchema.parse(answer.body)
      expect(notice).toContain('no compliance test')
      return [verdict, ...compared.map(({ limit }) => limit.limitW)]
    }
    expect(await at('2011')).toEqual(['below', 1])
    expect(await at('2018')).toEqual(['below', 0.5])
    expect(await at('2009')).toEqual(['cannot-be-told'])
  })

  test('names every fault at once', async () => {
    expect(
      await refused({
        reading: { kind: 'power', watts: -1, meterId: 'm' },
        mode: 'sleep',
        placedOnMarket: '20',
      }),
    ).toEqual([
      '/jurisdiction required',
      '/mode invalid-value',
      '/placedOnMarket invalid-format',
      '/reading/meterId unknown-meter',
      '/reading/watts too-small',
    ])
  })

  test.each(Object.entries(LIMIT_REQUESTS))('answers the example %s', async (_, { value }) => {
    await check(value).expect(200)
  })

  test('has the answer to the television as its example', async () => {
    expect((await check(LIMIT_REQUESTS.television.value)).body).toEqual(exampleLimitCheck)
  })

  test('asks for a key where the operator does', async () => {
    const closed = await testApp({ anonymousEstimates: false })
    expectProblem(
      await closed.send.post('/v1/limits/check').send(LIMIT_REQUESTS.charger.value),
      401,
      'key-required',
    )
    await closed.close()
  })
})

describe('GET /v1/cautions', () => {
  test('lists all in the order in which they are shown, with source and mark', async () => {
    const { items } = cautionListSchema.parse((await service.send.get('/v1/cautions').expect(200)).body)
    expect(items[0]).toMatchObject({ code: 'no-open-cords-or-panels', mark: null })
    expect(items.find(({ code }) => code === 'power-strip-load')?.mark).toBe('V2')
  })

  test('gives those of one kind of answer, and refuses an unknown one', async () => {
    const answer = await service.send.get('/v1/cautions?appliesTo=reading-declared').expect(200)
    expect(answer.body).toEqual(exampleCautionList)
    expectProblem(await service.send.get('/v1/cautions?appliesTo=moon'), 400, 'faulty-query')
  })
})
