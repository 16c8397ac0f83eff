import { bandCounts } from './bandCounts.ts'
import { Money, ZERO } from './money.ts'
import { quarterOfDay } from './quarterOfDay.ts'
import { QUARTERS } from './quartersOfYear.ts'
import { type HoursOfWeek, type TimeOfUsePrice, WEEKDAYS } from './tariff.ts'

/** Mean price of a load that is even over the hours of one month, 0 to 11, or of the whole year; currency/kWh. */
export function evenPrice(price: TimeOfUsePrice, year: number, month?: number): Money {
  const prices = kept.get(price) ?? new Map<string, Money>()
  kept.set(price, prices)
  const key = `${year} ${month ?? 'all'}`
  const known = prices.get(key) ?? meanOf(price, year, month)
  prices.set(key, known)
  return known
}

/** Worked out once, and kept with the price. */
const kept = new WeakMap<TimeOfUsePrice, Map<string, Money>>()

function meanOf(price: TimeOfUsePrice, year: number, month: number | undefined): Money {
  const { byMonth } = bandCounts(price, year)
  return weighted(
    price,
    byMonth.map((months) =>
      month === undefined ? months.reduce((sum, count) => sum + count, 0) : months[month]!,
    ),
  )
}

/** Mean price of a load that is even over stated hours of the week, all through the year; currency/kWh. */
export function scheduledPrice(price: TimeOfUsePrice, year: number, schedule: readonly HoursOfWeek[]): Money {
  const isIn = quartersOfWeek(schedule)
  const { byWeek } = bandCounts(price, year)
  return weighted(
    price,
    byWeek.map((week) => week.reduce((sum, count, quarter) => (isIn[quarter] ? sum + count : sum), 0)),
  )
}

/** Which quarters of an hour of a week, from Monday on, a schedule holds; what is named twice counts once. */
function quartersOfWeek(schedule: readonly HoursOfWeek[]): Uint8Array {
  const isIn = new Uint8Array(7 * QUARTERS)
  for (const { days = WEEKDAYS, from, to } of schedule)
    for (const day of days) {
      const midnight = WEEKDAYS.indexOf(day) * QUARTERS
      isIn.fill(1, midnight + quarterOfDay(from), midnight + quarterOfDay(to))
    }
  return isIn
}

/** Hours a week that a schedule holds. */
export const hoursOfSchedule = (schedule: readonly HoursOfWeek[]): number =>
  quartersOfWeek(schedule).reduce((sum, isIn) => sum + isIn, 0) / 4

function weighted(price: TimeOfUsePrice, counts: readonly number[]): Money {
  const all = counts.reduce((sum, count) => sum + count, 0)
  const prices = [...price.bands.map(({ pricePerKwh }) => pricePerKwh), price.otherwisePricePerKwh]
  return counts.reduce((sum, count, band) => sum.plus(new Money(prices[band]!).times(count)), ZERO).div(all)
}
