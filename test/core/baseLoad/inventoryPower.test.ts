import { expect, test } from 'vitest'
import { powerOfInventory } from '../../../src/core/baseLoad/inventoryPower.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

test('the quantiles of an inventory’s power rise throughout, also beyond the points that they lie between', () => {
  const household = { devices: [{ category: 'television' }, { category: 'router' }] }
  const power = powerOfInventory(household, catalogueOf(1, testCategories), testSettings, 0.9)
  const probabilities = [1e-6, 1e-4, 0.001, 0.05, 0.5, 0.95, 0.999, 0.9999, 1 - 1e-6]
  const values = probabilities.map((p) => power.quantile(p))
  for (let i = 1; i < values.length; i++) expect(values[i]!).toBeGreaterThan(values[i - 1]!)
  expect([power.quantile(0.05), power.quantile(0.95)]).toEqual([
    expect.closeTo(power.powerW.low, 6),
    expect.closeTo(power.powerW.high, 6),
  ])
})
