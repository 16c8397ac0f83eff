import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { exampleStockEstimate, POPULATION_REQUESTS } from '../../../src/edges/rest/population/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { stockEstimateSchema } from '../../../src/schemas/population.ts'
import { surveyEstimateSchema } from '../../../src/schemas/survey.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  service = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => service.close())

const send = (body: object) => service.send.post('/v1/population-estimates').send(body)
const refused = async (body: object) => faultsOf(expectProblem(await send(body), 422, 'faulty-input'))
const apistrat = {
  method: 'survey',
  unit: 'pupils',
  coverageProbability: 0.95,
  strata: [
    { name: 'E', homes: 4421, sample: { homes: 100, mean: 416.78, variance: 27576.880404 } },
    { name: 'H', homes: 755, sample: { homes: 50, mean: 1320.7, variance: 450339.928571 } },
    { name: 'M', homes: 1018, sample: { homes: 50, mean: 832.48, variance: 156307.275102 } },
  ],
}
const router = { category: 'router', ownership: 0.9 }

describe('POST /v1/population-estimates', () => {
  test('keeps all digits that a published survey prints (R survey, apistrat)', async () => {
    const answer = await send(apistrat).expect(200)
    expect(answer.headers['cache-control']).toBe('no-store')
    const { total, unit, degreesOfFreedom } = surveyEstimateSchema.parse(answer.body)
    expect(total.expected).toBe(3687177.52)
    expect(total.standardError).toBeCloseTo(114641.7152, 4)
    expect([unit, degreesOfFreedom]).toEqual(['pupils', 197])
  })

  test('takes homes up to ten thousand million, and the operator’s price and factor', async () => {
    const answer = await send({
      method: 'stock',
      items: [router],
      ladder: [{ name: 'everywhere', homes: 10_000_000_000 }],
    }).expect(200)
    const { ladder, used, sampleData } = stockEstimateSchema.parse(answer.body)
    expect(ladder[0]!.energyGwhPerYear.expected / 10_000).toBeCloseTo(
      ladder[0]!.perHome.energyKwhPerYear.expected,
      3,
    )
    expect(used.priceSource).toContain('sample-flat-eur')
    expect(used.emissionFactorSource).toContain('world-2023')
    expect(sampleData).toBe(true)
  })

  test('gives the same bytes for the same request', async () => {
    const { value } = POPULATION_REQUESTS.stock
    const [first, second] = [await send(value), await send(value)]
    expect(first.text).toBe(second.text)
  })

  test.each(Object.entries(POPULATION_REQUESTS))('answers the example %s', async (_, { value }) => {
    await send(value).expect(200)
  })

  test('has the answer to the stock as its example', async () => {
    expect((await send(POPULATION_REQUESTS.stock.value)).body).toEqual(exampleStockEstimate)
  })
})

describe('a faulty population', () => {
  test('is refused where its method is unknown', async () => {
    expect(await refused({ method: 'guess' })).toEqual(['/method invalid-union'])
    expect(await refused({})).toEqual(['/method required'])
  })

  test('of fewer than two sampled homes is refused, with what to do', async () => {
    const [, ...others] = apistrat.strata
    const first = { name: 'E', homes: 4421, sample: { homes: 1, mean: 416.78, variance: 0 } }
    const problem = expectProblem(
      await send({ ...apistrat, strata: [first, ...others] }),
      422,
      'faulty-input',
    )
    expect(faultsOf(problem)).toEqual(['/strata/0/sample/homes too-few-sampled'])
    expect(problem['detail']).toContain(
      'Put it together with a stratum that is like it, or sample more of it.',
    )
  })

  test('of more sampled homes than there are is refused', async () => {
    const strata = [{ name: 'E', homes: 40, sample: { homes: 41, mean: 1, variance: 1 } }]
    expect(await refused({ method: 'survey', strata })).toEqual([
      '/strata/0/sample/homes more-than-population',
    ])
  })

  test('is told faults of shape, of the trade and unknown fields all at once', async () => {
    const body = {
      method: 'stock',
      items: [
        { category: 'ruoter', ownership: { low: 0.9, typical: 0.5, high: 1.2 } },
        { name: 'Invented', drawW: { low: 3, typical: 2, high: 4 }, ownership: 0.5, colour: 'red' },
      ],
      ladder: [
        { name: 'a', homes: 0 },
        { name: 'a', homes: 1.5 },
      ],
      cutShare: 30,
    }
    expect(await refused(body)).toEqual([
      '/cutShare too-big',
      '/items/0/category unknown-category',
      '/items/0/ownership/high too-big',
      '/items/0/ownership/low range-out-of-order',
      '/items/1/colour unknown-field',
      '/items/1/drawW/low range-out-of-order',
      '/items/1/hoursPerWeek required',
      '/ladder/0/homes too-small',
      '/ladder/1/homes invalid-type',
      '/ladder/1/name name-twice',
    ])
  })

  test('of a revision that is not there is answered with the newest', async () => {
    const body = { method: 'stock', items: [router], ladder: [{ name: 'a', homes: 1 }], catalogueRevision: 9 }
    expect(expectProblem(await send(body), 404, 'unknown-revision')['newest']).toBe(1)
  })

  test('is refused without a body, and without a key where the operator asks for one', async () => {
    expectProblem(await service.send.post('/v1/population-estimates'), 400, 'malformed-body')
    const closed = await testApp({ anonymousEstimates: false })
    const answer = await closed.send.post('/v1/population-estimates').send(apistrat)
    expectProblem(answer, 401, 'key-required')
    await closed.close()
  })
})
