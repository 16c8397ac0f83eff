import type { z } from 'zod'
import type { CsvFault } from './readLines.ts'
import { readNumber } from './readNumber.ts'
import { readShape } from './readShape.ts'
import { readTable, type CsvRow } from './readTable.ts'

/** Entries by their code, and every fault at once; a row with a fault is left out. */
export interface ReferenceTable<Entry> {
  readonly entries: ReadonlyMap<string, Entry>
  readonly faults: readonly CsvFault[]
}

/**
 * Reads a file with one entry a row, each under its code. Every field of an entry, at whatever depth, is read from the
 * column of its own name, so that the last part of a pointer names the column.
 */
export function readReference<Column extends string, Entry extends { readonly code: string }>(
  text: string,
  columns: readonly Column[],
  schema: z.ZodType<Entry>,
  rawOf: (cells: CsvRow<Column>['cells']) => unknown,
): ReferenceTable<Entry> {
  const table = readTable(text, columns)
  const entries = new Map<string, Entry>()
  const faults = [...table.faults]
  for (const { line, cells } of table.rows) {
    const { value, faults: found } = readShape(schema, rawOf(cells))
    faults.push(
      ...found.map(({ pointer, code, message }) => ({ line, column: columnOf(pointer), code, message })),
    )
    if (value && entries.has(value.code)) faults.push(repeated(line, value.code))
    else if (value) entries.set(value.code, value)
  }
  return { entries, faults: faults.sort((a, b) => a.line - b.line) }
}

const columnOf = (pointer: string) => pointer.slice(pointer.lastIndexOf('/') + 1)

const repeated = (line: number, code: string): CsvFault => {
  return {
    line,
    column: 'code',
    code: 'code-repeated',
    message: `The code "${code}" is used on an earlier line.`,
  }
}

/** A field that is left out where its cell is empty. */
export function optionalNumber(field: string, cell: string) {
  const value = readNumber(cell)
  return value === undefined ? {} : { [field]: value }
}
