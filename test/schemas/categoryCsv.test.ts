import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { checkCategory } from '../../src/core/catalogue/checkCategory.ts'
import { categorySchema } from '../../src/schemas/category.ts'
import { CATEGORY_COLUMNS, type CategoryColumn } from '../../src/schemas/categoryColumns.ts'
import { formatCategoriesCsv, parseCategoriesCsv } from '../../src/schemas/categoryCsv.ts'
import { neutralise, restore } from '../../src/schemas/csvFormulas.ts'
import { categoryWith } from '../core/catalogue/sampleCategory.ts'
import { anyText, categories } from './categoryArbitrary.ts'

const soundRow: Record<CategoryColumn, string> = {
  code: 'lava-lamp',
  name: 'Lava lamp',
  group: 'lighting-and-smart-home',
  aliases: 'bubble light | wax lamp',
  defaultQuantity: '1',
  retired: 'false',
  keepPoweredReason: '',
  keepPoweredNote: '',
  powerFactorLow: '0.2',
  powerFactorTypical: '0.4',
  powerFactorHigh: '0.6',
  mode: 'standby',
  defaultHoursPerWeek: '100',
  yearFrom: '',
  yearTo: '',
  lowW: '1',
  typicalW: '2',
  highW: '4',
  provenance: 'sample',
  source: 'invented sample',
  n: '',
}
type Cells = Partial<Record<CategoryColumn, string>>
/** A file of one row for each set of changes to the sound row. None of the cells needs quotes. */
const fileOf = (...rows: Cells[]) =>
  [
    CATEGORY_COLUMNS,
    ...rows.map((row) => CATEGORY_COLUMNS.map((column) => ({ ...soundRow, ...row })[column])),
  ]
    .map((cells) => cells.join(','))
    .join('\n')
const faultsOf = (...rows: Cells[]) =>
  parseCategoriesCsv(fileOf(...rows)).faults.map(({ line, column, code }) => `${line} ${column} ${code}`)
const only = (...rows: Cells[]) => {
  const { categories: read, faults } = parseCategoriesCsv(fileOf(...rows))
  expect(faults).toEqual([])
  expect(read).toHaveLength(1)
  return read[0]!
}

describe('round trip', () => {
  test('whatever sound catalogue is written is read back exactly', () => {
    fc.assert(
      fc.property(categories, (catalogue) => {
        for (const each of catalogue)
          expect([categorySchema.parse(each), checkCategory(each)]).toEqual([each, []])
        expect(parseCategoriesCsv(formatCategoriesCsv(catalogue))).toEqual({
          categories: catalogue,
          faults: [],
        })
      }),
      { numRuns: 300 },
    )
  })

  test('a byte order mark, CR LF and LF make no difference', () => {
    const text = formatCategoriesCsv([categoryWith()])
    expect(text).toContain('\r\n')
    for (const same of [text, `\uFEFF${text}`, text.replaceAll('\r\n', '\n')])
      expect(parseCategoriesCsv(same)).toEqual({ categories: [categoryWith()], faults: [] })
  })

  test('what no spreadsheet may run is written so that none begins with a formula character', () => {
    const name = '=HYPERLINK("x")'
    const text = formatCategoriesCsv([categoryWith({ name, aliases: ['@x', '-y'] })])
    const cells = parse(text).flat()
    expect(cells).toContain(`'${name}`)
    expect(cells.filter((cell) => /^[=+\-@\t\r]/.test(cell))).toEqual([])
  })

  test('neutralising is undone exactly, whatever the text', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(restore(neutralise(text))).toBe(text)
        expect(neutralise(text)).not.toMatch(/^[=+\-@\t\r＝＋－＠]/)
      }),
    )
  })

  test('an apostrophe that guards no formula belongs to the text', () => {
    expect(only({ name: "'Tis a lamp" }).name).toBe("'Tis a lamp")
    expect(only({ name: '=A1' }).name).toBe('=A1')
    expect(only({ name: "'=A1" }).name).toBe('=A1')
  })
})

describe('what may be written shorter', () => {
  test('cells that another row of the category or of the mode fills may be empty, wherever the rows stand', () => {
    const blank = Object.fromEntries(CATEGORY_COLUMNS.slice(1, 11).map((column) => [column, '']))
    const whole = [
      { yearTo: '2009' },
      { yearFrom: '2010', lowW: '0.5' },
      { mode: 'off', defaultHoursPerWeek: '9' },
    ]
    const short = [
      { ...whole[0], ...blank, defaultHoursPerWeek: '' },
      { ...whole[1] },
      { ...whole[2], ...blank },
    ]
    expect(only(...short)).toEqual(only(...whole))
  })

  test('columns may stand in any order, and numbers, TRUE and names may have spaces round them', () => {
    const reversed = fileOf({ lowW: ' 1 ', retired: 'TRUE', group: ' kitchen ', mode: ' off ' })
      .split('\n')
      .map((line) => line.split(',').toReversed().join(','))
      .join('\n')
    const { categories: read, faults } = parseCategoriesCsv(reversed)
    expect(faults).toEqual([])
    expect(read[0]).toMatchObject({
      retired: true,
      group: 'kitchen',
      modes: [{ mode: 'off', draws: [{ lowW: 1 }] }],
    })
  })

  test('empty lines and lines of empty cells are passed over', () => {
    const text = `${fileOf({})}\n\n${','.repeat(CATEGORY_COLUMNS.length - 1)}\n`
    expect(parseCategoriesCsv(text)).toEqual({ categories: [only({})], faults: [] })
  })

  test('empty years are open, an empty alias list is none, an empty keepPowered is null', () => {
    const read = only({ aliases: '' })
    expect(read).toMatchObject({
      aliases: [],
      keepPowered: null,
      modes: [{ draws: [{ yearFrom: null, yearTo: null }] }],
    })
  })

  test('the source of a cited figure is its citation, and n is the number of readings', () => {
    const published = only({ provenance: 'published', source: 'Some report table 3' })
    expect(published.modes[0]?.draws[0]?.provenance).toEqual({
      kind: 'published',
      citation: 'Some report table 3',
      n: null,
    })
    const programme = only({ provenance: 'programme', source: '', n: '12' })
    expect(programme.modes[0]?.draws[0]?.provenance).toEqual({ kind: 'programme', citation: null, n: 12 })
  })
})

describe('faults are named by line and column, all at once', () => {
  test('in cells, between cells and between rows, in every category of the file', () => {
    const faults = faultsOf(
      { lowW: 'two', typicalW: '' },
      { yearFrom: '2013', lowW: '5' },
      { code: 'Big Lamp', name: '' },
      { code: 'small-lamp', name: 'Small lamp', defaultHoursPerWeek: '100' },
      {
        code: 'small-lamp',
        name: 'Small lamp',
        mode: 'off',
        defaultHoursPerWeek: '90',
        provenance: 'published',
        source: '',
      },
    )
    expect(faults).toEqual([
      '2 lowW invalid-type',
      '2 typicalW required',
      '3 lowW range-out-of-order',
      '4 code invalid-format',
      '4 name too-small',
      '5 defaultHoursPerWeek too-many-hours',
      '6 source citation-missing',
    ])
  })

  test('the message quotes what stands in the cell', () => {
    const { faults } = parseCategoriesCsv(fileOf({ highW: '0x10' }))
    expect(faults).toHaveLength(1)
    expect(faults[0]?.message).toContain('"0x10"')
  })

  test('rows of one category that say different things are a fault at each later row', () => {
    expect(
      faultsOf({ yearTo: '2009' }, { yearFrom: '2010', name: 'Wax light', defaultHoursPerWeek: '7' }),
    ).toEqual(['3 name contradicts-row', '3 defaultHoursPerWeek contradicts-row'])
  })

  test('years, power factor, keepPowered, aliases and provenance are placed in their own columns', () => {
    const years = [{ yearTo: '2009' }, { yearFrom: '2012' }]
    expect(faultsOf(...years)).toEqual(['3 yearFrom years-hole'])
    expect(faultsOf({ powerFactorLow: '0.5' })).toEqual(['2 powerFactorLow range-out-of-order'])
    expect(faultsOf({ keepPoweredReason: 'habit', keepPoweredNote: 'x' })).toEqual([
      '2 keepPoweredReason invalid-value',
    ])
    expect(faultsOf({ keepPoweredReason: 'medical' })).toEqual(['2 keepPoweredNote too-small'])
    expect(faultsOf({ aliases: 'wax lamp || glow' })).toEqual(['2 aliases too-small'])
    expect(faultsOf({ aliases: 'wax lamp | Wax-Lamp' })).toEqual(['2 aliases alias-repeated'])
    expect(faultsOf({ source: 'Some report' })).toEqual(['2 source sample-with-citation'])
    expect(faultsOf({ provenance: 'programme', source: '' })).toEqual(['2 n n-missing'])
    expect(faultsOf({ retired: 'perhaps' })).toEqual(['2 retired invalid-type'])
    expect(faultsOf({ code: '' })).toEqual(['2 code invalid-format'])
  })

  test('a category with a fault is left out, the sound ones are read', () => {
    const { categories: read } = parseCategoriesCsv(
      fileOf({ lowW: '3' }, { code: 'small-lamp', name: 'Small lamp' }),
    )
    expect(read.map(({ code }) => code)).toEqual(['small-lamp'])
  })

  test('a line with too few or too many cells is named and the others are read', () => {
    const { categories: read, faults } = parseCategoriesCsv(`${fileOf({})}\nsmall-lamp,Small lamp\n`)
    expect(read).toHaveLength(1)
    expect(faults).toEqual([
      {
        line: 3,
        column: null,
        code: 'wrong-cell-count',
        message: expect.stringContaining('2 cells') as string,
      },
    ])
  })

  test('lines are counted in the file, also after cells that hold line breaks of either kind', () => {
    const text = fileOf(
      { name: '"Lava\r\nlamp"' },
      { code: 'b', name: '"B\nb"' },
      { code: 'c', name: 'C', lowW: 'x' },
    )
    expect(parseCategoriesCsv(text).faults.map(({ line, column }) => [line, column])).toEqual([[6, 'lowW']])
  })

  test('a stray quote is named by its line', () => {
    const { faults } = parseCategoriesCsv(fileOf({ name: 'Lava "lamp"' }))
    expect(faults.map(({ line, code }) => [line, code])).toEqual([[2, 'unreadable-line']])
  })

  test('a quote that is never closed is named', () => {
    const { faults } = parseCategoriesCsv(`${fileOf({})}\n"small-lamp,Small lamp\n`)
    expect(faults.map(({ code }) => code)).toEqual(['unreadable-line'])
  })

  test('columns that are missing, repeated or unknown are named, and unknown ones are not dropped in silence', () => {
    const [header = '', row = ''] = fileOf({}).split('\n')
    const codes = (text: string) =>
      parseCategoriesCsv(text).faults.map(({ line, column, code }) => `${line} ${column} ${code}`)
    expect(codes(`${header.replace('lowW', 'low')}\n${row}`)).toEqual([
      '1 low unknown-column',
      '1 lowW missing-column',
    ])
    expect(codes(`${header},lowW\n${row},1`)).toEqual(['1 lowW repeated-column'])
    expect(codes(`${header},colour\n${row},red`)).toEqual(['1 colour unknown-column'])
    expect(codes('')).toEqual(['1 null empty-file'])
  })
})
