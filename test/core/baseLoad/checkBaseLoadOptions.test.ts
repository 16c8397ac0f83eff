import { describe, expect, test } from 'vitest'
import type { BaseLoadOptions } from '../../../src/core/baseLoad/baseLoadEvaluation.ts'
import { checkBaseLoadOptions } from '../../../src/core/baseLoad/checkBaseLoadOptions.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const check = (raw: unknown, value: BaseLoadOptions | null) =>
  checkBaseLoadOptions({ raw, value, faults: [] }, catalogue, testSettings).map(
    ({ pointer, code }) => `${pointer} ${code}`,
  )
const found = (options: BaseLoadOptions) => check(options, options)

describe('what a caller says beside the data', () => {
  test('may be nothing', () => {
    expect(found({})).toEqual([])
    for (const raw of [undefined, null, 'options', 5]) expect(check(raw, null)).toEqual([])
  })

  test('is a night window that ends after it begins, with the usual end for the one that is left out', () => {
    expect(found({ nightFromHour: 0, nightToHour: 6 })).toEqual([])
    expect(found({ nightFromHour: 3, nightToHour: 3 })).toEqual(['/nightToHour range-out-of-order'])
    // One to five where nothing is said.
    expect(found({ nightFromHour: 5 })).toEqual(['/nightToHour range-out-of-order'])
    expect(found({ nightFromHour: 4 })).toEqual([])
    expect(found({ nightToHour: 1 })).toEqual(['/nightToHour range-out-of-order'])
    expect(found({ nightToHour: 2 })).toEqual([])
  })

  test('is days away that do not end before they begin, named at their place', () => {
    const one = { from: '2025-01-06', to: '2025-01-06' }
    expect(found({ daysAway: [one, { from: '2025-01-07', to: '2025-01-06' }] })).toEqual([
      '/daysAway/1/to range-out-of-order',
    ])
  })

  test('is an inventory or its power, with its figures in order', () => {
    const inventory = { devices: [{ category: 'television' }] }
    const inOrder = { low: 1, expected: 2, high: 3 }
    expect(found({ inventory })).toEqual([])
    expect(found({ inventoryPowerW: inOrder })).toEqual([])
    expect(found({ inventory, inventoryPowerW: inOrder })).toEqual(['/inventoryPowerW either-or'])
    for (const wrong of [{ low: 3 }, { high: 1 }])
      expect(found({ inventoryPowerW: { ...inOrder, ...wrong } })).toEqual([
        '/inventoryPowerW range-out-of-order',
      ])
  })

  test('is an inventory as any household is, also where the shape of the rest does not hold', () => {
    const raw = { nightFromHour: 'one', inventory: { devices: [{ category: 'loom' }] } }
    expect(check(raw, null)).toEqual(['/inventory/devices/0/category unknown-category'])
  })
})
