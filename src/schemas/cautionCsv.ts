import type { CautionList } from '../core/cautions/caution.ts'
import { keptCautionSchema } from './caution.ts'
import type { CsvFault } from './readLines.ts'
import { readReference } from './readReference.ts'

const COLUMNS = ['code', 'message', 'appliesTo', 'source', 'mark'] as const

/** Between the places of one caution. */
const BAR = '|'

/**
 * Reads the cautions, one a row, in the order in which they are shown. An empty mark is null, for common practice.
 * A fault in the list of places is a fault of its column.
 */
export function parseCautionsCsv(text: string): {
  readonly cautions: CautionList
  readonly faults: readonly CsvFault[]
} {
  const { entries, faults } = readReference(text, COLUMNS, keptCautionSchema, (cells) => ({
    code: cells.code.trim(),
    message: cells.message,
    appliesTo: cells.appliesTo
      .split(BAR)
      .map((place) => place.trim())
      .filter((place) => place !== ''),
    source: cells.source,
    mark: cells.mark.trim() || null,
  }))
  return { cautions: [...entries.values()], faults: faults.map(atItsColumn) }
}

/** Where a pointer ends in the place of a list, readReference names that place. */
const atItsColumn = (fault: CsvFault): CsvFault =>
  fault.column !== null && /^\d+$/.test(fault.column) ? { ...fault, column: 'appliesTo' } : fault
