import type { Limit } from '../core/limits/limit.ts'
import { limitSchema } from './limit.ts'
import { readNumber } from './readNumber.ts'
import { readReference, type ReferenceTable } from './readReference.ts'

const COLUMNS = [
  'code',
  'jurisdiction',
  'purpose',
  'regulation',
  'annex',
  'point',
  'appliesFrom',
  'appliesUntil',
  'mode',
  'condition',
  'supplyType',
  'outputAboveW',
  'outputUpToW',
  'limitW',
  'toleranceW',
  'tolerancePercent',
  'toleranceSource',
  'toleranceMark',
  'source',
  'mark',
] as const

/** Columns in W or percent; the others are text. */
const NUMBERS: readonly string[] = ['outputAboveW', 'outputUpToW', 'limitW', 'toleranceW', 'tolerancePercent']

/** Reads a file of published limits, one a row; an empty cell is null: open, for every kind, or not known. */
export function parseLimitsCsv(text: string): ReferenceTable<Limit> {
  return readReference<(typeof COLUMNS)[number], Limit>(text, COLUMNS, limitSchema, (cells) =>
    Object.fromEntries(
      Object.entries(cells).map(([column, cell]) => [
        column,
        (NUMBERS.includes(column) ? readNumber(cell) : cell.trim() || undefined) ?? null,
      ]),
    ),
  )
}
