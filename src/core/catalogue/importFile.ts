import type { Fault } from '../fault.ts'
import type { Category } from './category.ts'

/** What is wrong in a file that is to be imported: in a CSV file by line and column, in a JSON document by pointer. */
export interface BadRow {
  readonly line: number | null
  readonly column: string | null
  readonly pointer: string | null
  readonly code: string
  readonly message: string
}

/** How a CSV file turned out to be written. */
export interface Recognised {
  readonly delimiter: ',' | ';'
  /** Null where no figure in the file has a fraction. */
  readonly decimal: '.' | ',' | null
}

/** A file of categories, read: those that are sound by themselves, and what is wrong with the others. */
export interface ImportFile {
  /** Null for a JSON document, which can be written in one way only. */
  readonly recognised: Recognised | null
  /** Rows below the header, or members of the list. */
  readonly rows: number
  readonly categories: readonly Category[]
  /** Every code that the file speaks of, also where what it says of it is wrong. */
  readonly codes: ReadonlySet<string>
  /** In the order of the file; the first of them where there are very many. */
  readonly badRows: readonly BadRow[]
  readonly badRowCount: number
  /** A fault of one of the categories, found later, as a bad row. */
  readonly place: (code: string, fault: Fault) => BadRow
}
