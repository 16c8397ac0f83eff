import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { estimateStock } from '../../../src/core/population/estimateStock.ts'
import type { Stock, StockItem } from '../../../src/core/population/stock.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings as settings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(3, testCategories)
const estimate = (stock: Omit<Stock, 'method'>) =>
  estimateStock({ method: 'stock', ...stock }, catalogue, settings)
const ladder = [{ name: 'one home', homes: 1 }]
/** Invented: 5 W at all hours, for certain. */
const certain = {
  name: 'Invented',
  drawW: { low: 5, typical: 5, high: 5 },
  hoursPerWeek: 168,
  ownership: 1,
  countPerOwner: 1,
  meanDrawUncertainty: 0,
} as const

describe('a stock', () => {
  test('counts a named mode without hours at the hours of the catalogue', () => {
    const energyOf = (modes: StockItem['modes']) =>
      estimate({
        items: [{ category: 'television', ownership: 1, ...(modes && { modes }) }],
        ladder,
      }).ladder[0]!.energyKwhPerYear.expected
    expect(energyOf([{ mode: 'standby' }])).toBe(energyOf(undefined))
    expect(energyOf([{ mode: 'standby', hoursPerWeek: 70 }])).toBeCloseTo(energyOf(undefined) / 2, 3)
  })

  test('falls back on the operator’s price, factor and weeks, with their sources', () => {
    const flat = settings.tariffs.get('flat')!
    const tariff = { ...flat.tariff, relativeUncertainty: 0.1 } as typeof flat.tariff
    const unsure = { ...settings, tariffs: new Map([['flat', { ...flat, tariff }]]) }
    const stock = {
      method: 'stock',
      items: [certain],
      ladder,
    } as const
    const { used, ladder: rungs } = estimateStock(stock, catalogue, unsure)
    expect(used).toMatchObject({
      price: { currency: 'EUR', pricePerKwh: 0.3, relativeUncertainty: 0.1 },
      priceSource: 'flat: invented sample',
      emissionFactorSource: 'grid (Nowhere, 2024): invented for the tests',
      weeksPerYear: 52,
    })
    const { expected, low, high } = rungs[0]!.costPerYear
    // Rectangular on +-10 %: 5th and 95th percentile at -9 % and +9 %.
    expect([low / expected, high / expected]).toEqual([expect.closeTo(0.91, 3), expect.closeTo(1.09, 3)])
    expect(estimateStock(stock, catalogue, settings).used.price).toEqual({
      currency: 'EUR',
      pricePerKwh: 0.3,
    })
  })

  test('refuses what was not checked', () => {
    const items: StockItem[] = [
      { category: 'loom', ownership: 1 },
      { category: 'television', ownership: 1, modes: [{ mode: 'idle' }] },
      { name: 'Invented', ownership: 1, hoursPerWeek: 5 },
    ]
    for (const item of items)
      expect(() => estimate({ items: [item], ladder })).toThrow(
        expect.objectContaining({ code: 'stock-not-checked' }),
      )
    const nothing = { ...settings, tariffs: new Map(), emissionFactors: new Map() }
    expect(() => estimateStock({ method: 'stock', items: [], ladder: [] }, catalogue, nothing)).toThrow(
      expect.objectContaining({ code: 'stock-not-checked' }),
    )
  })

  test('reaches up to a device that one home in a hundred has, where that is likelier than the tail', () => {
    const rare = { ...certain, ownership: 0.01 }
    const powerOf = (coverageProbability: number) =>
      estimate({ items: [rare], ladder, coverageProbability }).ladder[0]!.powerW
    const wide = powerOf(0.99)
    expect([wide.low, wide.expected]).toEqual([0, expect.closeTo(0.05, 6)])
    // The lattice's step is a hundredth of the standard deviation, 0.005 W.
    expect(Math.abs(wide.high - 5)).toBeLessThan(0.01)
    expect(powerOf(0.9).high).toBeLessThan(0.01)
  })
})
