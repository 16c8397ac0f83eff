import type { CsvFault, Delimiter } from './readLines.ts'
import type { DecimalMark } from './readNumber.ts'
import type { CsvRow } from './readTable.ts'

interface Figure<Column extends string> {
  readonly line: number
  readonly column: Column
  readonly text: string
}

/** Such as 0,5 or 12,75: digits, one mark, digits. */
const WITH_MARK = /^[+-]?\d*([.,])\d*(e[+-]?\d+)?$/i
/** Such as 1,500, which is one and a half or fifteen hundred. 0,500 and 1234,567 are not: no group begins so. */
const LIKE_GROUPS = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/

/**
 * What stands between whole part and fraction of the figures of a file; null where no figure has a fraction. Comma-separated
 * files use the point, semicolon-separated ones either. A file that uses both, or whose only figures with a mark could as
 * well be grouped thousands, is not guessed at.
 */
export function recogniseDecimal<Column extends string>(
  rows: readonly CsvRow<Column>[],
  numeric: readonly Column[],
  delimiter: Delimiter,
): { readonly decimal: DecimalMark | null; readonly faults: readonly CsvFault[] } {
  const figures = rows.flatMap(({ line, cells }) =>
    numeric
      .map((column): Figure<Column> => ({ line, column, text: cells[column].trim() }))
      .filter(({ text }) => WITH_MARK.test(text) && /\d/.test(text)),
  )
  const withMark = (mark: DecimalMark) => figures.filter(({ text }) => text.includes(mark))
  const [points, commas] = [withMark('.'), withMark(',')]
  const [point, comma] = [points[0], commas[0]]
  if (point && comma) return { decimal: null, faults: [mixed(point, comma)] }
  const [first] = figures
  if (first === undefined) return { decimal: null, faults: [] }
  const decimal: DecimalMark = comma ? ',' : '.'
  const usual = decimal === '.' && delimiter === ','
  if (!usual && figures.every(({ text }) => LIKE_GROUPS.test(text)))
    return { decimal: null, faults: [likeGroups(first)] }
  return { decimal, faults: [] }
}

const mixed = (point: Figure<string>, comma: Figure<string>): CsvFault => ({
  line: comma.line,
  column: comma.column,
  code: 'ambiguous-decimal',
  message:
    `"${comma.text}" here and "${point.text}" in line ${point.line}, ${point.column}, cannot both be decimals. Write all figures ` +
    'with a point or all with a comma, and none with marks between thousands.',
})

const likeGroups = ({ line, column, text }: Figure<string>): CsvFault => ({
  line,
  column,
  code: 'ambiguous-decimal',
  message:
    `"${text}" may be a decimal or grouped thousands, and no other figure of the file tells which. Say decimal=comma or ` +
    'decimal=point where it is a decimal; write thousands without a mark.',
})
