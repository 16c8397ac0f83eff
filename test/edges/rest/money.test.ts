import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import {
  COMPARISON_REQUESTS,
  exampleComparison,
  exampleEmissionFactor,
  exampleEmissionFactorList,
  exampleTariff,
  exampleTariffList,
} from '../../../src/edges/rest/money/examples.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { emissionFactorListSchema } from '../../../src/schemas/emissionFactor.ts'
import { estimateSchema } from '../../../src/schemas/estimate.ts'
import { tariffListSchema } from '../../../src/schemas/tariff.ts'
import { tariffComparisonSchema } from '../../../src/schemas/tariffComparison.ts'
import { expectProblem, faultsOf } from '../../helpers/expectProblem.ts'
import { type TestApp, testApp } from '../../helpers/testApp.ts'

let service: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  service = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => service.close())

const get = (path: string) => service.send.get(path)
const post = (path: string, body: object) => service.send.post(path).send(body)

describe('the examples', () => {
  test.each([
    ['/v1/tariffs/sample-block-yearly-eur', exampleTariff],
    ['/v1/tariffs?currency=KWD', exampleTariffList],
    ['/v1/emission-factors/uk-2026', exampleEmissionFactor],
    ['/v1/emission-factors?region=uk&year=2030', exampleEmissionFactorList],
  ])('%s is what it answers', async (path, example) => {
    expect((await get(path).expect(200)).body).toEqual(example)
  })

  test('the comparison is the answer to its request', async () => {
    const { body } = await post('/v1/tariff-comparisons', COMPARISON_REQUESTS.two.value).expect(200)
    expect(body).toEqual(exampleComparison)
  })
})

describe('lists', () => {
  test.each(['/v1/tariffs', '/v1/emission-factors'])(
    '%s is walked by its links, each entry once, in order',
    async (path) => {
      const codes: string[] = []
      let next: string | undefined = `${path}?limit=7`
      while (next) {
        const answer: { headers: Record<string, string>; body: { items: { code: string }[] } } =
          await get(next).expect(200)
        codes.push(...answer.body.items.map(({ code }) => code))
        next = /<([^>]+)>/.exec(answer.headers['link'] ?? '')?.[1]
      }
      expect(codes.length).toBeGreaterThan(14)
      expect(codes).toEqual([...new Set(codes)].sort())
    },
  )

  test('of emission factors can be narrowed to a region, a year and a kind', async () => {
    const { items, warnings } = emissionFactorListSchema.parse(
      (await get('/v1/emission-factors?kind=marginal&year=2022&limit=200').expect(200)).body,
    )
    expect(items.map(({ regionCode }) => regionCode)).toEqual(['us-akgd', 'us-akms', 'us-aznm'])
    expect(warnings).toEqual([])
  })

  test('of tariffs can be narrowed to a currency', async () => {
    const { items } = tariffListSchema.parse((await get('/v1/tariffs?currency=USD').expect(200)).body)
    expect(new Set(items.map(({ tariff }) => tariff.currency))).toEqual(new Set(['USD']))
    expect(items.length).toBeGreaterThan(2)
  })

  test('refuse a cursor of another list, and a parameter that there is not', async () => {
    const { nextCursor } = (await get('/v1/tariffs?limit=1')).body
    expectProblem(await get(`/v1/emission-factors?cursor=${nextCursor}`), 400, 'faulty-cursor')
    expect(faultsOf(expectProblem(await get('/v1/tariffs?validOn=today&x=1'), 400, 'faulty-query'))).toEqual([
      'query /validOn invalid-format',
      'query /x unknown-field',
    ])
  })
})

describe('an unknown code', () => {
  test.each([
    ['/v1/tariffs/nothing', 'unknown-tariff'],
    ['/v1/emission-factors/nothing', 'unknown-emission-factor'],
  ] as const)('at %s is answered with those that there are', async (path, code) => {
    const problem = expectProblem(await get(path), 404, code)
    expect((problem['known'] as string[]).length).toBeGreaterThan(10)
  })
})

const ROUTER = {
  category: 'router',
  modes: [{ mode: 'networked-standby', hoursPerWeek: 168, reading: { kind: 'power', watts: 8 } }],
}
const RISING = {
  kind: 'block',
  currency: 'USD',
  per: 'month',
  blocks: [{ upToKwh: 200, pricePerKwh: 0.1 }, { pricePerKwh: 0.25 }],
}
const estimateWith = async (fields: object) =>
  estimateSchema.parse((await post('/v1/estimates', { devices: [ROUTER], ...fields }).expect(200)).body)

describe('an estimate', () => {
  test('prices standby at the margin of the household’s annual use', async () => {
    const { total, used } = await estimateWith({ tariff: RISING, annualUseKwh: 6000 })
    expect(used.standbyPricePerKwh).toBe(0.25)
    expect(total.costPerYear.expected).toBe(17.52)
    expect(total.costPerYear.amounts.expected).toBe('17.52')
    expect(used.priceBasis).toMatch(/margin.*2025, a year of 365 days/)
  })

  test('goes by the months where they are given: the same use a year in other months costs another sum', async () => {
    const summer = [0, 0, 0, 0, 0, 3000, 3000, 0, 0, 0, 0, 0]
    const { total, used } = await estimateWith({ tariff: RISING, monthlyUseKwh: summer })
    expect(used.annualUseKwh).toBe(6000)
    // Two months at the margin of 0.25, ten from the first block on.
    expect(total.costPerYear.expected).toBeCloseTo((70.08 * (61 * 0.25 + 304 * 0.1)) / 365, 4)
  })

  test('says that the annual use is missing where blocks need it, and gives the range', async () => {
    const { total, warnings } = await estimateWith({ tariff: RISING })
    expect(warnings.map(({ code }) => code)).toContain('annual-use-unknown')
    expect(total.costPerYear.low).toBeLessThan(70.08 * 0.11)
    expect(total.costPerYear.high).toBeGreaterThan(70.08 * 0.24)
  })

  test('takes the stated hours of a mode', async () => {
    const night = {
      category: 'router',
      modes: [
        {
          mode: 'networked-standby',
          hoursPerWeek: 21,
          schedule: [{ from: '00:00', to: '03:00' }],
          reading: { kind: 'power', watts: 1000 },
        },
      ],
    }
    const { used, total } = await estimateWith({ tariffCode: 'sample-time-of-use-eur', devices: [night] })
    expect(total.costPerYear.expected).toBeCloseTo(1095 * 0.2, 6)
    expect(used.standbyPricePerKwh).toBeGreaterThan(0.25)
  })

  test('names every fault of a tariff at once', async () => {
    const answer = await post('/v1/estimates', {
      devices: [
        {
          category: 'router',
          modes: [
            {
              mode: 'networked-standby',
              hoursPerWeek: 9,
              schedule: [{ from: '00:00', to: '01:00' }],
              reading: { kind: 'power', watts: 1 },
            },
          ],
        },
      ],
      annualUseKwh: 1,
      monthlyUseKwh: Array.from({ length: 12 }, () => 1),
      emissionFactorFor: { region: 'atlantis' },
      tariff: {
        kind: 'time-of-use',
        currency: 'EUR',
        timeZone: 'Europe/Nowhere',
        bands: [
          {
            name: 'a',
            pricePerKwh: 1,
            hours: [{ from: '22:00', to: '06:00' }],
            seasons: [{ from: '02-30', to: '03-01' }],
          },
        ],
        otherwisePricePerKwh: 1,
        holidays: ['2024-12-25'],
        taxes: [{ name: 'tax', percent: 10, on: ['network'] }],
        validFrom: '2025-02-01',
        validTo: '2025-01-01',
      },
    })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual(
      [
        '/devices/0/modes/0/schedule hours-exceed-schedule',
        '/emissionFactorFor/region unknown-region',
        '/monthlyUseKwh given-twice',
        '/tariff/bands/0/hours/0/to hours-out-of-order',
        '/tariff/bands/0/seasons/0/from no-such-date',
        '/tariff/holidays holidays-outside-year',
        '/tariff/taxes/0/on/0 unknown-line',
        '/tariff/timeZone unknown-time-zone',
        '/tariff/validTo dates-out-of-order',
      ].sort(),
    )
  })

  test.each(['export', 'demand'])('refuses a tariff of kind %s, and says why', async (kind) => {
    const answer = await post('/v1/estimates', { devices: [ROUTER], tariff: { kind, currency: 'EUR' } })
    const problem = expectProblem(answer, 422, 'faulty-input')
    expect(faultsOf(problem)).toEqual(['/tariff/kind invalid-union', '/tariff/kind not-priced'])
    expect(JSON.stringify(problem['errors'])).toMatch(/fed into the grid.*peak demand.*not priced here/)
  })

  test('refuses a currency that is none', async () => {
    const answer = await post('/v1/estimates', {
      devices: [ROUTER],
      tariff: { kind: 'flat', currency: 'XQZ', pricePerKwh: 1 },
    })
    expect(faultsOf(expectProblem(answer, 422, 'faulty-input'))).toEqual([
      '/tariff/currency unknown-currency',
    ])
  })
})

describe('a comparison', () => {
  const compare = (body: object) =>
    post('/v1/tariff-comparisons', { devices: [{ category: 'router' }], ...body })

  test('gives what an estimate under each tariff gives, and differences that are surer than their parts', async () => {
    const tariffs = ['sample-flat-usd', RISING, 'sample-two-part-usd']
    const { body } = await compare({ tariffs, annualUseKwh: 6000 }).expect(200)
    const comparison = tariffComparisonSchema.parse(body)
    const { total } = await estimateWith({
      devices: [{ category: 'router' }],
      tariff: RISING,
      annualUseKwh: 6000,
    })
    const [first, second, third] = comparison.tariffs
    expect(second!.costPerYear).toEqual(total.costPerYear)
    expect(second!.differencePerYear.expected).toBeCloseTo(
      total.costPerYear.expected - first!.costPerYear.expected,
      3,
    )
    const width = ({ low, high }: { low: number; high: number }) => high - low
    expect(width(second!.differencePerYear)).toBeLessThan(width(second!.costPerYear) / 3)
    expect(third!.annualBill).toMatch(/^\d+\.\d\d$/)
    expect(second!.tariffCode).toBeNull()
  })

  test('refuses unknown codes, several currencies, a tariff of its own and a list of one, all at once', async () => {
    const faults = faultsOf(
      expectProblem(
        await compare({ tariffs: ['sample-flat-usd', 'nothing', 'sample-flat-eur'], tariff: RISING }),
        422,
        'faulty-input',
      ),
    )
    expect(faults).toEqual([
      '/tariff unknown-field',
      '/tariffs/1 unknown-code',
      '/tariffs/2 mixed-currencies',
    ])
    expect(
      faultsOf(expectProblem(await compare({ tariffs: ['sample-flat-usd'] }), 422, 'faulty-input')),
    ).toEqual(['/tariffs too-small'])
  })
})
