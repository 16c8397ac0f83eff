import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { estimatorsOf } from '../../../src/core/baseLoad/estimators.ts'
import { localDays } from '../../../src/core/baseLoad/localDays.ts'
import { meanOverDays } from '../../../src/core/baseLoad/meanOverDays.ts'
import { clockOfZone } from '../../../src/core/baseLoad/zoneClock.ts'
import { daysOf, MONDAY, ordinary, readingsOf, type Row, UTC_CLOCK } from './intervals.ts'

const NIGHT = { fromHour: 1, toHour: 5 }
const read = (rows: readonly Row[], interval: number, clock = UTC_CLOCK) => {
  const readings = readingsOf(rows)
  return estimatorsOf(readings, localDays(readings, clock, NIGHT), interval)
}
const wattsOf = (rows: readonly Row[], interval: number) => {
  const { minimumHourW, figures } = read(rows, interval)
  return [minimumHourW, ...Object.values(figures).map((figure) => figure?.watts ?? null)]
}

describe('the estimators', () => {
  test('a constant draw is the base load by all of them, and its interval is that draw', () => {
    const { minimumHourW, figures } = read(
      daysOf(10, 3600, () => 80),
      3600,
    )
    expect(minimumHourW).toBe(80)
    for (const figure of Object.values(figures))
      expect([figure!.watts, figure!.quantile(0.05), figure!.quantile(0.95)]).toEqual([80, 80, 80])
  })

  test('quarter hours of 273 Wh are 1,092 W: the least hour is the mean of four, the least reading of a day is one', () => {
    const rows = daysOf(8, 900, (_, slot) => (slot === 7 ? 1092 : 1300))
    const { minimumHourW, figures } = read(rows, 900)
    expect(minimumHourW).toBe((1092 + 3 * 1300) / 4)
    expect(figures['mean-of-daily-minima']!.watts).toBe(1092)
  })

  test('an hour with a gap is no hour', () => {
    const rows = daysOf(8, 900, (_, slot) => (slot === 7 ? 10 : 100)).filter((_, i) => i % 96 !== 6)
    expect(read(rows, 900).minimumHourW).toBe(100)
  })

  test('the night window is local: on a clock five hours behind it is another part of the day', () => {
    const rows = daysOf(8, 3600, (_, hour) => hour)
    expect(read(rows, 3600).figures['night-window-mean']!.watts).toBe((1 + 2 + 3 + 4) / 4)
    const bogota = read(rows, 3600, clockOfZone('America/Bogota'))
    expect(bogota.figures['night-window-mean']!.watts).toBe((6 + 7 + 8 + 9) / 4)
  })

  test('a day of which less than 90 % is covered gives no daily minimum', () => {
    const rows = daysOf(8, 3600, () => 50).filter(([start]) => start < MONDAY || start >= MONDAY + 3 * 3600)
    expect(read(rows, 3600).figures['mean-of-daily-minima']!.days).toBe(7)
  })

  test('hours that are never whole, or that intervals do not fill, give no least hour', () => {
    const gappy = daysOf(8, 900, () => 100).filter((_, i) => i % 4 !== 2)
    expect(read(gappy, 900).minimumHourW).toBeNull()
    // Of 45 minutes each, no two of which make an hour.
    const odd = read(
      daysOf(8, 2700, () => 100),
      2700,
    )
    expect(odd.minimumHourW).toBeNull()
    expect(odd.figures['mean-of-daily-minima']!.watts).toBe(100)
  })

  test('a single day has no scatter over days, and so no figure but its least hour', () => {
    const { minimumHourW, figures } = read(daysOf(1, 3600, ordinary), 3600)
    expect(minimumHourW).toBe(Math.min(...Array.from({ length: 24 }, (_, hour) => ordinary(0, hour))))
    expect(Object.values(figures)).toEqual([null, null, null, null])
  })

  test('all of them scale with the draw', () => {
    const rows = daysOf(9, 3600, ordinary)
    const doubled = rows.map(([start, seconds, watts]): Row => [start, seconds, 2 * watts])
    wattsOf(doubled, 3600).forEach((watts, i) => expect(watts).toBeCloseTo(2 * wattsOf(rows, 3600)[i]!, 9))
  })

  test('none of them falls when any one reading rises', () => {
    const rows = daysOf(8, 3600, ordinary)
    const before = wattsOf(rows, 3600)
    fc.assert(
      fc.property(fc.nat(rows.length - 1), fc.double({ min: 0, max: 500, noNaN: true }), (index, more) => {
        const risen = rows.map(([start, seconds, watts], i): Row => [
          start,
          seconds,
          i === index ? watts + more : watts,
        ])
        wattsOf(risen, 3600).forEach((watts, i) => expect(watts).toBeGreaterThanOrEqual(before[i]! - 1e-9))
      }),
    )
  })
})

describe('the interval over days', () => {
  test('days that are alike in runs tell less than as many in disorder', () => {
    const inRuns = Array.from({ length: 40 }, (_, day) => 100 + (Math.floor(day / 10) % 2) * 20)
    const inDisorder = Array.from({ length: 40 }, (_, day) => 100 + (day % 2) * 20)
    const width = (values: readonly number[]) => {
      const figure = meanOverDays(values)
      return figure.quantile(0.95) - figure.quantile(0.05)
    }
    expect(meanOverDays(inRuns).effectiveDays).toBeLessThan(15)
    expect(width(inRuns)).toBeGreaterThan(2 * width(inDisorder))
  })

  test('it holds the true mean about as often as it says, for days that follow each other', () => {
    // 400 series of 60 days; each day keeps half of what the day before was off. Seeded by a plain generator.
    let state = 12_345
    const uniform = () => (state = (state * 1_103_515_245 + 12_345) % 2_147_483_648) / 2_147_483_648
    const noise = () => Array.from({ length: 12 }, uniform).reduce((sum, value) => sum + value, -6)
    let held = 0
    for (let series = 0; series < 400; series++) {
      let off = noise()
      const values = Array.from({ length: 60 }, () => 100 + (off = 0.5 * off + noise()))
      const figure = meanOverDays(values)
      if (figure.quantile(0.05) <= 100 && figure.quantile(0.95) >= 100) held++
    }
    expect(held / 400).toBeGreaterThan(0.83)
    expect(held / 400).toBeLessThan(0.97)
  })
})
