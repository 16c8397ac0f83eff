import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Category } from '../../../src/core/catalogue/category.ts'
import { basisOf } from '../../../src/core/estimate/basis.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { EstimateSettings } from '../../../src/core/estimate/settings.ts'
import { compareWithToday } from '../../../src/core/inventory/compareWithToday.ts'
import type { Household } from '../../../src/core/inventory/household.ts'
import { remake } from '../../../src/core/inventory/remake.ts'
import type { StoredEstimate } from '../../../src/core/inventory/storedEstimate.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const television: Household = { devices: [{ category: 'television' }] }

function storedOf(household: Household, settings = testSettings): StoredEstimate {
  const result = estimate(household, catalogue, settings)
  return {
    id: 'e1',
    inventory: 'i1',
    visit: '2025-03-01',
    madeAt: '2025-03-02T10:00:00Z',
    catalogueRevision: 1,
    methodVersion: result.used.methodVersion,
    household,
    basis: basisOf(household, settings),
    result,
  }
}

/** The catalogue after every draw of one category was multiplied. */
const editedBy = (code: string, times: number) =>
  catalogueOf(
    2,
    testCategories.map((category): Category => {
      if (category.code !== code) return category
      const modes = category.modes.map((mode) => ({
        ...mode,
        draws: mode.draws.map((draw) => ({
          ...draw,
          highW: draw.highW * times,
          typicalW: draw.typicalW * times,
        })),
      }))
      return { ...category, modes }
    }),
  )

const flat = testSettings.tariffs.get('flat')!
const priced = (changes: Partial<{ currency: string; pricePerKwh: number }>): EstimateSettings => ({
  ...testSettings,
  tariffs: new Map([
    ['flat', { ...flat, tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3, ...changes } }],
  ]),
})
const grid = testSettings.emissionFactors.get('grid')!
const UP_TO_DATE = { outOfDate: false, because: [], change: null }

describe('a stored estimate', () => {
  const stored = storedOf(television)
  const today = { household: television, catalogue, settings: testSettings }

  test('is up to date where nothing moved', () => {
    expect(compareWithToday(stored, today)).toEqual(UP_TO_DATE)
  })

  test('is up to date where the catalogue moved for other devices alone, or fields come in another order', () => {
    expect(compareWithToday(stored, { ...today, catalogue: editedBy('amplifier', 3) })).toEqual(UP_TO_DATE)
    const device = { year: 2016, category: 'television', quantity: 2 }
    const turned = { quantity: 2, category: 'television', year: 2016 }
    const asked = storedOf({ devices: [device], weeksPerYear: 50 })
    expect(compareWithToday(asked, { ...today, household: { weeksPerYear: 50, devices: [turned] } })).toEqual(
      UP_TO_DATE,
    )
  })

  test('keeps the coverage that was asked for with the estimate alone', () => {
    const asked = storedOf({ ...television, coverageProbability: 0.5 })
    expect(compareWithToday(asked, today)).toEqual(UP_TO_DATE)
  })

  test('is out of date because of the catalogue, by what its figures moved', () => {
    const edited = editedBy('television', 2)
    const { because, change } = compareWithToday(stored, { ...today, catalogue: edited })
    expect(because).toEqual(['catalogue'])
    const now = estimate(television, edited, testSettings).total
    const moved = now.energyKwhPerYear.expected - stored.result.total.energyKwhPerYear.expected
    expect(moved).toBeGreaterThan(1)
    expect(change!.energyKwhPerYear).toBeCloseTo(moved, 4)
    expect(change!.costPerYear).toBeCloseTo(0.3 * moved, 4)
    expect(change!.emissionsKgCo2ePerYear).toBeCloseTo(0.5 * moved, 4)
  })

  test('is out of date because of the inventory, the tariff, the factor or the settings, each by its name', () => {
    const because = (changes: Partial<typeof today>) =>
      compareWithToday(stored, { ...today, ...changes }).because
    expect(because({ household: { devices: [{ category: 'television', quantity: 2 }] } })).toEqual([
      'inventory',
    ])
    expect(because({ settings: priced({ pricePerKwh: 0.4 }) })).toEqual(['tariff'])
    const factor = { ...grid, factor: { kgCo2ePerKwh: 0.4 } }
    expect(because({ settings: { ...testSettings, emissionFactors: new Map([['grid', factor]]) } })).toEqual([
      'emission-factor',
    ])
    expect(because({ settings: { ...testSettings, weeksPerYear: 50 } })).toEqual(['settings'])
  })

  test('names all that moved at once', () => {
    const moved = { ...today, catalogue: editedBy('television', 2), settings: priced({ pricePerKwh: 0.4 }) }
    expect(compareWithToday(stored, moved).because).toEqual(['catalogue', 'tariff'])
  })

  test('of an older method says so', () => {
    const older = {
      ...stored,
      methodVersion: '0',
      result: {
        ...stored.result,
        total: { ...stored.result.total, costPerYear: { ...stored.result.total.costPerYear, expected: 0 } },
      },
    }
    expect(compareWithToday(older, today).because).toContain('method')
  })

  test('has no difference of cost between two currencies', () => {
    const { because, change } = compareWithToday(stored, { ...today, settings: priced({ currency: 'USD' }) })
    expect(because).toEqual(['tariff'])
    expect(change).toMatchObject({ energyKwhPerYear: 0, costPerYear: null })
  })

  test('has no figures of today where its visit is gone, or today’s catalogue no longer has its category', () => {
    expect(compareWithToday(stored, { ...today, household: null })).toEqual({
      outOfDate: true,
      because: ['visit-gone'],
      change: null,
    })
    const without = catalogueOf(
      2,
      testCategories.filter(({ code }) => code !== 'television'),
    )
    expect(compareWithToday(stored, { ...today, catalogue: without })).toEqual({
      outOfDate: true,
      because: ['no-longer-fits'],
      change: null,
    })
  })

  test('is made again from what is stored, whatever the settings are today', () => {
    const again: StoredEstimate = JSON.parse(
      JSON.stringify(storedOf(television, priced({ pricePerKwh: 0.7 }))),
    )
    expect(remake(again, catalogue)).toEqual(again.result)
  })
})
