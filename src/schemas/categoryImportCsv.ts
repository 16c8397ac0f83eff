import type { ImportFile } from '../core/catalogue/importFile.ts'
import { type CsvDialect, readCategoriesCsv } from './categoryCsv.ts'
import { listed, rowOfCsv, unreadFile } from './categoryImportFault.ts'
import type { CsvFault } from './readLines.ts'

/** What keeps a file of a few megabytes from taking minutes and gigabytes to read: beyond this it is no catalogue. */
const MOST_LINES = 100_000
const LONGEST_LINE = 65_536

/** Reads a catalogue file for an import, from its bytes: UTF-8, with or without a byte order mark. */
export function readCsvImport(bytes: Uint8Array, dialect: CsvDialect): ImportFile {
  const text = decodeUtf8(bytes)
  const unfit = text === null ? NOT_UTF_8 : unfitLine(text)
  if (text === null || unfit !== null) return unreadFile(rowOfCsv(unfit ?? NOT_UTF_8))
  const { recognised, rows, categories, codes, faults, place } = readCategoriesCsv(text, dialect)
  return {
    recognised,
    rows,
    categories,
    codes,
    ...listed(faults.map(rowOfCsv)),
    place: (code, fault) => rowOfCsv(place(code, fault)),
  }
}

const NOT_UTF_8: CsvFault = {
  line: 1,
  column: null,
  code: 'not-utf-8',
  message:
    'The file is not UTF-8, so that letters such as ä would come out wrong. Save it again as "CSV UTF-8", or convert it.',
}

function decodeUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return null // The decoder has this one error, and its words say less than NOT_UTF_8.
  }
}

function unfitLine(text: string): CsvFault | null {
  let line = 0
  let from = 0
  for (const { index } of text.matchAll(/\r\n|\n|\r|$/g)) {
    line += 1
    const fault = (code: string, message: string): CsvFault => ({ line, column: null, code, message })
    if (index - from > LONGEST_LINE)
      return fault('line-too-long', `The line has more than ${LONGEST_LINE} characters.`)
    if (line > MOST_LINES)
      return fault('too-many-lines', `The file has more than ${MOST_LINES} lines; split it.`)
    from = index
  }
  return null
}
