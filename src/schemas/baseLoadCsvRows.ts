import { CsvError, parse } from 'csv-parse/sync'
import type { FaultList } from './baseLoadFaults.ts'

export interface CsvRow {
  readonly line: number
  /** Null where the quotes of the line can't be read. */
  readonly cells: readonly string[] | null
  readonly delimiter: string
}

/** A longer line has no place in interval data, and would fill memory. */
const LONGEST_LINE = 10_000

/**
 * The rows of a CSV file as it arrives, some at a time, empty ones passed over. The delimiter is that of the first line:
 * semicolon, tab or comma. A row is a line: what has quotes goes through the CSV library, what has none is split, which
 * is many times faster; a quoted line break has no place here and is a fault.
 */
export async function* csvRows(text: AsyncIterable<string>, faults: FaultList): AsyncGenerator<CsvRow[]> {
  let [line, delimiter] = [0, '']
  for await (const texts of lines(text, faults)) {
    const rows: CsvRow[] = []
    for (const row of texts) {
      line++
      if (row.trim() === '') continue
      delimiter ||= delimiterOf(row)
      const cells = row.includes('"') ? quotedCells(row, delimiter) : row.split(delimiter)
      rows.push({ line, cells, delimiter })
    }
    yield rows
  }
}

const delimiterOf = (header: string) => [';', '\t'].find((mark) => header.includes(mark)) ?? ','

function quotedCells(row: string, delimiter: string): readonly string[] | null {
  try {
    const rows: string[][] = parse(row, { delimiter, relax_column_count: true })
    return rows[0] ?? null
  } catch (error) {
    if (error instanceof CsvError) return null
    throw error
  }
}

async function* lines(text: AsyncIterable<string>, faults: FaultList): AsyncGenerator<string[]> {
  let [rest, line] = ['', 0]
  for await (const piece of text) {
    const rows = (rest + piece).split(/\r\n|\n|\r(?!$)/)
    rest = rows.pop()!
    line += rows.length
    if (rest.length > LONGEST_LINE)
      faults.stop(line + 1, 'line-too-long', `it has more than ${LONGEST_LINE} characters.`)
    yield rows
  }
  yield [rest.replace(/\r$/, '')]
}
