import { type CsvError, parse } from 'csv-parse/sync'
import { restore } from './csvFormulas.ts'

/** What is wrong with a CSV file: where (line from 1, column by its header; null for the whole line), code, sentence. */
export interface CsvFault {
  readonly line: number
  readonly column: string | null
  readonly code: string
  readonly message: string
}

/** The cells of one row, and the line of the file that it starts on. */
export interface CsvLine {
  readonly line: number
  readonly cells: readonly string[]
}

/** What separates the cells of a row. */
export type Delimiter = ',' | ';'

/** How rows are told apart. */
const DIALECT = { record_delimiter: ['\r\n', '\n', '\r'], bom: true }
const EVERY_FAULT = { relax_column_count: true, skip_records_with_error: true, info: true } as const

/** Splits a CSV file into cells. Rows that break the rules of quoting are left out and named; empty ones are passed over. */
export function readLines(
  text: string,
  delimiter: Delimiter = ',',
): { lines: CsvLine[]; faults: CsvFault[] } {
  const faults = new Map<number, CsvFault>()
  const onSkip = (error: CsvError | undefined): undefined => {
    const fault = unreadable(error)
    if (!faults.has(fault.line)) faults.set(fault.line, fault)
  }
  // With `info` the library answers records with their place, which its types do not know.
  const records = parse(text, {
    ...DIALECT,
    ...EVERY_FAULT,
    delimiter,
    on_skip: onSkip,
  }) as unknown as Parsed[]
  const lines = numbered(records).filter(({ cells }) => cells.some((cell) => cell.trim() !== ''))
  return { lines, faults: [...faults.values()] }
}

interface Parsed {
  readonly info: { readonly lines: number }
  readonly record: readonly string[]
}

/**
 * The library counts the line that a row ends on, and a CR LF within quotes as two lines; this turns its count into
 * the line that the row starts on.
 */
function numbered(records: readonly Parsed[]): CsvLine[] {
  let pairsBefore = 0
  return records.map(({ info, record }) => {
    const text = record.join(',')
    const line = info.lines - count(text, /[\r\n]/g) - pairsBefore
    pairsBefore += count(text, /\r\n/g)
    return { line, cells: record.map(restore) }
  })
}

const count = (text: string, pattern: RegExp) => text.match(pattern)?.length ?? 0

function unreadable(error: CsvError | undefined): CsvFault {
  const what =
    error?.code === 'CSV_QUOTE_NOT_CLOSED'
      ? 'The file ends within quotes: a quote on this line or before it is never closed'
      : 'A quote stands in the middle of a cell'
  const message = `${what}. A cell that holds quotes goes in quotes, and each quote within it is doubled.`
  return { line: Number(error?.['lines'] ?? 1), column: null, code: 'unreadable-line', message }
}
