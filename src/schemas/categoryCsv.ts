import type { Category, CategoryMode, TypicalDraw } from '../core/catalogue/category.ts'
import { checkCategory } from '../core/catalogue/checkCategory.ts'
import { checkDraw } from '../core/catalogue/checkDraw.ts'
import type { Fault } from '../core/fault.ts'
import { categorySchema, typicalDrawSchema } from './category.ts'
import { INVENTED } from '../core/invented.ts'
import { CATEGORY_COLUMNS, joinAliases, NUMERIC_COLUMNS } from './categoryColumns.ts'
import { draftCategory, groupBy, type CategoryDraft } from './categoryDraft.ts'
import type { CsvFault, Delimiter } from './readLines.ts'
import type { DecimalMark } from './readNumber.ts'
import { recogniseDecimal } from './recogniseDecimal.ts'
import { recogniseDelimiter } from './recogniseDelimiter.ts'
import { readTable } from './readTable.ts'
import { writeTable } from './writeTable.ts'
import { readShape } from './readShape.ts'

/** How a file is written; what is left out is found out. */
export interface CsvDialect {
  readonly delimiter?: Delimiter | undefined
  readonly decimal?: DecimalMark | undefined
}

export interface CategoriesFile {
  readonly recognised: { readonly delimiter: Delimiter; readonly decimal: DecimalMark | null }
  readonly categories: readonly Category[]
  /** Every code in the file, also of categories with a fault. */
  readonly codes: ReadonlySet<string>
  readonly rows: number
  readonly faults: readonly CsvFault[]
  /** Where in the file a fault of one of its categories stands. */
  readonly place: (code: string, fault: Fault) => CsvFault
}

/**
 * Reads a catalogue file (columns: categoryColumns.ts). Names every bad row at once, by line and column; a category
 * with any fault is left out, so the categories are complete and sound only where there are no faults.
 */
export function parseCategoriesCsv(text: string): { categories: Category[]; faults: CsvFault[] } {
  const { categories, faults } = readCategoriesCsv(text, { delimiter: ',', decimal: '.' })
  return { categories: [...categories], faults: [...faults] }
}

/** The same for a file that may be written with semicolons or decimal commas. One that can be read in two ways is not read. */
export function readCategoriesCsv(text: string, dialect: CsvDialect = {}): CategoriesFile {
  const { delimiter, faults: unclear } = dialect.delimiter
    ? { delimiter: dialect.delimiter, faults: [] }
    : recogniseDelimiter(text, CATEGORY_COLUMNS)
  if (unclear.length > 0) return unreadFile({ delimiter, decimal: null }, unclear)
  const { rows, faults } = readTable(text, CATEGORY_COLUMNS, delimiter)
  const { decimal, faults: mixed } = dialect.decimal
    ? { decimal: dialect.decimal, faults: [] }
    : recogniseDecimal(rows, NUMERIC_COLUMNS, delimiter)
  if (mixed.length > 0) return unreadFile({ delimiter, decimal }, [...faults, ...mixed])
  const drafts = [...groupBy(rows, 'code')].map(
    ([code, own]) => [code, draftCategory(own, decimal ?? '.')] as const,
  )
  const read = drafts.map(([, draft]) => checkDraft(draft))
  const byCode = new Map(drafts)
  return {
    recognised: { delimiter, decimal },
    categories: read.flatMap(({ category }) => category ?? []),
    codes: new Set(byCode.keys()),
    rows: rows.length,
    faults: [...faults, ...read.flatMap((each) => each.faults)].sort(inFileOrder),
    place: (code, fault) => placed(fault, byCode.get(code)),
  }
}

const unreadFile = (
  recognised: CategoriesFile['recognised'],
  faults: readonly CsvFault[],
): CategoriesFile => ({
  recognised,
  categories: [],
  codes: new Set(),
  rows: 0,
  faults,
  place: (_, fault) => placed(fault, undefined),
})

/**
 * Writes sound categories as a catalogue file that parseCategoriesCsv reads back exactly. Each row repeats what it
 * shares with others, so that rows can be sorted and filtered.
 */
export function formatCategoriesCsv(categories: readonly Category[]): string {
  const rows = categories.flatMap((category) =>
    category.modes.flatMap((mode) => mode.draws.map((draw) => rowOf(category, mode, draw))),
  )
  return writeTable(CATEGORY_COLUMNS, rows)
}

const inFileOrder = (a: CsvFault, b: CsvFault) => a.line - b.line || placeInRow(a) - placeInRow(b)
const placeInRow = ({ column }: CsvFault) => CATEGORY_COLUMNS.findIndex((each) => each === column)

function rowOf(category: Category, mode: CategoryMode, draw: TypicalDraw) {
  const { kind, citation, n } = draw.provenance
  return {
    code: category.code,
    name: category.name,
    group: category.group,
    aliases: joinAliases(category.aliases),
    defaultQuantity: category.defaultQuantity,
    retired: String(category.retired),
    keepPoweredReason: category.keepPowered?.reason ?? '',
    keepPoweredNote: category.keepPowered?.note ?? '',
    powerFactorLow: category.powerFactor.low,
    powerFactorTypical: category.powerFactor.typical,
    powerFactorHigh: category.powerFactor.high,
    mode: mode.mode,
    defaultHoursPerWeek: mode.defaultHoursPerWeek,
    yearFrom: draw.yearFrom ?? '',
    yearTo: draw.yearTo ?? '',
    lowW: draw.lowW,
    typicalW: draw.typicalW,
    highW: draw.highW,
    provenance: kind,
    source: citation ?? (kind === 'sample' ? INVENTED : ''),
    n: n ?? '',
  }
}

function checkDraft(draft: CategoryDraft): { category: Category | null; faults: CsvFault[] } {
  const shape = readShape(categorySchema, draft.raw)
  const rules = shape.value ? checkCategory(shape.value) : readableDrawFaults(draft)
  const faults = [...draft.faults, ...[...shape.faults, ...rules].map((fault) => placed(fault, draft))]
  return { category: faults.length === 0 ? shape.value : null, faults }
}

/** Where a category does not have its shape, its draws that have theirs are checked all the same: every bad row at once. */
function readableDrawFaults({ raw }: CategoryDraft): Fault[] {
  return raw.modes.flatMap(({ draws }, mode) =>
    draws.flatMap((draw, index) => {
      const { value } = readShape(typicalDrawSchema, draw)
      return value ? checkDraw(value, `/modes/${mode}/draws/${index}`) : []
    }),
  )
}

/** A fault at the cell that its pointer, or the nearest pointer above it, was read from. */
function placed({ pointer, code, message }: Fault, draft: CategoryDraft | undefined): CsvFault {
  const places = draft?.places
  let known = pointer
  while (known !== '' && !places?.has(known)) known = known.slice(0, known.lastIndexOf('/'))
  const place = places?.get(known)
  return { line: place?.line ?? 1, column: place?.column ?? null, code, message }
}
