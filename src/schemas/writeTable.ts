import { neutralise } from './csvFormulas.ts'

/**
 * Writes a CSV file as RFC 4180 says, with a header row. Text that a spreadsheet would run as a formula is
 * neutralised with an apostrophe, which readTable takes away again.
 */
export function writeTable<Column extends string>(
  columns: readonly Column[],
  rows: readonly Readonly<Record<Column, string | number>>[],
): string {
  const lines = [columns, ...rows.map((row) => columns.map((column) => row[column]))]
  return lines.map((cells) => `${cells.map(written).join(',')}\r\n`).join('')
}

/** Quotes also go round a semicolon, so that a program that splits at semicolons keeps the cell whole. */
function written(value: string | number): string {
  const cell = typeof value === 'number' ? String(value) : neutralise(value)
  return /[",;\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell
}
