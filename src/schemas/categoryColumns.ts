import type { CsvRow } from './readTable.ts'

/**
 * Columns of a catalogue file: one row for each category, mode and span of years of manufacture. Units are in the
 * names. Those of the category say the same on each of its rows and those of the mode on each of the mode's; a row
 * may leave them empty where another row fills them.
 */
export const CATEGORY_COLUMNS = [
  'code',
  'name',
  'group',
  'aliases',
  'defaultQuantity',
  'retired',
  'keepPoweredReason',
  'keepPoweredNote',
  'powerFactorLow',
  'powerFactorTypical',
  'powerFactorHigh',
  'mode',
  'defaultHoursPerWeek',
  'yearFrom',
  'yearTo',
  'lowW',
  'typicalW',
  'highW',
  'provenance',
  'source',
  'n',
] as const
/** Those that hold figures. */
export const NUMERIC_COLUMNS = [
  'defaultQuantity',
  'powerFactorLow',
  'powerFactorTypical',
  'powerFactorHigh',
  'defaultHoursPerWeek',
  'yearFrom',
  'yearTo',
  'lowW',
  'typicalW',
  'highW',
  'n',
] as const satisfies readonly (typeof CATEGORY_COLUMNS)[number][]
export type CategoryColumn = (typeof CATEGORY_COLUMNS)[number]
export type CategoryRow = CsvRow<CategoryColumn>

/** Between two aliases in one cell. A backslash takes its meaning away from a bar, or from a backslash, in an alias. */
export const joinAliases = (aliases: readonly string[]) =>
  aliases.map((alias) => alias.replaceAll(/[\\|]/g, '\\$&')).join(' | ')

export function splitAliases(cell: string): string[] {
  if (cell.trim() === '') return []
  const pieces = cell.matchAll(/(?:^|\|)((?:\\[\\|]|[^|])*)/g)
  return [...pieces].map(([, piece = '']) => piece.replaceAll(/\\([\\|])/g, '$1').trim())
}
