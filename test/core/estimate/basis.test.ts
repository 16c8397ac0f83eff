import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { NamedEmissionFactor } from '../../../src/core/emissions/emissionFactor.ts'
import { basisOf, settingsOfBasis } from '../../../src/core/estimate/basis.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { EstimateSettings } from '../../../src/core/estimate/settings.ts'
import type { Household } from '../../../src/core/inventory/household.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const grid = testSettings.emissionFactors.get('grid')!
const factor = (code: string, regionCode: string, year: number): [string, NamedEmissionFactor] => [
  code,
  { ...grid, code, regionCode, year },
]
const settings: EstimateSettings = {
  ...testSettings,
  emissionFactors: new Map([
    ['grid', grid],
    factor('north-2020', 'north', 2020),
    factor('north-2023', 'north', 2023),
  ]),
}
const devices = [{ category: 'television' }]
const codesOf = (household: Partial<Household>) => {
  const { tariffs, emissionFactors } = basisOf({ devices, ...household }, settings)
  return [tariffs.map(({ code }) => code), emissionFactors.map(({ code }) => code)]
}

describe('the basis of an estimate', () => {
  test('keeps the tariff and the factor that the estimate fell back on, or named', () => {
    expect(codesOf({})).toEqual([['flat'], ['grid']])
    expect(codesOf({ tariffCode: 'flat', emissionFactorCode: 'north-2020' })).toEqual([
      ['flat'],
      ['north-2020'],
    ])
  })

  test('keeps none that the request gave itself: they are in the household', () => {
    const tariff = { kind: 'flat', currency: 'EUR', pricePerKwh: 0.2 } as const
    expect(codesOf({ tariff, emissionFactor: { kgCo2ePerKwh: 0.1 } })).toEqual([[], []])
  })

  test('keeps every factor of a region that was chosen by year, since the choice may name the others', () => {
    expect(codesOf({ emissionFactorFor: { region: 'north', year: 2022 } })[1]).toEqual([
      'north-2020',
      'north-2023',
    ])
  })

  test.each<Partial<Household>>([
    {},
    { emissionFactorFor: { region: 'north', year: 2022 } },
    { tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.2 }, emissionFactor: { kgCo2ePerKwh: 0.1 } },
  ])('is enough to make the same estimate of %j again', (more) => {
    const household = { devices, ...more }
    const catalogue = catalogueOf(1, testCategories)
    const again = JSON.parse(JSON.stringify(basisOf(household, settings)))
    expect(estimate(household, catalogue, settingsOfBasis(again))).toEqual(
      estimate(household, catalogue, settings),
    )
  })
})
