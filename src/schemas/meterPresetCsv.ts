import { z } from 'zod'
import { READING_UNITS } from '../core/readings/meterAccuracy.ts'
import {
  METER_PRESETS,
  type MeterPreset,
  type MeterPresetCode,
  type MeterPresets,
} from '../core/readings/meterPreset.ts'
import { shortText } from './common.ts'
import { meterAccuracySchema } from './reading.ts'
import type { CsvFault } from './readLines.ts'
import { readNumber } from './readNumber.ts'
import { readShape } from './readShape.ts'
import { type CsvRow, readTable } from './readTable.ts'

const COLUMNS = ['code', 'name', 'unit', 'percentOfReading', 'counts', 'resolution', 'source'] as const
type Row = CsvRow<(typeof COLUMNS)[number]>

const rowSchema = meterAccuracySchema.extend({
  code: z.enum(METER_PRESETS),
  name: shortText,
  unit: z.enum(READING_UNITS),
  source: z.string().trim().min(1).max(500),
})
type ReadRow = z.output<typeof rowSchema> & { readonly line: number }

/**
 * Reads the classes of meter: one row for each class and each unit that it reads, with its limits of error in that unit.
 * The classes are fixed, the numbers the operator's to edit. Null where any is missing or faulty.
 */
export function parseMeterPresetsCsv(text: string): {
  readonly presets: MeterPresets | null
  readonly faults: readonly CsvFault[]
} {
  const table = readTable(text, COLUMNS)
  const rows = table.rows.map(readRow)
  const sound = rows.flatMap(({ row }) => row ?? [])
  const presets = Object.fromEntries(METER_PRESETS.map((code) => [code, presetOf(code, sound)]))
  const found = [...table.faults, ...rows.flatMap(({ faults }) => faults), ...repeated(sound)]
  const faults = found.length > 0 ? found.sort((a, b) => a.line - b.line) : missing(presets)
  return { presets: faults.length === 0 ? (presets as MeterPresets) : null, faults }
}

function readRow({ line, cells }: Row): { row: ReadRow | null; faults: CsvFault[] } {
  const { value, faults } = readShape(rowSchema, {
    code: cells.code.trim(),
    name: cells.name,
    unit: cells.unit.trim(),
    percentOfReading: readNumber(cells.percentOfReading),
    counts: readNumber(cells.counts),
    resolution: readNumber(cells.resolution),
    source: cells.source,
  })
  return {
    row: value && { ...value, line },
    faults: faults.map(({ pointer, code, message }) => ({ line, column: pointer.slice(1), code, message })),
  }
}

function repeated(rows: readonly ReadRow[]): CsvFault[] {
  return rows
    .filter(({ code, unit }, i) => rows.findIndex((row) => row.code === code && row.unit === unit) < i)
    .map(({ line, code, unit }) => ({
      line,
      column: 'unit',
      code: 'unit-repeated',
      message: `What ${code} can do in ${unit} is on an earlier line.`,
    }))
}

/** Name and source are those of the class's first row. */
function presetOf(code: MeterPresetCode, rows: readonly ReadRow[]): MeterPreset | null {
  const own = rows.filter((row) => row.code === code)
  if (own.length === 0) return null
  const { name, source } = own[0]!
  const accuracies = own.map(({ unit, percentOfReading, counts, resolution }) => [
    unit,
    { percentOfReading, counts, resolution },
  ])
  return { code, name, source, accuracies: Object.fromEntries(accuracies) as MeterPreset['accuracies'] }
}

function missing(presets: Readonly<Record<string, MeterPreset | null>>): CsvFault[] {
  const fault = (column: string, message: string): CsvFault => ({
    line: 1,
    column,
    code: 'preset-missing',
    message,
  })
  const absent = METER_PRESETS.filter((code) => !presets[code])
  const faults = absent.map((code) => fault('code', `There is no row for ${code}; add one.`))
  if (presets['plug-in-wattmeter'] && !presets['plug-in-wattmeter'].accuracies.W)
    faults.push(fault('unit', 'plug-in-wattmeter has no row in W; add one: next readings rest on it.'))
  return faults
}
