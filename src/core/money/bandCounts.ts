import { type DayOfYear, daysOfYear } from './daysOfYear.ts'
import { quarterOfDay } from './quarterOfDay.ts'
import { QUARTERS, quartersOfYear } from './quartersOfYear.ts'
import { inSeason } from './season.ts'
import { type Band, type DayKind, type TimeOfUsePrice, WEEKDAYS } from './tariff.ts'

/** Quarters of an hour of a year under each band of a time-of-use price; the last band stands for `otherwise`. */
export interface BandCounts {
  /** By band, then month. */
  readonly byMonth: readonly Float64Array[]
  /** By band, then weekday x 96 + quarter of the day, as a device's week has them. */
  readonly byWeek: readonly Float64Array[]
}

const kept = new WeakMap<TimeOfUsePrice, Map<number, BandCounts>>()

/** Counted once for a price and a year, and kept with the price. */
export function bandCounts(price: TimeOfUsePrice, year: number): BandCounts {
  const years = kept.get(price) ?? new Map<number, BandCounts>()
  kept.set(price, years)
  const counts = years.get(year) ?? count(price, year)
  years.set(year, counts)
  return counts
}

function count(price: TimeOfUsePrice, year: number): BandCounts {
  const bands = price.bands.length + 1
  const byMonth = Array.from({ length: bands }, () => new Float64Array(12))
  const byWeek = Array.from({ length: bands }, () => new Float64Array(7 * QUARTERS))
  const quarters = quartersOfYear(price.timeZone, year)
  const holidays = new Set(price.holidays)
  daysOfYear(year).forEach((day, index) => {
    const bandAt = bandsOfDay(price.bands, day, holidays.has(day.date) ? 'holiday' : WEEKDAYS[day.weekday]!)
    for (let quarter = 0; quarter < QUARTERS; quarter++) {
      const times = quarters[index * QUARTERS + quarter]!
      const band = bandAt(quarter)
      byMonth[band]![day.month - 1]! += times
      byWeek[band]![day.weekday * QUARTERS + quarter]! += times
    }
  })
  return { byMonth, byWeek }
}

/** For each quarter of one day, the place of the first band that fits. */
function bandsOfDay(bands: readonly Band[], { monthDay }: DayOfYear, kind: DayKind) {
  const ofDay = bands.flatMap(({ seasons, days, hours }, place) => {
    const fits =
      (!seasons || seasons.some((season) => inSeason(monthDay, season))) && (!days || days.includes(kind))
    return fits
      ? [{ place, hours: hours?.map(({ from, to }) => [quarterOfDay(from), quarterOfDay(to)] as const) }]
      : []
  })
  return (quarter: number): number =>
    ofDay.find(({ hours }) => !hours || hours.some(([from, to]) => from <= quarter && quarter < to))?.place ??
    bands.length
}
