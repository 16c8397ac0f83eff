export interface DayOfYear {
  /** YYYY-MM-DD */
  readonly date: string
  /** MM-DD */
  readonly monthDay: string
  /** 1 to 12 */
  readonly month: number
  /** 0 is Monday. */
  readonly weekday: number
}

const DAY_MS = 86_400_000

/** Every day of a year of the Gregorian calendar: 365, or 366 in a leap year. */
export function daysOfYear(year: number): readonly DayOfYear[] {
  const first = Date.UTC(year, 0, 1)
  const count = (Date.UTC(year + 1, 0, 1) - first) / DAY_MS
  return Array.from({ length: count }, (_, index) => {
    const day = new Date(first + index * DAY_MS)
    const date = day.toISOString().slice(0, 10)
    return {
      date,
      monthDay: date.slice(5),
      month: day.getUTCMonth() + 1,
      weekday: (day.getUTCDay() + 6) % 7,
    }
  })
}
