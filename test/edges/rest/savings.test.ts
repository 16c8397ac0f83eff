import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import {
  exampleMeasureList,
  exampleSavingsPlan,
  SAVINGS_REQUESTS,
} from '../../../src/edges/rest/savings/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { measureListSchema } from '../../../src/schemas/savingsMeasure.ts'
import { savingsPlanSchema } from '../../../src/schemas/savingsPlan.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  service = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => service.close())

const plan = (body: object) => service.send.post('/v1/savings-plans').send(body)

describe('POST /v1/savings-plans', () => {
  test('takes the household of an estimate as it is, and has its total', async () => {
    const { plan: options, ...household } = SAVINGS_REQUESTS.strip.value
    const answer = await plan({ ...household, plan: options }).expect(200)
    const estimate = await service.send.post('/v1/estimates').send(household).expect(200)
    expect(answer.headers['cache-control']).toBe('no-store')
    expect(savingsPlanSchema.parse(answer.body).total).toEqual(estimate.body.total)
  })

  test.each(Object.entries(SAVINGS_REQUESTS))('answers the example %s', async (_, { value }) => {
    await plan(value).expect(200)
  })

  test('has the answer to the devices of one outlet as its example', async () => {
    expect((await plan(SAVINGS_REQUESTS.strip.value)).body).toEqual(exampleSavingsPlan)
  })

  test('answers the same bytes again', async () => {
    const [one, other] = [await plan(SAVINGS_REQUESTS.strip.value), await plan(SAVINGS_REQUESTS.strip.value)]
    expect(other.text).toBe(one.text)
  })

  test('carries the cautions on strips, on what must stay powered and on whose word comes first', async () => {
    const { cautions } = savingsPlanSchema.parse((await plan(SAVINGS_REQUESTS.smallest.value)).body)
    expect(cautions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['power-strip-load', 'never-switch-off', 'defer-to-manufacturer']),
    )
  })

  test('names every fault of household and plan at once', async () => {
    const answer = await plan({
      devices: [{ category: 'televsion' }],
      plan: {
        budget: -1,
        color: 'red',
        measures: [{ code: 'magic' }, { code: 'strip-four', persistence: 2 }],
        devices: [{ deviceId: 'tv', ratedWatts: 5 }],
      },
    })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
      '/devices/0/category unknown-category',
      '/plan/budget too-small',
      '/plan/color unknown-field',
      '/plan/devices/0/deviceId unknown-device',
      '/plan/measures/0/code unknown-code',
      '/plan/measures/1/persistence too-big',
    ])
  })

  test('refuses what it could not compare exactly, and says what to do', async () => {
    // Prices of 1, 2, 4, 8 … cents, each for a saving in proportion: a million sums, none of which is needless.
    const powers = Array.from({ length: 20 }, (_, i) => 2 ** i)
    const devices = powers.map((power) => ({
      id: `d${power}`,
      category: 'television',
      modes: [{ mode: 'standby', hoursPerWeek: 100, reading: { kind: 'power', watts: power / 10_000 } }],
    }))
    const measures = powers.map((power) => ({
      code: 'switch-at-outlet',
      persistence: 1,
      devices: [`d${power}`],
      price: power / 100,
    }))
    const answer = await plan({ devices, plan: { measures, budget: 5000 } })
    expectProblem(answer, 422, 'plan-too-large')
  })

  test('asks for a key where the operator does', async () => {
    const closed = await testApp({ anonymousEstimates: false })
    const answer = await closed.send.post('/v1/savings-plans').send(SAVINGS_REQUESTS.smallest.value)
    expectProblem(answer, 401, 'key-required')
    await closed.close()
  })
})

describe('GET /v1/savings-measures', () => {
  test('lists all in the order in which plans offer them', async () => {
    const answer = await service.send.get('/v1/savings-measures').expect(200)
    const { items } = measureListSchema.parse(answer.body)
    expect(items.map(({ code }) => code)).toEqual([...service.deps.settings.measures.keys()])
  })

  test('gives those of one kind, and refuses an unknown one', async () => {
    const answer = await service.send.get('/v1/savings-measures?kind=timer').expect(200)
    expect(answer.body).toEqual(exampleMeasureList)
    expectProblem(await service.send.get('/v1/savings-measures?kind=magic'), 400, 'faulty-query')
  })
})
