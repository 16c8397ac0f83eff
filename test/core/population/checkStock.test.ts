import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { checkStock } from '../../../src/core/population/checkStock.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const catalogue = catalogueOf(1, testCategories)
const faultsOf = (stock: object, settings = testSettings) =>
  checkStock({ method: 'stock', ...stock }, catalogue, settings).map(
    ({ pointer, code }) => `${pointer} ${code}`,
  )
const ladder = [{ name: 'one home', homes: 1 }]

describe('checkStock', () => {
  test('lets items of the catalogue and of their own draw pass', () => {
    const items = [
      { category: 'TV', ownership: 0.9, modes: [{ mode: 'standby', hoursPerWeek: 168 }] },
      {
        name: 'Invented',
        drawW: { low: 1, typical: 2, high: 3 },
        hoursPerWeek: 10,
        ownership: 0.1,
      },
    ]
    expect(faultsOf({ items, ladder })).toEqual([])
  })

  test('names unknown categories, modes without a figure and hours beyond a week, at their item', () => {
    const items = [
      { category: 'televisoin', ownership: 0.9 },
      { category: 'TV', ownership: 0.9, modes: [{ mode: 'idle' }] },
      { category: 'TV', ownership: 0.9, modes: [{ mode: 'standby', hoursPerWeek: 169 }] },
    ]
    expect(faultsOf({ items, ladder })).toEqual([
      '/items/0/category unknown-category',
      '/items/1/modes/0/mode mode-without-figure',
      '/items/2/modes hours-exceed-week',
    ])
  })

  test('refuses an item that is both of the catalogue and of its own, or neither', () => {
    const items = [
      { category: 'TV', name: 'Also', ownership: 1 },
      { ownership: 1, hoursPerWeek: 5 },
      { name: 'Own', drawW: {}, hoursPerWeek: 5, year: 2015, ownership: 1 },
    ]
    expect(faultsOf({ items, ladder })).toEqual([
      '/items/0/name given-twice',
      '/items/1/name required',
      '/items/1/drawW required',
      '/items/2/year needs-category',
    ])
  })

  test('refuses a name that two rungs of the ladder have', () => {
    const twice = [...ladder, { name: 'street', homes: 40 }, { name: 'street', homes: 50 }]
    expect(faultsOf({ items: [], ladder: twice })).toEqual(['/ladder/2/name name-twice'])
  })

  test('asks for a mean price where the operator’s tariff has no single one', () => {
    const block = {
      code: 'flat',
      name: 'Invented blocks',
      retired: false,
      tariff: { kind: 'block', per: 'month', currency: 'EUR', blocks: [{ pricePerKwh: 0.2 }] },
      source: 'invented sample',
      sampleData: true,
    } as const
    const settings = { ...testSettings, tariffs: new Map([['flat', block]]) }
    expect(faultsOf({ items: [], ladder }, settings)).toEqual(['/price required'])
    const price = { currency: 'EUR', pricePerKwh: 0.2 }
    expect(faultsOf({ items: [], ladder, price }, settings)).toEqual([])
  })

  test('refuses an unknown currency, an unknown emission factor, and a factor given twice', () => {
    const price = { currency: 'EUX', pricePerKwh: 0.2 }
    expect(faultsOf({ items: [], ladder, price, emissionFactorCode: 'nowhere' })).toEqual([
      '/price/currency unknown-currency',
      '/emissionFactorCode unknown-code',
    ])
    const both = { emissionFactor: { kgCo2ePerKwh: 0.2 }, emissionFactorCode: 'nowhere' }
    expect(faultsOf({ items: [], ladder, ...both })).toEqual(['/emissionFactorCode given-twice'])
  })

  test.each([null, 7, { items: 'x', ladder: {} }, { items: [null], ladder: [4], price: [] }])(
    'does not fall over %j',
    (raw) => {
      expect(checkStock(raw, catalogue, testSettings)).toBeInstanceOf(Array)
    },
  )

  test('lets a known factor pass, and asks for one where the operator’s was not there yet', () => {
    expect(faultsOf({ items: [], ladder, emissionFactorCode: 'grid' })).toEqual([])
    const none = { ...testSettings, emissionFactors: new Map(), referenceRevision: 0 }
    expect(faultsOf({ items: [], ladder }, none)).toEqual(['/emissionFactorCode required'])
    expect(faultsOf({ items: [], ladder, emissionFactor: { kgCo2ePerKwh: 0.3 } }, none)).toEqual([])
  })
})
