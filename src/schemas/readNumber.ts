/** Between the whole part of a number and its fraction. */
export type DecimalMark = '.' | ','

/** A number as spreadsheets write it; hexadecimal, grouping marks and words are none. */
const NUMBER: Readonly<Record<DecimalMark, RegExp>> = {
  '.': /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i,
  ',': /^[+-]?(\d+(,\d*)?|,\d+)(e[+-]?\d+)?$/i,
}

/**
 * The number in a CSV cell; undefined where the cell is empty; the text itself where it is no number, so that the
 * schema names it as the fault.
 */
export function readNumber(cell: string, decimal: DecimalMark = '.'): number | string | undefined {
  const text = cell.trim()
  if (text === '') return undefined
  return NUMBER[decimal].test(text) ? Number(text.replace(',', '.')) : text
}
