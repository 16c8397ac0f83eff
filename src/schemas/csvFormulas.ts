/**
 * Text whose first character (after any apostrophes) makes a spreadsheet read a cell as a formula, also in its
 * full-width form.
 */
const FORMULA = /^'*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/

/** The text with one apostrophe before it where a spreadsheet would run it; never apply it to numbers. */
export function neutralise(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text
}

/**
 * Undoes neutralise, exactly: text that began with an apostrophe before a formula has been given another, so taking
 * one away is unambiguous. An apostrophe before anything else belongs to the text and stays.
 */
export function restore(cell: string): string {
  return cell.startsWith("'") && FORMULA.test(cell) ? cell.slice(1) : cell
}
