import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Category } from '../../../src/core/catalogue/category.ts'
import type { ImportFile } from '../../../src/core/catalogue/importFile.ts'
import { planImport } from '../../../src/core/catalogue/planImport.ts'
import { categoryWith, drawWith, modeWith } from './sampleCategory.ts'

const named = (code: string, changes: Partial<Category> = {}) =>
  categoryWith({ code, name: `Name of ${code}`, aliases: [], ...changes })
const catalogue = catalogueOf(1, [named('clock'), named('radio'), named('vase', { retired: true })])

const fileOf = (...categories: readonly Category[]): ImportFile => ({
  recognised: null,
  rows: categories.length,
  categories,
  codes: new Set(categories.map(({ code }) => code)),
  badRows: [],
  badRowCount: 0,
  place: (code, { pointer, code: fault, message }) => ({
    line: null,
    column: null,
    pointer: `/${code}${pointer}`,
    code: fault,
    message,
  }),
})
const kindsOf = (file: ImportFile, retireMissing = false) =>
  planImport(catalogue, file, retireMissing).changes.map(({ code, kind }) => `${code} ${kind}`)

describe('a plan of an import', () => {
  test('lists what is added and changed in the order of the codes, and not what stays as it is', () => {
    const file = fileOf(
      named('radio', { name: 'Wireless' }),
      named('clock'),
      named('zither'),
      named('abacus'),
    )
    expect(kindsOf(file)).toEqual(['abacus added', 'radio changed', 'zither added'])
  })

  test('retires what the file does not speak of only where that is asked for, and nothing twice', () => {
    const file = fileOf(named('radio'))
    expect(kindsOf(file)).toEqual([])
    expect(kindsOf(file, true)).toEqual(['clock retired'])
  })

  test('keeps what the file speaks of wrongly from being retired', () => {
    const file = { ...fileOf(), codes: new Set(['clock', 'radio']) }
    expect(kindsOf(file, true)).toEqual([])
  })

  test('names the large changes with their category; a new one has none', () => {
    const modes = [modeWith({ draws: [drawWith({ highW: 40 })] })]
    const { largeChanges } = planImport(
      catalogue,
      fileOf(named('radio', { modes }), named('zither', { modes })),
      false,
    )
    expect(largeChanges).toMatchObject([{ category: 'radio', figure: 'highW', beforeW: 4, afterW: 40 }])
  })

  test('places a name that another category has in the file', () => {
    const { badRows } = planImport(catalogue, fileOf(named('zither', { aliases: ['Name of clock'] })), false)
    expect(badRows).toMatchObject([{ pointer: '/zither/aliases/0', code: 'name-taken' }])
  })
})
