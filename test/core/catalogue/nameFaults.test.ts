import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Category } from '../../../src/core/catalogue/category.ts'
import { findCategory } from '../../../src/core/catalogue/findCategory.ts'
import { nameFaults, ownersOfNames } from '../../../src/core/catalogue/nameFaults.ts'
import { categoryWith } from './sampleCategory.ts'

const kettle = categoryWith({ code: 'kettle', name: 'Water kettle', aliases: ['Teapot'] })
const lamp = categoryWith()
const faultsOf = (before: Category | null, after: Category, ...others: Category[]) =>
  nameFaults(before, after, ownersOfNames([...others, after])).map(
    ({ pointer, code }) => `${pointer} ${code}`,
  )

describe('names that another category has', () => {
  test.each([
    ['as its alias', { aliases: ['wax lamp', 'tea  POT'.replace('  ', '')] }, ['/aliases/1 name-taken']],
    ['as its name', { name: 'water-kettle' }, ['/name name-taken']],
    ['as its code', { aliases: ['Kettle'] }, ['/aliases/0 name-taken']],
    ['not at all', { aliases: ['tea pots'] }, []],
  ])('%s are faults, as look-up compares them', (_, changes, faults) => {
    expect(faultsOf(lamp, categoryWith(changes), kettle)).toEqual(faults)
  })

  test('are taken by a retired category, too, since old inventories speak of it by them', () => {
    const retired = { ...kettle, retired: true }
    expect(faultsOf(null, categoryWith({ aliases: ['teapot'] }), retired)).toEqual(['/aliases/0 name-taken'])
  })

  test('are no fault where the category had them before, so that an edit need not mend what it did not break', () => {
    const shared = categoryWith({ aliases: ['teapot'] })
    expect(faultsOf(shared, { ...shared, defaultQuantity: 2 }, kettle)).toEqual([])
    expect(faultsOf(shared, { ...shared, retired: true }, kettle)).toEqual([])
  })

  test('are faults of a category that comes back from retirement', () => {
    const retired = categoryWith({ aliases: ['teapot'], retired: true })
    expect(faultsOf(retired, { ...retired, retired: false }, kettle)).toEqual(['/aliases/0 name-taken'])
  })

  test('that an old revision left shared lead to the category in use', () => {
    const old = categoryWith({ code: 'a-lamp', name: 'Old lamp', aliases: ['glow'], retired: true })
    const used = categoryWith({ code: 'z-lamp', name: 'New lamp', aliases: ['glow'] })
    expect(findCategory(catalogueOf(1, [old, used]), 'Glow')).toBe(used)
    expect(findCategory(catalogueOf(1, [old, used]), 'old lamp')).toBe(old)
  })
})
