import { readLines, type CsvFault, type CsvLine, type Delimiter } from './readLines.ts'

/** One row below the header: the line it starts on, and the text of each cell by its column. */
export interface CsvRow<Column extends string> {
  readonly line: number
  readonly cells: Readonly<Record<Column, string>>
}

export interface CsvTable<Column extends string> {
  readonly rows: readonly CsvRow<Column>[]
  readonly faults: readonly CsvFault[]
}

/**
 * Reads a CSV file (RFC 4180, UTF-8 with or without BOM) whose header row names exactly the given columns, in any
 * order. Rows that can't be read are left out and named in the faults, all at once; empty rows are passed over.
 * Where a column is missing or named twice, no row is read.
 */
export function readTable<Column extends string>(
  text: string,
  columns: readonly Column[],
  delimiter: Delimiter = ',',
): CsvTable<Column> {
  const { lines, faults } = readLines(text, delimiter)
  const [header, ...body] = lines
  if (!header) return { rows: [], faults: [...faults, emptyFile] }
  const headerFaults = checkHeader(header, columns)
  if (headerFaults.some(({ code }) => code !== 'unknown-column'))
    return { rows: [], faults: [...faults, ...headerFaults] }
  const width = header.cells.length
  const rows = body
    .filter(({ cells }) => cells.length === width)
    .map(({ line, cells }) => ({ line, cells: byColumn(header, cells) as CsvRow<Column>['cells'] }))
  const ragged = body.filter(({ cells }) => cells.length !== width).map((each) => raggedFault(each, width))
  return { rows, faults: [...faults, ...headerFaults, ...ragged] }
}

const emptyFile: CsvFault = {
  line: 1,
  column: null,
  code: 'empty-file',
  message: 'The file is empty; its first line must name the columns.',
}

function checkHeader({ line, cells }: CsvLine, columns: readonly string[]): CsvFault[] {
  const names = cells.map((cell) => cell.trim())
  const fault = (code: string, message: (name: string) => string) => (column: string) => {
    return { line, column, code, message: message(column) }
  }
  return [
    ...columns
      .filter((column) => !names.includes(column))
      .map(fault('missing-column', (name) => `The header row has no column "${name}"; add it.`)),
    ...names
      .filter((name, index) => names.indexOf(name) !== index)
      .map(fault('repeated-column', (name) => `The header row names the column "${name}" more than once.`)),
    ...names
      .filter((name) => !columns.includes(name))
      .map(
        fault('unknown-column', (name) => `There is no column "${name}"; known are ${columns.join(', ')}.`),
      ),
  ]
}

const byColumn = (header: CsvLine, cells: readonly string[]) =>
  Object.fromEntries(header.cells.map((name, index) => [name.trim(), cells[index]]))

function raggedFault({ line, cells }: CsvLine, width: number): CsvFault {
  const message = `This line has ${cells.length} cells, but the header row has ${width}.`
  return { line, column: null, code: 'wrong-cell-count', message }
}
