import { describe, expect, test } from 'vitest'
import { catalogueOf, laterCatalogue } from '../../../src/core/catalogue/catalogue.ts'
import { compareCatalogues } from '../../../src/core/catalogue/compareCatalogues.ts'
import { categoryWith } from './sampleCategory.ts'

const lamp = (code: string, changes = {}) =>
  categoryWith({ code, name: `Lamp ${code}`, aliases: [], ...changes })
const first = catalogueOf(1, [lamp('a'), lamp('b'), lamp('c', { retired: true })])
const second = laterCatalogue(first, 2, [
  { category: lamp('b', { defaultQuantity: 3 }), revision: 2 },
  { category: lamp('d'), revision: 2 },
  { category: lamp('c'), revision: 2 },
])

const inShort = (...[from, to]: Parameters<typeof compareCatalogues>) =>
  compareCatalogues(from, to).map(({ code, kind }) => `${code} ${kind}`)

describe('two states of the catalogue', () => {
  test('differ in what leads from one to the other, in the order of the codes', () => {
    expect(inShort(first, second)).toEqual(['b changed', 'c restored', 'd added'])
    expect(compareCatalogues(first, second)[0]?.fields).toEqual([
      { pointer: '/defaultQuantity', before: 1, after: 3 },
    ])
  })

  test('the other way round, what is not there yet counts as retired', () => {
    expect(inShort(second, first)).toEqual(['b changed', 'c retired', 'd retired'])
  })

  test('do not differ in what is not there yet where it is retired already', () => {
    const third = laterCatalogue(second, 3, [{ category: lamp('d', { retired: true }), revision: 3 }])
    expect(inShort(third, first)).toEqual(['b changed', 'c retired'])
  })

  test('do not differ in a category that was changed and changed back', () => {
    const back = laterCatalogue(second, 3, [{ category: lamp('b'), revision: 3 }])
    expect(inShort(first, back)).toEqual(['c restored', 'd added'])
  })
})

describe('a later state of the catalogue', () => {
  test('knows for each category which revision gave it its state, and keeps the order of the codes', () => {
    expect([...second.changedIn].sort()).toEqual([
      ['a', 1],
      ['b', 2],
      ['c', 2],
      ['d', 2],
    ])
    expect([...second.categories.keys()]).toEqual(['a', 'b', 'c', 'd'])
    expect(second.categories.get('a')).toBe(first.categories.get('a'))
    expect(first.categories.get('b')?.defaultQuantity).toBe(1)
  })
})
