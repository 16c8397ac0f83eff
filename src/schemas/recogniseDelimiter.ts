import { type CsvFault, type Delimiter, readLines } from './readLines.ts'

const DELIMITERS: readonly Delimiter[] = [',', ';']

/**
 * What separates the cells of a file, by its header row: the mark under which more of the known columns come out. A header
 * that uses both marks, or tabs, is not guessed at.
 */
export function recogniseDelimiter(
  text: string,
  columns: readonly string[],
): { readonly delimiter: Delimiter; readonly faults: readonly CsvFault[] } {
  const [header = ''] = text.trimStart().split(/[\r\n]/, 1)
  const found = DELIMITERS.map((delimiter) => ({ delimiter, known: knownIn(header, delimiter, columns) }))
  const [one, other] = found as [(typeof found)[0], (typeof found)[0]]
  const { delimiter } = other.known > one.known ? other : one
  const usesBoth = DELIMITERS.every((mark) => header.includes(mark))
  if (usesBoth && one.known > 0 && one.known === other.known)
    return {
      delimiter,
      faults: [
        headerFault(
          'ambiguous-delimiter',
          'The header row uses commas and semicolons between its columns. Use one of them, or say which it is: delimiter=comma or delimiter=semicolon.',
        ),
      ],
    }
  if (Math.max(one.known, other.known) <= 1 && header.includes('\t'))
    return {
      delimiter,
      faults: [
        headerFault(
          'unknown-delimiter',
          'The header row uses tabs. Save the file with commas or semicolons.',
        ),
      ],
    }
  return { delimiter, faults: [] }
}

const headerFault = (code: string, message: string): CsvFault => ({ line: 1, column: null, code, message })

function knownIn(header: string, delimiter: Delimiter, columns: readonly string[]): number {
  const cells = readLines(header, delimiter).lines[0]?.cells ?? []
  return cells.filter((cell) => columns.includes(cell.trim())).length
}
