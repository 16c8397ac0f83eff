import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { findCategory, nearestCategories, plainName } from '../../../src/core/catalogue/findCategory.ts'
import { labelled } from '../../../src/core/catalogue/labelledCategory.ts'
import { layeredCatalogue } from '../../../src/core/catalogue/layeredCatalogue.ts'
import { listCategories } from '../../../src/core/catalogue/listCategories.ts'
import { overlayOf } from '../../../src/core/catalogue/overlay.ts'
import { sharedNames } from '../../../src/core/catalogue/sharedNames.ts'
import { categoryWith, drawWith, modeWith } from './sampleCategory.ts'

const lamp = categoryWith()
const kettle = categoryWith({
  code: 'electric-kettle',
  name: 'Kettle',
  group: 'kitchen',
  aliases: ['tea kettle', 'Thé'],
})
const oven = categoryWith({
  code: 'oven',
  name: 'Oven',
  group: 'kitchen',
  aliases: ['electric kettle', 'stove'],
})
const old = categoryWith({ code: 'wax-lamp', name: 'Wax lamp', aliases: [], retired: true })
const catalogue = catalogueOf(1, [oven, lamp, kettle, old])

describe('look-up', () => {
  test('names are told apart by letters and digits alone', () => {
    expect(['TV set', 'tv-set', ' TV  Set '].map(plainName)).toEqual(['tv set', 'tv set', 'tv set'])
  })

  test.each(['electric-kettle', 'KETTLE', 'Tea-Kettle', 'the'])(
    '%s finds the kettle by code, name or alias',
    (name) => {
      expect(findCategory(catalogue, name)?.code).toBe('electric-kettle')
    },
  )

  test('a code wins over the alias of another category', () => {
    expect(findCategory(catalogue, 'electric kettle')?.code).toBe('electric-kettle')
  })

  test('an unknown name finds nothing, and neither does an empty one', () => {
    expect(findCategory(catalogue, 'dishwasher')).toBeNull()
    expect(findCategory(catalogue, '')).toBeNull()
  })

  test('a slip of the finger is answered with the category that was meant, first', () => {
    expect(nearestCategories(catalogue, 'lavva lamp')[0]?.code).toBe('lava-lamp')
    expect(nearestCategories(catalogue, 'ketle')[0]?.code).toBe('electric-kettle')
  })

  test('a name within what was typed, as whole words, is half as far as its letters are', () => {
    const [radio, ratio] = ['radio', 'radio-table-lamp'].map((code) =>
      categoryWith({ code, name: code, aliases: [] }),
    )
    const near = (typed: string) =>
      nearestCategories(catalogueOf(1, [radio!, ratio!]), typed).map(({ code }) => code)
    expect(near('old radio')).toEqual(['radio', 'radio-table-lamp'])
    expect(near('table lamp')).toEqual(['radio-table-lamp', 'radio'])
  })

  test('of two that are as near, the first by code comes first, whichever layer it is of', () => {
    const twin = (code: string) => categoryWith({ code, name: `Name ${code}`, aliases: [] })
    const shared = catalogueOf(1, [twin('aa'), twin('ac')])
    const near = (from: typeof shared) => nearestCategories(from, 'ab').map(({ code }) => code)
    expect(near(shared)).toEqual(['aa', 'ac'])
    const overlay = overlayOf('ours', 1, [{ code: 'ad', category: twin('ad'), revision: 1 }])
    expect(near(layeredCatalogue(shared, overlay))).toEqual(['aa', 'ac', 'ad'])
  })

  test('retired categories are found by name but never suggested', () => {
    expect(findCategory(catalogue, 'wax lamp')?.code).toBe('wax-lamp')
    expect(nearestCategories(catalogue, 'wax lamp', 9).map(({ code }) => code)).not.toContain('wax-lamp')
  })
})

describe('list', () => {
  test('is in the order of codes, without the retired unless asked for', () => {
    const codes = (includeRetired: boolean) =>
      listCategories(catalogue, { includeRetired }).map(({ code }) => code)
    expect(codes(false)).toEqual(['electric-kettle', 'lava-lamp', 'oven'])
    expect(codes(true)).toEqual(['electric-kettle', 'lava-lamp', 'oven', 'wax-lamp'])
  })

  test('is narrowed by group, and by words that all occur in the names', () => {
    expect(listCategories(catalogue, { group: 'kitchen' }).map(({ code }) => code)).toEqual([
      'electric-kettle',
      'oven',
    ])
    expect(listCategories(catalogue, { search: 'tea KETTLE' }).map(({ code }) => code)).toEqual([
      'electric-kettle',
    ])
    expect(listCategories(catalogue, { search: 'tea stove' })).toEqual([])
    expect(listCategories(catalogue, { search: '%' })).toEqual([])
  })

  test('a category holds sample data as soon as one draw is invented', () => {
    const published = drawWith({ provenance: { kind: 'published', citation: 'Some report', n: null } })
    expect(labelled(categoryWith({ modes: [modeWith({ draws: [published] })] })).sampleData).toBe(false)
    expect(labelled(categoryWith({ modes: [modeWith({ draws: [published, drawWith()] })] })).sampleData).toBe(
      true,
    )
  })
})

test('a name that two categories answer to is reported with both codes', () => {
  expect(sharedNames([lamp, kettle, oven])).toEqual([
    { name: 'electric kettle', codes: ['electric-kettle', 'oven'] },
  ])
  expect(sharedNames([lamp, kettle])).toEqual([])
})
