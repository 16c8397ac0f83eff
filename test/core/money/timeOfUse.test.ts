import { describe, expect, test } from 'vitest'
import { bandCounts } from '../../../src/core/money/bandCounts.ts'
import { evenPrice, scheduledPrice } from '../../../src/core/money/meanPrice.ts'
import { isTimeZone, quartersOfYear } from '../../../src/core/money/quartersOfYear.ts'
import type { Band, TimeOfUsePrice } from '../../../src/core/money/tariff.ts'
import { DAY_AND_NIGHT } from './tariffs.ts'

const priceWith = (
  bands: readonly Band[],
  timeZone = 'Europe/Berlin',
  holidays: readonly string[] = [],
): TimeOfUsePrice => ({
  kind: 'time-of-use',
  timeZone,
  bands,
  otherwisePricePerKwh: 0,
  holidays,
})
/** Hours a year under the first band. */
const hoursOf = (
  band: Omit<Band, 'name' | 'pricePerKwh'>,
  year = 2025,
  timeZone?: string,
  holidays?: readonly string[],
) =>
  bandCounts(
    priceWith([{ name: 'band', pricePerKwh: 1, ...band }], timeZone, holidays),
    year,
  ).byMonth[0]!.reduce((sum, quarters) => sum + quarters / 4, 0)
const totalHours = (timeZone: string, year: number) =>
  quartersOfYear(timeZone, year).reduce((sum, times) => sum + times, 0) / 4
const hour = (from: number) => [{ from: `0${from}:00`, to: `0${from + 1}:00` }]

describe('the hours of a year', () => {
  test('are the same after so many other places were asked that they are counted anew', () => {
    const before = Uint8Array.from(quartersOfYear('Europe/Berlin', 2025))
    for (let year = 2000; year < 2017; year++) quartersOfYear('UTC', year)
    const again = quartersOfYear('Europe/Berlin', 2025)
    expect(again).toEqual(before)
    expect(quartersOfYear('Europe/Berlin', 2025)).toBe(again)
  })

  test.each([
    'UTC',
    'Europe/Berlin',
    'America/New_York',
    'Asia/Kolkata',
    'Australia/Lord_Howe',
    'Pacific/Kiritimati',
    'America/St_Johns',
  ])('are 8,760 in %s, and 8,784 in a leap year', (timeZone) => {
    expect([totalHours(timeZone, 2025), totalHours(timeZone, 2024)]).toEqual([8760, 8784])
  })

  test('leave out the hour from 2 to 3 in spring and have it twice in autumn, where the clock is changed', () => {
    const quarters = quartersOfYear('Europe/Berlin', 2025)
    const day = (month: number, date: number) =>
      (Date.UTC(2025, month - 1, date) - Date.UTC(2025, 0, 1)) / 86_400_000
    const hoursOn = (index: number) =>
      Array.from(quarters.subarray(index * 96, (index + 1) * 96)).reduce((a, b) => a + b, 0) / 4
    expect([hoursOn(day(3, 29)), hoursOn(day(3, 30)), hoursOn(day(10, 26)), hoursOn(day(10, 27))]).toEqual([
      24, 23, 25, 24,
    ])
    expect(quarters[day(3, 30) * 96 + 8]).toBe(0)
    expect(quarters[day(3, 30) * 96 + 12]).toBe(1)
    expect(quarters[day(10, 26) * 96 + 8]).toBe(2)
  })

  test('count an hour of the night by the clock: 364 of what spring leaves out, 366 of what autumn has twice', () => {
    const spring = { seasons: [{ from: '01-01', to: '06-30' }], hours: hour(2) }
    const autumn = { seasons: [{ from: '07-01', to: '12-31' }], hours: hour(2) }
    expect([hoursOf(spring), hoursOf(autumn)]).toEqual([180, 185])
    expect(hoursOf({ hours: hour(2) }, 2025, 'UTC')).toBe(365)
  })

  test('with half an hour of summer time, as on Lord Howe Island, end with 8,760 too', () => {
    expect(hoursOf({ hours: [{ from: '02:00', to: '02:30' }] }, 2025, 'Australia/Lord_Howe')).toBe(182)
  })
})

describe('bands', () => {
  test('split a day at midnight without a gap or an overlap', () => {
    const before = hoursOf({ hours: [{ from: '22:00', to: '24:00' }] })
    const after = hoursOf({ hours: [{ from: '00:00', to: '02:00' }] })
    expect([before, after, hoursOf({ hours: [{ from: '00:00', to: '24:00' }] })]).toEqual([730, 730, 8760])
  })

  test('of a season hold on both its ends, over the turn of the year too', () => {
    expect(hoursOf({ seasons: [{ from: '12-31', to: '01-01' }] })).toBe(48)
    expect(hoursOf({ seasons: [{ from: '06-01', to: '09-30' }] })).toBe(122 * 24)
  })

  test('of a leap year hold on its 29th of February', () => {
    expect([2024, 2025].map((year) => hoursOf({ seasons: [{ from: '02-29', to: '02-29' }] }, year))).toEqual([
      24, 0,
    ])
  })

  test('of weekdays do not hold on a holiday; those of holidays hold on them alone', () => {
    const thursdays = { days: ['thursday'] } as const
    expect(hoursOf(thursdays)).toBe(52 * 24)
    expect(hoursOf(thursdays, 2025, 'Europe/Berlin', ['2025-12-25'])).toBe(51 * 24)
    expect(hoursOf({ days: ['holiday'] }, 2025, 'Europe/Berlin', ['2025-12-25', '2026-01-01'])).toBe(24)
  })

  test('that come first hold where several fit', () => {
    const first: Band = { name: 'a', pricePerKwh: 1, hours: [{ from: '00:00', to: '12:00' }] }
    const second: Band = { name: 'b', pricePerKwh: 2 }
    const { byMonth } = bandCounts(priceWith([first, second], 'UTC'), 2025)
    expect(byMonth.map((months) => months.reduce((a, b) => a + b, 0) / 4)).toEqual([4380, 4380, 0])
  })
})

describe('the price of a load', () => {
  test('that is even over the week is the mean over the hours of the year', () => {
    // 2025: 104 days of weekends and one holiday, a Thursday; 260 other days with 16 h by day. In spring and autumn the
    // clock is changed on a Sunday.
    const dayHours = 260 * 16
    expect(evenPrice(DAY_AND_NIGHT, 2025).toNumber()).toBeCloseTo(
      (0.4 * dayHours + 0.2 * (8760 - dayHours)) / 8760,
      12,
    )
  })

  test('at stated hours is that of those hours alone', () => {
    expect(scheduledPrice(DAY_AND_NIGHT, 2025, [{ from: '23:00', to: '24:00' }]).toNumber()).toBe(0.2)
    const workday = [{ days: ['monday'], from: '08:00', to: '18:00' }] as const
    expect(scheduledPrice(DAY_AND_NIGHT, 2025, workday).toNumber()).toBe(0.4)
    const thursday = [{ days: ['thursday'], from: '08:00', to: '18:00' }] as const
    expect(scheduledPrice(DAY_AND_NIGHT, 2025, thursday).toNumber()).toBeCloseTo((51 * 0.4 + 0.2) / 52, 12)
  })

  test('at all hours of the week is that of an even load, and hours named twice count once', () => {
    const whole = [{ from: '00:00', to: '24:00' }] as const
    const twice = [...whole, { days: ['monday'], from: '10:00', to: '12:00' }] as const
    expect(scheduledPrice(DAY_AND_NIGHT, 2025, whole).eq(evenPrice(DAY_AND_NIGHT, 2025))).toBe(true)
    expect(scheduledPrice(DAY_AND_NIGHT, 2025, twice).eq(evenPrice(DAY_AND_NIGHT, 2025))).toBe(true)
  })
})

describe('a time zone', () => {
  test('is known by its IANA name, and what is none is told apart', () => {
    expect(['Europe/Berlin', 'UTC', 'America/St_Johns'].every(isTimeZone)).toBe(true)
    expect(['Europe/Nowhere', '', 'noon'].some(isTimeZone)).toBe(false)
  })

  test('that is no text at all is an error of the program, and not an unknown place', () => {
    expect(() => isTimeZone(Symbol('zone') as never)).toThrow(TypeError)
  })
})
