import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatCategoriesCsv, readCategoriesCsv } from '../../src/schemas/categoryCsv.ts'
import { readCsvImport } from '../../src/schemas/categoryImportCsv.ts'
import { readJsonImport } from '../../src/schemas/categoryImportJson.ts'
import { readNumber } from '../../src/schemas/readNumber.ts'
import { recogniseDecimal } from '../../src/schemas/recogniseDecimal.ts'
import { recogniseDelimiter } from '../../src/schemas/recogniseDelimiter.ts'
import { categoryWith } from '../core/catalogue/sampleCategory.ts'
import { categories } from './categoryArbitrary.ts'

const COLUMNS = ['code', 'watts', 'hours']
const delimiterOf = (header: string) => {
  const { delimiter, faults } = recogniseDelimiter(header, COLUMNS)
  return faults[0]?.code ?? delimiter
}
const decimalOf = (figures: readonly string[], delimiter: ',' | ';' = ';') => {
  const rows = figures.map((watts, index) => ({
    line: index + 2,
    cells: { code: '1,5', watts, hours: '3' },
  }))
  const { decimal, faults } = recogniseDecimal(rows, ['watts', 'hours'], delimiter)
  return faults[0] ? `${faults[0].code} in line ${faults[0].line}, ${faults[0].column}` : decimal
}

describe('what separates cells', () => {
  test.each([
    ['code,watts,hours', ','],
    ['code;watts;hours\n1,5;2,5;3,5', ';'],
    ['\uFEFF"code";"watts";"hours"', ';'],
    ['\r\n\n  code;watts', ';'],
    ['code,watts,x;hours', ','],
    ['code,watts;hours', 'ambiguous-delimiter'],
    ['code', ','],
    ['', ','],
    ['nothing that is known', ','],
    ['code,x;watts', 'ambiguous-delimiter'],
    ['code\twatts\thours', 'unknown-delimiter'],
  ])('in %j is %s', (text, found) => {
    expect(delimiterOf(text)).toBe(found)
  })
})

describe('what stands before a fraction', () => {
  test.each<[readonly string[], string | null]>([
    [['1', '2'], null],
    [[], null],
    [['', 'none', '1-2'], null],
    [['1', '2,5'], ','],
    [['0,125'], ','],
    [['0.125'], '.'],
    [['1.500', '0.25'], '.'],
    [['1,500', ',25'], ','],
    [['2.5e-3'], '.'],
    [['1.5', '2,5'], 'ambiguous-decimal in line 3, watts'],
    [['1,500'], 'ambiguous-decimal in line 2, watts'],
    [['1.500', '12.000'], 'ambiguous-decimal in line 2, watts'],
    [['1.234,5'], null],
  ])('of %j, between semicolons, is %s', (figures, found) => {
    expect(decimalOf(figures)).toBe(found)
  })

  test('of 1.500 between commas is a point, since that is how exports are written', () => {
    expect(decimalOf(['1.500'], ',')).toBe('.')
  })

  test('of 1,500 between commas is not guessed at', () => {
    expect(decimalOf(['1,500'], ',')).toBe('ambiguous-decimal in line 2, watts')
  })

  test('in cells that hold no figures does not count', () => {
    expect(decimalOf(['2.5'])).toBe('.')
  })
})

describe('a number', () => {
  test.each([
    ['2,5', 2.5],
    ['-,5', -0.5],
    ['1,', 1],
    ['1e3', 1000],
    ['2.5', '2.5'],
    ['1.000,5', '1.000,5'],
    ['', undefined],
  ])('with a decimal comma: %j is %j', (cell, value) => {
    expect(readNumber(cell, ',')).toBe(value)
  })
})

/** The same file with semicolons and decimal commas, as a spreadsheet in many countries saves it. */
const local = (csv: string, rows: (text: string) => string[][]) =>
  rows(csv)
    .map((cells) => cells.map((cell) => (/^-?\d+\.\d+$/.test(cell) ? cell.replace('.', ',') : cell)))
    .map((cells) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(';'))
    .join('\n')

describe('a catalogue file', () => {
  test('that was written here is recognised, whatever is in it', () => {
    fc.assert(
      fc.property(categories, (catalogue) => {
        const read = readCsvImport(Buffer.from(formatCategoriesCsv(catalogue)), {})
        expect([read.badRows, read.categories]).toEqual([[], catalogue])
        expect(read.recognised?.delimiter).toBe(',')
        expect(read.recognised?.decimal).not.toBe(',')
      }),
      { numRuns: 100 },
    )
  })

  test('that a spreadsheet has saved with semicolons and decimal commas gives the same figures', async () => {
    const { parse } = await import('csv-parse/sync')
    const given = categoryWith({ aliases: ['a; b', 'c, d', '1.5'] })
    const text = local(formatCategoriesCsv([given]), (csv) => parse(csv))
    const read = readCategoriesCsv(text)
    expect(read.recognised).toEqual({ delimiter: ';', decimal: ',' })
    expect([read.faults, read.categories]).toEqual([[], [given]])
  })

  test('knows where a fault that is found later stands', () => {
    const text = formatCategoriesCsv([categoryWith(), categoryWith({ code: 'other', name: 'Other' })])
    const { place } = readCategoriesCsv(text)
    const fault = { pointer: '/aliases/0', code: 'name-taken', message: 'x' }
    expect(place('other', fault)).toMatchObject({ line: 3, column: 'aliases' })
    expect(place('nobody', fault)).toMatchObject({ line: 1, column: null })
  })
})

describe('a list of categories', () => {
  test('of more than any catalogue has is refused at once', () => {
    const read = readJsonImport(Array<number>(20_001).fill(1))
    expect(read.badRows).toMatchObject([{ pointer: '', code: 'too-big' }])
    expect([read.rows, read.badRowCount]).toEqual([0, 1])
  })

  test.each([{}, 'x', 7, null])('is not %j', (body) => {
    expect(readJsonImport(body).badRows).toMatchObject([{ pointer: '', code: 'invalid-type' }])
  })

  test('knows where a fault that is found later stands', () => {
    const { place } = readJsonImport([7, categoryWith()])
    const fault = { pointer: '/name', code: 'name-taken', message: 'x' }
    expect(place('lava-lamp', fault)).toMatchObject({ pointer: '/1/name', line: null })
  })
})
