import { stringify } from 'csv-stringify/sync'
import { neutralise } from './csvFormulas.ts'

/**
 * Writes a CSV file as RFC 4180 says, with a header row. Text that a spreadsheet would run as a formula is
 * neutralised with an apostrophe, which readTable takes away again; csv-stringify's own `escape_formulas` cannot be
 * undone, since "=x" and "'=x" come out of it the same.
 */
export function writeTable<Column extends string>(
  columns: readonly Column[],
  rows: readonly Readonly<Record<Column, string | number>>[],
): string {
  return stringify(
    rows.map((row) => columns.map((column) => cellOf(row[column]))),
    {
      header: true,
      columns: [...columns],
      record_delimiter: 'windows',
      quoted_match: [/;/, /^\s|\s$/, /[\r\n]/],
    },
  )
}

const cellOf = (value: string | number): string =>
  typeof value === 'number' ? String(value) : neutralise(value)
