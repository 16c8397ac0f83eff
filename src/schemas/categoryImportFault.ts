import type { BadRow, ImportFile } from '../core/catalogue/importFile.ts'
import type { Fault } from '../core/fault.ts'
import type { CsvFault } from './readLines.ts'

/** So many bad rows are listed; the others are counted. */
const SHOWN = 1_000

export const rowOfCsv = ({ line, column, code, message }: CsvFault): BadRow => ({
  line,
  column,
  pointer: null,
  code,
  message,
})

export const rowOfJson = ({ pointer, code, message }: Fault): BadRow => ({
  line: null,
  column: null,
  pointer,
  code,
  message,
})

export const listed = (badRows: readonly BadRow[]): Pick<ImportFile, 'badRows' | 'badRowCount'> => ({
  badRows: badRows.slice(0, SHOWN),
  badRowCount: badRows.length,
})

/** A file of which nothing could be read, and why. */
export const unreadFile = (badRow: BadRow): ImportFile => ({
  recognised: null,
  rows: 0,
  categories: [],
  codes: new Set(),
  ...listed([badRow]),
  place: (_, { code, message }) => ({ ...badRow, code, message }),
})
