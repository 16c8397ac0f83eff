import { z } from 'zod'
import { MODES, type Range } from '../core/catalogue/category.ts'
import { isCurrency } from '../core/money/minorUnit.ts'
import { type Measure, MEASURE_KINDS, OWN_FIELDS } from '../core/savings/measure.ts'
import { INVENTED } from '../core/invented.ts'
import { localId, shortText } from './common.ts'
import { readNumber } from './readNumber.ts'
import { readReference, type ReferenceTable } from './readReference.ts'
import { MEASURE_FIGURES } from './savingsMeasure.ts'

const COLUMNS = [
  'code',
  'name',
  'kind',
  'price',
  'currency',
  'lifeYears',
  'persistenceLow',
  'persistenceTypical',
  'persistenceHigh',
  'ownDrawLowW',
  'ownDrawTypicalW',
  'ownDrawHighW',
  'ratedLoadW',
  'ratedLoadA',
  'outlets',
  'hoursOffPerWeek',
  'fromMode',
  'toMode',
  'newDrawLowW',
  'newDrawTypicalW',
  'newDrawHighW',
  'categories',
  'source',
] as const

/** Columns of text; the others are numbers. */
const TEXTS: readonly string[] = ['code', 'name', 'kind', 'currency', 'fromMode', 'toMode', 'source']
/** Between the categories of one measure. */
const BAR = '|'
const RANGES = ['persistence', 'ownDraw', 'newDraw'] as const
/** Columns that only one kind has, by the field that they make. */
const COLUMN_OF = {
  outlets: 'outlets',
  hoursOffPerWeek: 'hoursOffPerWeek',
  fromMode: 'fromMode',
  toMode: 'toMode',
  newDrawW: 'newDrawTypicalW',
} as const

const { share, draw } = MEASURE_FIGURES
const rowSchema = z.strictObject({
  code: localId,
  name: shortText,
  kind: z.enum(MEASURE_KINDS),
  price: MEASURE_FIGURES.price,
  currency: z.string().refine(isCurrency, 'must be an ISO 4217 code').nullable(),
  lifeYears: MEASURE_FIGURES.lifeYears,
  persistenceLow: share,
  persistenceTypical: share,
  persistenceHigh: share,
  ownDrawLowW: draw.nullable(),
  ownDrawTypicalW: draw.nullable(),
  ownDrawHighW: draw.nullable(),
  ratedLoadW: MEASURE_FIGURES.ratedLoadW.nullable(),
  ratedLoadA: MEASURE_FIGURES.ratedLoadA.nullable(),
  outlets: MEASURE_FIGURES.outlets.nullable(),
  hoursOffPerWeek: MEASURE_FIGURES.hoursOffPerWeek.nullable(),
  fromMode: z.enum(MODES).nullable(),
  toMode: z.enum(MODES).nullable(),
  newDrawLowW: draw.nullable(),
  newDrawTypicalW: draw.nullable(),
  newDrawHighW: draw.nullable(),
  categories: z.array(localId),
  source: z.string().trim().min(1).max(500),
})
type Row = z.output<typeof rowSchema>

const measureRowSchema = rowSchema.superRefine(checkRow).transform(measureOf)

/** Reads the measures, one a row, in the order in which they are offered; an empty cell is what the measure does not have. */
export function parseMeasuresCsv(text: string): ReferenceTable<Measure> {
  return readReference<(typeof COLUMNS)[number], Measure>(text, COLUMNS, measureRowSchema, (cells) =>
    Object.fromEntries(
      Object.entries(cells).map(([column, cell]) => {
        if (column === 'categories') return [column, partsOf(cell)]
        return [column, (TEXTS.includes(column) ? cell.trim() || undefined : readNumber(cell)) ?? null]
      }),
    ),
  )
}

const partsOf = (cell: string) =>
  cell
    .split(BAR)
    .map((part) => part.trim())
    .filter((part) => part !== '')

/** That a priced measure has a currency, that ranges rise, and that a kind has its own figures and no other's. */
function checkRow(row: Row, context: z.RefinementCtx): void {
  const fault = (column: keyof Row, code: string, message: string) =>
    context.addIssue({ code: 'custom', path: [column], message, params: { code } })
  if (row.price > 0 && row.currency === null) fault('currency', 'required', 'a price needs its currency')
  for (const name of RANGES) {
    const [low, typical, high] = cellsOf(row, name)
    const given = [low, typical, high].filter((one) => one !== null)
    if (given.length === 1 || given.length === 2)
      fault(`${name}TypicalW` as keyof Row, 'required', 'give low, typical and high, or none of them')
    else if (given.some((one, i) => i > 0 && one < given[i - 1]!))
      fault(
        name === 'persistence' ? 'persistenceTypical' : `${name}TypicalW`,
        'range-out-of-order',
        'low, typical and high must not fall',
      )
  }
  for (const field of Object.values(OWN_FIELDS).flat()) {
    const column = COLUMN_OF[field]
    const isOwn = (OWN_FIELDS[row.kind] as readonly string[]).includes(field)
    if (isOwn && row[column] === null) fault(column, 'required', `a measure of the kind ${row.kind} needs it`)
    if (!isOwn && row[column] !== null)
      fault(column, 'not-of-this-kind', `a measure of the kind ${row.kind} has none`)
  }
  if (row.fromMode !== null && row.fromMode === row.toMode)
    fault('toMode', 'same-mode', 'a setting moves hours to another mode')
}

const cellsOf = (row: Row, name: (typeof RANGES)[number]) =>
  name === 'persistence'
    ? ([row.persistenceLow, row.persistenceTypical, row.persistenceHigh] as const)
    : ([row[`${name}LowW`], row[`${name}TypicalW`], row[`${name}HighW`]] as const)

function rangeIn(row: Row, name: (typeof RANGES)[number]): Range | null {
  const [low, typical, high] = cellsOf(row, name)
  return low === null || typical === null || high === null ? null : { low, typical, high }
}

function measureOf(row: Row): Measure {
  const { code, name, kind, price, currency, lifeYears, ratedLoadW, ratedLoadA, outlets } = row
  return {
    code,
    name,
    kind,
    price,
    currency: price > 0 ? currency : null,
    lifeYears,
    persistence: rangeIn(row, 'persistence')!,
    ownDrawW: rangeIn(row, 'ownDraw') ?? { low: 0, typical: 0, high: 0 },
    ratedLoadW,
    ratedLoadA,
    outlets,
    hoursOffPerWeek: row.hoursOffPerWeek,
    fromMode: row.fromMode,
    toMode: row.toMode,
    newDrawW: rangeIn(row, 'newDraw'),
    categories: row.categories,
    source: row.source,
    sampleData: row.source === INVENTED,
  }
}
