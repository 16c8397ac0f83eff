import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { checkInventory } from '../../../src/core/inventory/checkInventory.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const found = (raw: unknown) =>
  checkInventory(raw, catalogue, testSettings).map(({ pointer, code }) => `${pointer} ${code}`)
const visit = (date: unknown, category = 'television') => ({ date, devices: [{ category }] })

describe('an inventory', () => {
  test('with visits on days of their own has no fault', () => {
    expect(found({ reference: 'H-1', visits: [visit('2025-03-01'), visit('2025-09-01')] })).toEqual([])
  })

  test('of which nothing can be read has no fault of the trade: its shape says so already', () => {
    for (const raw of [null, 'inventory', []]) expect(found(raw)).toEqual([])
    expect(found({ visits: 'none' })).toEqual([])
    expect(found({ visits: [visit(undefined), visit(undefined), visit(3)] })).toEqual([])
  })

  test('has one visit a day, and the later of two in the list is the fault', () => {
    const visits = [visit('2025-03-01'), visit('2025-09-01'), visit('2025-03-01')]
    expect(found({ visits })).toEqual(['/visits/2/date duplicate-visit'])
  })

  test('is asked on every visit all that a household is, at the visit’s place', () => {
    expect(
      found({ tariffCode: 'night', visits: [visit('2025-03-01'), visit('2025-09-01', 'loom')] }),
    ).toEqual(['/tariffCode unknown-code', '/visits/1/devices/0/category unknown-category'])
  })

  test('holds nothing that tells who lives there', () => {
    expect(found({ notes: 'ask for Mrs Example', visits: [] })).toEqual(['/notes personal-data'])
  })
})
