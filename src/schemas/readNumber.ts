/** A number as spreadsheets write it; hexadecimal, grouping marks and words are none. */
const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i

/**
 * The number in a CSV cell; undefined where the cell is empty; the text itself where it is no number, so that the
 * schema names it as the fault. The place to widen for decimal commas.
 */
export function readNumber(cell: string): number | string | undefined {
  const text = cell.trim()
  if (text === '') return undefined
  return NUMBER.test(text) ? Number(text) : text
}
