import { MODES } from '../core/catalogue/category.ts'
import type { Fault } from '../core/fault.ts'
import { restore } from './csvFormulas.ts'
import type { Delimiter } from './readLines.ts'
import { readNumber } from './readNumber.ts'

/**
 * Households as rows: columns of what holds for the household, and for each kind of device a column named by its category's
 * code, alias or name that holds how many there are. `television.standby.watts` holds what a wattmeter showed there, W, and
 * `television.standby.hoursPerWeek` the hours, both of all of them alike.
 */
const TEXTS = ['reference', 'date', 'notes', 'tariffCode', 'emissionFactorCode'] as const
const NUMBERS = ['annualUseKwh', 'weeksPerYear', 'coverageProbability'] as const
const FIGURES = ['watts', 'hoursPerWeek'] as const

type Column =
  | { readonly kind: 'text'; readonly field: string }
  | { readonly kind: 'number'; readonly field: string }
  | { readonly kind: 'count'; readonly category: string }
  | {
      readonly kind: 'figure'
      readonly figure: (typeof FIGURES)[number]
      readonly category: string
      readonly mode: (typeof MODES)[number]
    }

/** How the rows of one file are read. */
export interface IntakeColumns {
  readonly columns: readonly Column[]
  readonly delimiter: Delimiter
}

/** The mark between the cells of a file, by its first line: the one that occurs more often there. */
export const delimiterOf = (header: string): Delimiter =>
  header.split(';').length > header.split(',').length ? ';' : ','

/**
 * What the header row says of the columns.
 * @param isCategory whether a category has this code, alias or name
 */
export function readIntakeHeader(
  cells: readonly string[],
  delimiter: Delimiter,
  isCategory: (name: string) => boolean,
): { readonly columns: IntakeColumns; readonly faults: readonly Fault[] } {
  const names = cells.map((cell) => cell.trim())
  const faults: Fault[] = []
  const columns = names.flatMap((name, i) => {
    const column = columnOf(name, isCategory)
    if (column === null) faults.push(unknownColumn(name))
    if (names.indexOf(name) < i) faults.push(twice(name))
    return column === null ? [] : [column]
  })
  return { columns: { columns, delimiter }, faults }
}

function columnOf(name: string, isCategory: (name: string) => boolean): Column | null {
  if (TEXTS.some((field) => field === name)) return { kind: 'text', field: name }
  if (NUMBERS.some((field) => field === name)) return { kind: 'number', field: name }
  if (isCategory(name)) return { kind: 'count', category: name }
  const [category = '', modeName, figure, ...others] = name.split('.')
  const mode = MODES.find((one) => one === modeName)
  const known = FIGURES.find((one) => one === figure)
  if (mode === undefined || known === undefined || others.length > 0 || !isCategory(category)) return null
  return { kind: 'figure', figure: known, category, mode }
}

const unknownColumn = (name: string): Fault => ({
  pointer: '/header',
  code: 'unknown-column',
  message:
    `There is no column "${name.slice(0, 100)}". Columns are ${[...TEXTS, ...NUMBERS].join(', ')}, the code of a category for how many ` +
    'there are, and such as television.standby.watts and television.standby.hoursPerWeek.',
})
const twice = (name: string): Fault => ({
  pointer: '/header',
  code: 'duplicate-column',
  message: `The column "${name.slice(0, 100)}" stands in the header twice.`,
})

/**
 * One row in the form that a line of NDJSON has. Empty cells say nothing; a count of 0 is no device. With semicolons between
 * the cells a decimal comma is understood besides the point.
 */
export function readIntakeRow(cells: readonly string[], { columns, delimiter }: IntakeColumns): unknown {
  const household: Record<string, unknown> = {}
  const devices = new Map<string, Record<string, unknown>>()
  const modes = new Map<string, Record<string, unknown>>()
  columns.forEach((column, i) => {
    const cell = restore(cells[i] ?? '').trim()
    if (cell === '') return
    if (column.kind === 'text') household[column.field] = cell
    else if (column.kind === 'number') household[column.field] = numberOf(cell, delimiter)
    else if (column.kind === 'count')
      deviceOf(devices, column.category)['quantity'] = numberOf(cell, delimiter)
    else {
      const mode = modeOf(modes, deviceOf(devices, column.category), column.category, column.mode)
      const figure = numberOf(cell, delimiter)
      if (column.figure === 'hoursPerWeek') mode['hoursPerWeek'] = figure
      else mode['reading'] = { kind: 'power', watts: figure }
    }
  })
  return { ...household, devices: [...devices.values()].filter(({ quantity }) => quantity !== 0) }
}

const numberOf = (cell: string, delimiter: Delimiter) =>
  readNumber(cell, delimiter === ';' && cell.includes(',') ? ',' : '.')

function deviceOf(devices: Map<string, Record<string, unknown>>, category: string) {
  const device = devices.get(category) ?? { category }
  devices.set(category, device)
  return device
}

function modeOf(
  modes: Map<string, Record<string, unknown>>,
  device: Record<string, unknown>,
  category: string,
  name: string,
) {
  const key = `${category} ${name}`
  const known = modes.get(key)
  if (known) return known
  const mode: Record<string, unknown> = { mode: name }
  modes.set(key, mode)
  const others = device['modes'] as unknown[] | undefined
  device['modes'] = [...(others ?? []), mode]
  return mode
}
