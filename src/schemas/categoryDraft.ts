import { INVENTED } from '../core/invented.ts'
import { splitAliases, type CategoryColumn, type CategoryRow } from './categoryColumns.ts'
import type { CsvFault } from './readLines.ts'
import { type DecimalMark, readNumber } from './readNumber.ts'

/** Where in the file a part of a category was read. */
export interface Place {
  readonly line: number
  readonly column: CategoryColumn
}

/** A category as its rows spell it, not checked yet. */
export interface CategoryDraft {
  readonly raw: { readonly modes: readonly { readonly draws: readonly unknown[] }[] }
  /** By JSON Pointer into raw. */
  readonly places: ReadonlyMap<string, Place>
  /** Rows that contradict each other. */
  readonly faults: readonly CsvFault[]
}

/** Reads a column that all the rows share, and keeps the place under the pointer. */
type Take = (rows: readonly CategoryRow[], column: CategoryColumn, pointer: string) => string

/** The figure in a cell, see readNumber. */
type Figure = (cell: string) => ReturnType<typeof readNumber>

/** Puts the rows of one category together, in their order. */
export function draftCategory(rows: readonly CategoryRow[], decimal: DecimalMark = '.'): CategoryDraft {
  const figure: Figure = (cell) => readNumber(cell, decimal)
  const faults: CsvFault[] = []
  const line = rows[0]?.line ?? 1
  const places = new Map<string, Place>([
    ['', { line, column: 'code' }],
    ['/modes', { line, column: 'defaultHoursPerWeek' }],
  ])
  const take: Take = (from, column, pointer) => {
    const filled = from.filter(({ cells }) => cells[column].trim() !== '')
    const first = filled[0] ?? from[0]
    if (first) places.set(pointer, { line: first.line, column })
    faults.push(...contradictions(filled, column))
    return first?.cells[column] ?? ''
  }
  const modes = [...groupBy(rows, 'mode').values()].map((own, index) =>
    draftMode(own, take, figure, `/modes/${index}`),
  )
  return { raw: { ...draftHead(rows, take, figure), modes }, places, faults }
}

/** Rows with the same text in a column, in the order of their first. */
export function groupBy(rows: readonly CategoryRow[], column: CategoryColumn): Map<string, CategoryRow[]> {
  const groups = new Map<string, CategoryRow[]>()
  for (const row of rows) {
    const key = row.cells[column].trim()
    const group = groups.get(key)
    if (group) group.push(row)
    else groups.set(key, [row])
  }
  return groups
}

function contradictions(filled: readonly CategoryRow[], column: CategoryColumn): CsvFault[] {
  const [first, ...others] = filled
  if (!first) return []
  const said = first.cells[column].trim()
  return others
    .filter(({ cells }) => cells[column].trim() !== said)
    .map(({ line, cells }) => {
      const message = `"${cells[column]}" contradicts "${said}" in line ${first.line}; leave it empty or make both the same.`
      return { line, column, code: 'contradicts-row', message }
    })
}

function draftHead(rows: readonly CategoryRow[], take: Take, figure: Figure) {
  return {
    code: take(rows, 'code', '/code').trim(),
    name: take(rows, 'name', '/name'),
    group: take(rows, 'group', '/group').trim(),
    aliases: splitAliases(take(rows, 'aliases', '/aliases')),
    defaultQuantity: figure(take(rows, 'defaultQuantity', '/defaultQuantity')),
    retired: readBoolean(take(rows, 'retired', '/retired')),
    keepPowered: draftKeepPowered(rows, take),
    powerFactor: {
      low: figure(take(rows, 'powerFactorLow', '/powerFactor/low')),
      typical: figure(take(rows, 'powerFactorTypical', '/powerFactor/typical')),
      high: figure(take(rows, 'powerFactorHigh', '/powerFactor/high')),
    },
  }
}

function draftKeepPowered(rows: readonly CategoryRow[], take: Take) {
  const reason = take(rows, 'keepPoweredReason', '/keepPowered/reason').trim()
  const note = take(rows, 'keepPoweredNote', '/keepPowered/note')
  return reason === '' && note.trim() === '' ? null : { reason, note }
}

function draftMode(rows: readonly CategoryRow[], take: Take, figure: Figure, base: string) {
  return {
    mode: take(rows, 'mode', `${base}/mode`).trim(),
    defaultHoursPerWeek: figure(take(rows, 'defaultHoursPerWeek', `${base}/defaultHoursPerWeek`)),
    draws: rows.map((row, index) => draftDraw([row], take, figure, `${base}/draws/${index}`)),
  }
}

function draftDraw(row: readonly CategoryRow[], take: Take, figure: Figure, base: string) {
  const number = (column: CategoryColumn, pointer: string) => figure(take(row, column, `${base}/${pointer}`))
  const kind = take(row, 'provenance', `${base}/provenance/kind`).trim()
  const source = take(row, 'source', `${base}/provenance/citation`)
  const uncited = source === '' || (kind === 'sample' && source.trim() === INVENTED)
  return {
    yearFrom: number('yearFrom', 'yearFrom') ?? null,
    yearTo: number('yearTo', 'yearTo') ?? null,
    lowW: number('lowW', 'lowW'),
    typicalW: number('typicalW', 'typicalW'),
    highW: number('highW', 'highW'),
    provenance: { kind, citation: uncited ? null : source, n: number('n', 'provenance/n') ?? null },
  }
}

/** Spreadsheets write TRUE and FALSE; an empty cell is false; anything else is left for the schema to name. */
function readBoolean(cell: string): boolean | string {
  const text = cell.trim().toLowerCase()
  if (text === 'true') return true
  return text === 'false' || text === '' ? false : cell
}
