import type { IntervalData } from '../core/baseLoad/intervalData.ts'
import { ReadingColumns, wattsOfEnergy } from '../core/baseLoad/readingColumns.ts'
import { MOST_READINGS } from '../core/baseLoad/readings.ts'
import type { Warning } from '../core/estimate/estimate.ts'
import { TimeReader } from './baseLoadClock.ts'
import { type CsvColumns, readHeader } from './baseLoadCsvHeader.ts'
import { csvRows } from './baseLoadCsvRows.ts'
import { FaultList, shown } from './baseLoadFaults.ts'
import { type ByteStream, textOf } from './baseLoadText.ts'
import { readTimestamp } from './baseLoadTime.ts'

/** Channels of the columns: what was drawn, and what was fed in. */
const [DRAWN, FED_IN] = [0, 1]

/**
 * Reads interval data in CSV as it arrives; baseLoadCsvHeader.ts says which columns there are. Times carry an offset from
 * UTC, or are local times of `timeZone`.
 * @param timeZone IANA name of the home's time zone
 * @throws FaultyInput naming up to MOST_FAULTS faults by line
 */
export async function readBaseLoadCsv(bytes: ByteStream, timeZone?: string): Promise<IntervalData> {
  const faults = new FaultList()
  const columns = new ReadingColumns()
  const times = new TimeReader(timeZone)
  let header: CsvColumns | null = null
  for await (const rows of csvRows(textOf(bytes, faults), faults))
    for (const row of rows) {
      const { line, cells } = row
      if (!cells)
        faults.add(line, 'unreadable-line', 'it has a quote that is not closed, or one within a cell.')
      else if (header) readRow(line, cells, header, times, columns, faults)
      else header = readHeader(line, cells, row.delimiter, faults)
    }
  if (!header) return faults.stop(1, 'empty-file', 'The file is empty; its first line must name the columns.')
  const step = columns.usualStep()
  if (columns.length > 0 && step === null && !isTimed(header))
    faults.add(
      null,
      'interval-not-known',
      'How long the readings are can’t be told from one of them; add a column end or durationSeconds.',
    )
  faults.refuse()
  return dataOf(header, columns, times, step)
}

const isTimed = ({ duration, start, end }: CsvColumns) =>
  duration !== null || (start !== null && end !== null)

function dataOf(
  header: CsvColumns,
  columns: ReadingColumns,
  times: TimeReader,
  step: number | null,
): IntervalData {
  const { unit, scale } = header
  const readings = columns.toReadings(
    (value, seconds, channel) =>
      channel === FED_IN ? null : unit === 'Wh' ? wattsOfEnergy(value * scale, seconds) : value * scale,
    () => step ?? 0,
    header.start === null,
  )
  return {
    form: 'csv',
    readings,
    clock: times.clock(),
    exported: columns.anyAboveZero((channel) => channel === FED_IN),
    estimated: 0,
    notes: isTimed(header) ? [] : [inferred(step)],
  }
}

const inferred = (step: number | null): Warning => ({
  code: 'interval-inferred',
  message: `The file does not say how long a reading is; ${step ?? 0} s were taken, the usual step from one to the next.`,
})

function readRow(
  line: number,
  cells: readonly string[],
  header: CsvColumns,
  times: TimeReader,
  columns: ReadingColumns,
  faults: FaultList,
): void {
  if (cells.length !== header.width) {
    faults.add(
      line,
      'wrong-cell-count',
      `it has ${cells.length} cells, but the header row has ${header.width}.`,
    )
    return
  }
  const start = header.start === null ? null : instantOf(line, cells[header.start]!, times, faults)
  const end = header.end === null ? null : instantOf(line, cells[header.end]!, times, faults)
  const duration = durationOf(line, cells, header, start, end, faults)
  const value = numberOf(line, cells[header.value]!, header, faults)
  const fedIn = header.fedIn === null ? 0 : numberOf(line, cells[header.fedIn]!, header, faults)
  if (start === undefined || end === undefined || duration === undefined || fedIn === undefined) return
  // An empty value is a gap.
  if (value === undefined || value === null) return
  const place = start ?? end ?? 0
  const room =
    columns.push(place, duration, value, line, DRAWN) &&
    (fedIn === 0 || fedIn === null || columns.push(place, duration, fedIn, line, FED_IN))
  if (!room) faults.stop(line, 'too-many-readings', `there are more than ${MOST_READINGS} readings.`)
}

/** @returns undefined where the cell is faulty */
function instantOf(line: number, cell: string, times: TimeReader, faults: FaultList): number | undefined {
  const timestamp = readTimestamp(cell.trim())
  if (!timestamp) {
    const message = `${shown(cell)} is no time; write it as 2025-03-30T01:15:00+01:00, or as 2025-03-30 01:15 with the home’s timeZone.`
    faults.add(line, 'invalid-time', message)
    return undefined
  }
  const instant = times.read(timestamp)
  if (instant === 'no-time-zone')
    return faults.stop(
      line,
      'no-time-zone',
      `${shown(cell)} does not tell the home’s local time; name the home’s timeZone, such as Europe/Berlin.`,
    )
  if (instant === 'time-left-out') {
    const message = `${shown(cell)} does not exist: the clock was put forward over it. Write times with their offset from UTC.`
    faults.add(line, 'time-left-out', message)
    return undefined
  }
  return instant
}

/** @returns seconds; 0 where the file does not say; undefined where the cell is faulty */
function durationOf(
  line: number,
  cells: readonly string[],
  { duration }: CsvColumns,
  start: number | null | undefined,
  end: number | null | undefined,
  faults: FaultList,
): number | undefined {
  const seconds = duration !== null ? Number(cells[duration]!.trim() || NaN) : null
  const between = typeof start === 'number' && typeof end === 'number' ? end - start : null
  const given = seconds ?? between ?? 0
  if (given > 0 || (seconds === null && between === null)) return given
  const what =
    seconds === null ? 'end must come after start' : `${shown(cells[duration!]!)} must be seconds above 0`
  faults.add(line, 'invalid-duration', `${what}.`)
  return undefined
}

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i

/** @returns null where the cell is empty; undefined where it is faulty */
function numberOf(
  line: number,
  cell: string,
  { decimalComma }: CsvColumns,
  faults: FaultList,
): number | null | undefined {
  const text = cell.trim()
  if (text === '') return null
  if (!NUMBER.test(text) || (text.includes(',') && !decimalComma)) {
    faults.add(
      line,
      'invalid-number',
      `${shown(cell)} is no number; write it without a unit and without grouping marks.`,
    )
    return undefined
  }
  return Number(text.replace(',', '.'))
}
