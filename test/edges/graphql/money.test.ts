import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { compareTariffs } from '../../../src/useCases/compareTariffs.ts'
import type { TariffComparisonRequest } from '../../../src/core/estimate/tariffComparison.ts'
import { listEmissionFactors } from '../../../src/useCases/listEmissionFactors.ts'
import { listTariffs } from '../../../src/useCases/listTariffs.ts'
import { testApp, type TestApp } from '../../helpers/testApp.ts'
import { answerOf } from './answerOf.ts'
import { ask, refused } from './ask.ts'
import { everyFieldOf } from './everyFieldOf.ts'

let app: TestApp
beforeAll(async () => {
  const seed = await readSeed()
  app = await testApp({ categories: seed.categories, settings: settingsOf(readConfig({}), seed) })
})
afterAll(() => app.close())

test('every field of every tariff is that of the use case', async () => {
  const { tariffs } = await ask(app, `{ tariffs${everyFieldOf('NamedTariff')} }`)
  const { items } = await listTariffs(app.deps, {}, { limit: Infinity })
  expect(tariffs).toEqual(items.map((item) => answerOf({ ...item, changedInRevision: 1 }, 'NamedTariff')))
})

test('emission factors of a year are those of the use case, with its warnings', async () => {
  const query = `{ emissionFactors(year: 2022, kind: AVERAGE)${everyFieldOf('EmissionFactorList')} }`
  const { emissionFactors } = await ask(app, query)
  const list = await listEmissionFactors(app.deps, { year: 2022, kind: 'average' }, { limit: Infinity })
  const items = list.items.map((item) => ({ ...item, changedInRevision: 1 }))
  expect(emissionFactors).toEqual(answerOf({ ...list, items }, 'EmissionFactorList'))
  expect(emissionFactors.warnings.length).toBeGreaterThan(3)
})

test('one tariff and one factor are read by their codes; an unknown code is NOT_FOUND', async () => {
  const answer = await ask(
    app,
    '{ tariff(code: "sample-flat-jpy") { name } emissionFactor(code: "uk-2026") { kind } }',
  )
  expect(answer).toEqual({
    tariff: { name: 'Invented flat price in Japanese yen' },
    emissionFactor: { kind: 'AVERAGE' },
  })
  const { errors } = await refused(
    app,
    '{ tariff(code: "nothing") { name } emissionFactor(code: "nothing") { kind } }',
  )
  expect(errors.map((error: { extensions: { reason: string } }) => error.extensions.reason).sort()).toEqual([
    'unknown-emission-factor',
    'unknown-tariff',
  ])
})

describe('a comparison', () => {
  const QUERY = `query ($input: TariffComparisonInput!) { compareTariffs(input: $input)${everyFieldOf('TariffComparison')} }`

  test('has the figures of the use case, every field of them', async () => {
    const own = {
      currency: 'USD',
      per: 'MONTH',
      blocks: [{ upToKwh: 200, pricePerKwh: 0.1 }, { pricePerKwh: 0.25 }],
    }
    const input = {
      devices: [{ category: 'router' }],
      annualUseKwh: 5000,
      tariffs: [{ code: 'sample-flat-usd' }, { block: own }],
    }
    const request: TariffComparisonRequest = {
      devices: [{ category: 'router' }],
      annualUseKwh: 5000,
      tariffs: ['sample-flat-usd', { ...own, kind: 'block', per: 'month' }],
    }
    const { compareTariffs: answer } = await ask(app, QUERY, { input })
    const value = await compareTariffs(
      app.deps,
      { caller: null, requestId: 'a-request' },
      { raw: request, value: request, faults: [] },
    )
    expect(answer).toEqual(answerOf(value, 'TariffComparison'))
  })

  test('names faults where they stand in the input', async () => {
    const { errors } = await refused(app, QUERY, {
      input: {
        devices: [{ category: 'router' }],
        tariffs: [
          { code: 'nothing' },
          {
            twoPart: {
              currency: 'USD',
              components: [{ flat: { name: 'a', pricePerKwh: -1 } }, { flat: { name: 'b', pricePerKwh: 1 } }],
            },
          },
        ],
      },
    })
    expect(errors[0].extensions.errors.map(({ pointer }: { pointer: string }) => pointer).sort()).toEqual([
      '/tariffs/0/code',
      '/tariffs/1/twoPart/components/0/flat/pricePerKwh',
    ])
  })
})
