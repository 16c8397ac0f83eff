import { type FaultList, shown } from './baseLoadFaults.ts'

/** Where what stands in a row; null for a column that is not there. */
export interface CsvColumns {
  readonly width: number
  readonly start: number | null
  readonly end: number | null
  readonly duration: number | null
  readonly value: number
  readonly fedIn: number | null
  readonly unit: 'Wh' | 'W'
  /** Thousand for kWh and kW. */
  readonly scale: number
  /** Numbers may have a decimal comma: the delimiter is not the comma. */
  readonly decimalComma: boolean
}

const ALLOWED =
  'start and end of each interval (or one of them, or start and durationSeconds), and one column of values: wattHours, kilowattHours, watts or kilowatts, or any name with its unit behind it, such as "Energy (kWh)"; what is fed in goes into a column whose name begins with "exported", in the same unit'

const UNITS: Readonly<Record<string, Pick<CsvColumns, 'unit' | 'scale'>>> = {
  wh: { unit: 'Wh', scale: 1 },
  watthours: { unit: 'Wh', scale: 1 },
  kwh: { unit: 'Wh', scale: 1000 },
  kilowatthours: { unit: 'Wh', scale: 1000 },
  w: { unit: 'W', scale: 1 },
  watts: { unit: 'W', scale: 1 },
  kw: { unit: 'W', scale: 1000 },
  kilowatts: { unit: 'W', scale: 1000 },
}

/** The unit that a column's name ends in: in brackets behind any words, or the whole name. */
function unitOf(name: string): Pick<CsvColumns, 'unit' | 'scale'> | undefined {
  const bracketed = /[([]\s*([a-z]+)\s*[)\]]$/i.exec(name)?.[1]
  return UNITS[(bracketed ?? name.replace(/^exported[\s_-]*/i, '')).toLowerCase()]
}

/** @throws FaultyInput where the header does not tell what the columns are */
export function readHeader(
  line: number,
  cells: readonly string[],
  delimiter: string,
  faults: FaultList,
): CsvColumns {
  const names = cells.map((cell) => cell.trim())
  const place = (wanted: string) => {
    const index = names.findIndex((name) => name.toLowerCase() === wanted)
    return index < 0 ? null : index
  }
  const [start, end, duration] = [place('start'), place('end'), place('durationseconds')]
  const values = names.flatMap((name, index) => {
    const unit = unitOf(name)
    return unit ? [{ index, name, unit, fedIn: /^exported/i.test(name) }] : []
  })
  const drawn = values.filter(({ fedIn }) => !fedIn)
  const fedIn = values.filter((value) => value.fedIn)
  const others = names.filter(
    (_, index) => ![start, end, duration].includes(index) && !values.some((value) => value.index === index),
  )
  for (const name of others)
    faults.add(line, 'unknown-column', `there is no column ${shown(name)}; known are ${ALLOWED}.`)
  if (start === null && end === null)
    faults.add(line, 'missing-column', `there is no column start or end; needed are ${ALLOWED}.`)
  if (drawn.length !== 1 || fedIn.length > 1)
    faults.add(
      line,
      drawn.length === 0 ? 'missing-column' : 'repeated-column',
      `there are ${drawn.length} columns of what was drawn and ${fedIn.length} of what was fed in; needed are ${ALLOWED}.`,
    )
  const [value, exported] = [drawn[0], fedIn[0]]
  if (
    value &&
    exported &&
    (value.unit.unit !== exported.unit.unit || value.unit.scale !== exported.unit.scale)
  )
    faults.add(
      line,
      'mixed-units',
      `${shown(value.name)} and ${shown(exported.name)} must have the same unit.`,
    )
  faults.refuse()
  return {
    width: names.length,
    start,
    end,
    duration,
    value: value!.index,
    fedIn: exported?.index ?? null,
    ...value!.unit,
    decimalComma: delimiter !== ',',
  }
}
