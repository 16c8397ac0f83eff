import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { POPULATION_REQUESTS } from '../../../src/edges/rest/population/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

const STOCK = `query ($input: StockInput!) { populationOfStock(input: $input)${everyFieldOf('StockEstimate')} }`
const SURVEY = `query ($input: SurveyInput!) { populationOfSurvey(input: $input)${everyFieldOf('SurveyEstimate')} }`

let app: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  app = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => app.close())

const rest = async (body: object) => (await app.send.post('/v1/population-estimates').send(body)).body
const faultsOf = async (query: string, input: object) => {
  const { errors } = await refused(app, query, { input })
  expect(errors[0].extensions.code).toBe('BAD_USER_INPUT')
  return errors[0].extensions.errors.map(
    ({ pointer, code }: { pointer: string; code: string }) => `${pointer} ${code}`,
  )
}

/** REST's shape without what GraphQL has types for. */
const without = <T extends { readonly method: string }>(body: T): Omit<T, 'method'> =>
  Object.fromEntries(Object.entries(body).filter(([name]) => name !== 'method')) as Omit<T, 'method'>

describe('populationOfStock', () => {
  const { items, ...others } = without(POPULATION_REQUESTS.stock.value)
  const input = {
    ...others,
    items: items.map((item) => ({
      ...item,
      ownership: typeof item.ownership === 'number' ? { exact: item.ownership } : { range: item.ownership },
    })),
  }

  test('has the figures of REST, every field of them', async () => {
    const { populationOfStock } = await ask(app, STOCK, { input })
    expect(populationOfStock).toEqual(answerOf(await rest(POPULATION_REQUESTS.stock.value), 'StockEstimate'))
  })

  test('takes modes, a null for what is left out, and more homes than an Int holds', async () => {
    const item = {
      category: 'television',
      ownership: { exact: 1 },
      modes: [{ mode: 'STANDBY', hoursPerWeek: 10 }],
      name: null,
      countPerOwner: null,
    }
    const ladder = [{ name: 'everywhere', homes: 10_000_000_000 }]
    const { populationOfStock } = await ask(app, STOCK, { input: { items: [item], ladder, price: null } })
    const body = {
      method: 'stock',
      items: [{ category: 'television', ownership: 1, modes: [{ mode: 'standby', hoursPerWeek: 10 }] }],
      ladder,
    }
    expect(populationOfStock).toEqual(answerOf(await rest(body), 'StockEstimate'))
    expect(populationOfStock.ladder[0].homes).toBe(10_000_000_000)
  })

  test('names every fault at once, at the paths of its input', async () => {
    const faulty = {
      items: [{ category: 'ruoter', ownership: { range: { low: 0.9, typical: 0.5, high: 2 } } }],
      ladder: [{ name: 'a', homes: 1.5 }],
    }
    expect((await faultsOf(STOCK, faulty)).sort()).toEqual([
      '/items/0/category unknown-category',
      '/items/0/ownership/range/high too-big',
      '/items/0/ownership/range/low range-out-of-order',
      '/ladder/0/homes invalid-type',
    ])
  })
})

describe('populationOfSurvey', () => {
  test.each(['survey', 'clusters'] as const)('has the figures of REST for %s, every field', async (name) => {
    const { value } = POPULATION_REQUESTS[name]
    const { populationOfSurvey } = await ask(app, SURVEY, { input: without(value) })
    expect(populationOfSurvey).toEqual(answerOf(await rest(value), 'SurveyEstimate'))
  })

  test('has the ratio estimate in the form that was asked for', async () => {
    const body = {
      strata: [{ name: 'all', homes: 30 }],
      homes: [
        { value: 2, auxiliary: 1 },
        { value: 5, auxiliary: 2 },
        { value: 9, auxiliary: 4 },
      ],
    }
    const ratio = { auxiliaryTotal: 140, standardErrorForm: 'without-mean-factor' }
    const { populationOfSurvey } = await ask(app, SURVEY, {
      input: { ...body, ratio: { ...ratio, standardErrorForm: 'WITHOUT_MEAN_FACTOR' } },
    })
    expect(populationOfSurvey).toEqual(
      answerOf(await rest({ method: 'survey', ...body, ratio }), 'SurveyEstimate'),
    )
  })

  test('names every fault at once', async () => {
    const strata = [{ name: 'a', homes: 3, sample: { homes: 1, mean: 2, variance: -1 } }]
    expect((await faultsOf(SURVEY, { strata })).sort()).toEqual([
      '/strata/0/sample/homes too-few-sampled',
      '/strata/0/sample/variance too-small',
    ])
  })
})
