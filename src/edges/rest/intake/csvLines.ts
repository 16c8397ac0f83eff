import { parse } from 'csv-parse/sync'
import { FaultyInput, type Submitted } from '../../../core/fault.ts'
import type { IntakeHousehold } from '../../../core/inventory/intake.ts'
import { intakeHouseholdSchema } from '../../../schemas/intake.ts'
import {
  delimiterOf,
  type IntakeColumns,
  readIntakeHeader,
  readIntakeRow,
} from '../../../schemas/intakeCsv.ts'
import { readShape } from '../../../schemas/readShape.ts'
import type { IntakeLine } from '../../../useCases/takeIn.ts'
import { unreadable } from './ndjsonLines.ts'
import { type TextLine, textLines } from './textLines.ts'

/**
 * Households of a CSV body, one a row, each on one line: cells hold no line breaks here, so that a row's number is that of
 * its line. The header is line 1.
 * @throws FaultyInput naming every fault of the header, before anything is answered
 */
export async function* csvLines(
  body: AsyncIterable<Uint8Array>,
  after: number,
  isCategory: (name: string) => boolean,
): AsyncGenerator<IntakeLine> {
  let columns: IntakeColumns | null = null
  for await (const line of textLines(body)) {
    if (line.text?.trim() === '') continue
    if (columns === null) columns = headerOf(line, isCategory)
    else if (line.number > after) yield { number: line.number, submitted: rowOf(line, columns) }
  }
}

function headerOf({ text }: TextLine, isCategory: (name: string) => boolean): IntakeColumns {
  const delimiter = delimiterOf(text ?? '')
  const { columns, faults } = readIntakeHeader(cellsOf(text ?? '', delimiter) ?? [], delimiter, isCategory)
  if (faults.length > 0) throw new FaultyInput(faults)
  return columns
}

function rowOf({ text, problem }: TextLine, columns: IntakeColumns): Submitted<IntakeHousehold> {
  if (text === null) return unreadable(problem === 'too-long' ? 'line-too-long' : 'not-utf-8')
  const cells = cellsOf(text, columns.delimiter)
  if (cells === null) return unreadable('malformed-row')
  if (cells.length !== columns.columns.length) return unreadable('wrong-number-of-cells')
  return readShape(intakeHouseholdSchema, readIntakeRow(cells, columns))
}

/** Null where quotes do not close. */
function cellsOf(text: string, delimiter: string): string[] | null {
  try {
    return parse(text, { delimiter, relax_column_count: true })[0] ?? []
  } catch {
    return null // Answered as the fault of this line.
  }
}
