import { ENERGY, componentsOf } from './componentsOf.ts'
import { daysOfYear } from './daysOfYear.ts'
import { isTimeZone } from './quartersOfYear.ts'
import { inSeason } from './season.ts'
import {
  type Block,
  type BlockPrice,
  type EnergyPrice,
  type HoursOfDay,
  REFERENCE_YEAR,
  type Season,
  type Tariff,
  type TimeOfUsePrice,
} from './tariff.ts'

/** What is wrong with a tariff whose shape is right, by its path within the tariff. */
export interface TariffFault {
  readonly path: readonly (string | number)[]
  readonly code: string
  readonly message: string
}
type Path = TariffFault['path']

/** The trade's rules on a tariff, all at once. */
export function tariffFaults(tariff: Tariff): TariffFault[] {
  const year = tariff.referenceYear ?? REFERENCE_YEAR
  const parts =
    tariff.kind === 'two-part'
      ? tariff.components.flatMap((price, i) => priceFaults(price, ['components', i], year))
      : priceFaults(tariff, [], year)
  return [
    ...parts,
    ...nameFaults(tariff),
    ...taxFaults(tariff),
    ...periodFaults(tariff),
    ...validityFaults(tariff),
  ]
}

function priceFaults(price: EnergyPrice, path: Path, year: number): TariffFault[] {
  if (price.kind === 'flat') return []
  return price.kind === 'block' ? blockPriceFaults(price, path) : timeFaults(price, path, year)
}

function blockPriceFaults({ blocks, per, seasons = [] }: BlockPrice, path: Path): TariffFault[] {
  const faults = [
    ...blockFaults(blocks, [...path, 'blocks']),
    ...seasons.flatMap((season, i) => [
      ...blockFaults(season.blocks, [...path, 'seasons', i, 'blocks']),
      ...seasonFaults(season, [...path, 'seasons', i]),
    ]),
  ]
  if (per === 'year' && seasons.length > 0)
    faults.push(
      fault(
        [...path, 'seasons'],
        'seasons-by-year',
        'Blocks by the year have no seasons; give per as month or day.',
      ),
    )
  const twice = LEAP_YEAR.find(
    ({ monthDay }) => seasons.filter((season) => inSeason(monthDay, season)).length > 1,
  )
  if (twice)
    faults.push(
      fault(
        [...path, 'seasons'],
        'seasons-overlap',
        `Two seasons hold ${twice.monthDay}; a day has one set of blocks.`,
      ),
    )
  return faults
}

function blockFaults(blocks: readonly Block[], path: Path): TariffFault[] {
  return blocks.flatMap(({ upToKwh }, i) => {
    const place = [...path, i, 'upToKwh']
    if (i === blocks.length - 1)
      return upToKwh === undefined
        ? []
        : [
            fault(
              place,
              'last-block-ends',
              `The last block must have no end, but it ends at ${upToKwh} kWh; add one for what comes after it.`,
            ),
          ]
    if (upToKwh === undefined) return [fault(place, 'required', 'Only the last block has no end.')]
    const before = blocks[i - 1]?.upToKwh ?? 0
    if (upToKwh > before) return []
    return [
      fault(
        place,
        'blocks-out-of-order',
        `A block must end above the one before it (${before} kWh), but this one ends at ${upToKwh} kWh.`,
      ),
    ]
  })
}

function timeFaults(
  { timeZone, bands, holidays = [] }: TimeOfUsePrice,
  path: Path,
  year: number,
): TariffFault[] {
  const faults = bands.flatMap(({ seasons = [], hours = [] }, i) => [
    ...seasons.flatMap((season, j) => seasonFaults(season, [...path, 'bands', i, 'seasons', j])),
    ...hours.flatMap((span, j) => hoursFaults(span, [...path, 'bands', i, 'hours', j])),
  ])
  if (!isTimeZone(timeZone))
    faults.push(
      fault(
        [...path, 'timeZone'],
        'unknown-time-zone',
        `"${timeZone}" is no time zone; give an IANA name such as Europe/Berlin.`,
      ),
    )
  holidays.forEach((date, i) => {
    if (!isDate(date))
      faults.push(fault([...path, 'holidays', i], 'no-such-date', `There is no date ${date}.`))
  })
  if (holidays.length > 0 && !holidays.some((date) => date.startsWith(`${year}-`)))
    faults.push(
      fault(
        [...path, 'holidays'],
        'holidays-outside-year',
        `None of the holidays is in ${year}, the year whose hours are counted; name those of ${year}, or set referenceYear.`,
      ),
    )
  return faults
}

/** Also for the hours of a device's mode. */
export function hoursFaults({ from, to }: HoursOfDay, path: Path): TariffFault[] {
  if (from < to) return []
  return [
    fault(
      [...path, 'to'],
      'hours-out-of-order',
      `Hours must end after they begin on the same day, but these go from ${from} to ${to}; give what is past midnight as a part of its own, from 00:00.`,
    ),
  ]
}

const LEAP_YEAR = daysOfYear(2024)
const seasonFaults = (season: Season, path: Path): TariffFault[] =>
  (['from', 'to'] as const)
    .filter((end) => !LEAP_YEAR.some(({ monthDay }) => monthDay === season[end]))
    .map((end) =>
      fault([...path, end], 'no-such-date', `No year has a day ${season[end]}; give month and day as MM-DD.`),
    )

function nameFaults(tariff: Tariff): TariffFault[] {
  const names = [
    ...(tariff.kind === 'two-part'
      ? tariff.components.map(({ name }, i) => ({ name, path: ['components', i, 'name'] }))
      : [{ name: ENERGY, path: [] }]),
    ...(tariff.fixedCharges ?? []).map(({ name }, i) => ({ name, path: ['fixedCharges', i, 'name'] })),
  ]
  return names.flatMap(({ name, path }, i) =>
    names.findIndex((other) => other.name === name) < i
      ? [fault(path, 'name-twice', `Two lines of the bill are called "${name}".`)]
      : [],
  )
}

function taxFaults(tariff: Tariff): TariffFault[] {
  const lines = [...componentsOf(tariff), ...(tariff.fixedCharges ?? [])].map(({ name }) => name)
  return (tariff.taxes ?? []).flatMap(({ on = [] }, i) =>
    on.flatMap((line, j) =>
      lines.includes(line)
        ? []
        : [
            fault(
              ['taxes', i, 'on', j],
              'unknown-line',
              `The bill has no line "${line}"; its lines are: ${lines.join(', ')}.`,
            ),
          ],
    ),
  )
}

function periodFaults(tariff: Tariff): TariffFault[] {
  const blocks = componentsOf(tariff).flatMap((price) => (price.kind === 'block' ? [price.per] : []))
  if (!blocks.includes('year') || blocks.every((per) => per === 'year')) return []
  return [
    fault(
      ['components'],
      'mixed-periods',
      'Blocks by the year can’t stand beside blocks by month or day: a bill has one period.',
    ),
  ]
}

function validityFaults({ validFrom, validTo }: Tariff): TariffFault[] {
  const faults = Object.entries({ validFrom, validTo }).flatMap(([name, date]) =>
    date === undefined || isDate(date) ? [] : [fault([name], 'no-such-date', `There is no date ${date}.`)],
  )
  if (validFrom !== undefined && validTo !== undefined && validTo < validFrom)
    faults.push(
      fault(
        ['validTo'],
        'dates-out-of-order',
        `The tariff ends (${validTo}) before it begins (${validFrom}).`,
      ),
    )
  return faults
}

function isDate(date: string): boolean {
  const time = Date.parse(`${date}T00:00:00Z`)
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(date)
}

const fault = (path: Path, code: string, message: string): TariffFault => ({ path, code, message })
