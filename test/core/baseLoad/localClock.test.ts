import { describe, expect, test } from 'vitest'
import { clockOfSteps, instantsOf, startOfDay } from '../../../src/core/baseLoad/localClock.ts'
import { clockOfRules, localTimeOf, readDaylightRule } from '../../../src/core/baseLoad/ruleClock.ts'
import { clockOfZone, isTimeZone } from '../../../src/core/baseLoad/zoneClock.ts'

const at = (text: string) => Date.parse(text) / 1000
const wall = (text: string) => Date.parse(`${text}Z`) / 1000
const day = (date: string) => Date.parse(`${date}T00:00:00Z`) / 86_400_000
const lengthOf = (clock: ReturnType<typeof clockOfZone>, date: string) =>
  (startOfDay(clock, day(date) + 1) - startOfDay(clock, day(date))) / 3600

describe('the clock of a time zone', () => {
  const berlin = clockOfZone('Europe/Berlin')

  test('changes to the second, and goes back in time as well as forward', () => {
    expect(berlin.offsetAt(at('2024-03-31T00:59:59Z'))).toBe(3600)
    expect(berlin.offsetAt(at('2024-03-31T01:00:00Z'))).toBe(7200)
    expect(berlin.offsetAt(at('2024-10-27T00:59:59Z'))).toBe(7200)
    expect(berlin.offsetAt(at('2024-10-27T01:00:00Z'))).toBe(3600)
    expect(berlin.offsetAt(at('2024-03-31T00:59:59Z'))).toBe(3600)
  })

  test('a local time is one instant, two in the hour that is repeated, none in the hour that is left out', () => {
    expect(instantsOf(berlin, wall('2024-07-01T12:00'))).toEqual([at('2024-07-01T10:00:00Z')])
    expect(instantsOf(berlin, wall('2024-10-27T02:30'))).toEqual([
      at('2024-10-27T00:30:00Z'),
      at('2024-10-27T01:30:00Z'),
    ])
    expect(instantsOf(berlin, wall('2024-03-31T02:30'))).toEqual([])
  })

  test('days have 23 and 25 hours where the clock changes, also where midnight itself is left out', () => {
    expect(['2024-03-30', '2024-03-31', '2024-10-27'].map((date) => lengthOf(berlin, date))).toEqual([
      24, 23, 25,
    ])
    expect(lengthOf(clockOfZone('Africa/Cairo'), '2024-04-26')).toBe(23)
    expect(lengthOf(clockOfZone('Australia/Lord_Howe'), '2024-04-07')).toBe(24.5)
  })

  test('names that are no time zone are told apart', () => {
    expect(['Europe/Berlin', 'UTC', 'Asia/Kathmandu'].map(isTimeZone)).toEqual([true, true, true])
    expect(['Europe/Nowhere', '', 'somewhere'].map(isTimeZone)).toEqual([false, false, false])
  })
})

test('a time zone that is no text at all is an error of the program, and not an unknown place', () => {
  expect(() => isTimeZone(Symbol('zone') as never)).toThrow(TypeError)
})

describe('the clock of ESPI’s local time parameters', () => {
  const [start, end] = [readDaylightRule('360E2000')!, readDaylightRule('B40E2000')!]

  test('agrees with the time zone that has these rules, hour by hour over four years', () => {
    const ruled = clockOfRules({ tzOffset: -18_000, dstOffset: 3600 }, start, end)
    const zone = clockOfZone('America/New_York')
    const different: number[] = []
    for (let instant = at('2021-01-01T00:00:00Z'); instant < at('2025-01-01T00:00:00Z'); instant += 3600)
      if (ruled.offsetAt(instant) !== zone.offsetAt(instant)) different.push(instant)
    expect(different).toEqual([])
  })

  test('a southern summer, over the turn of the year, comes out right', () => {
    // First Sunday in October and in April, 2:00 and 3:00.
    const sydney = clockOfRules(
      { tzOffset: 36_000, dstOffset: 3600 },
      readDaylightRule('A40E2000')!,
      readDaylightRule('440E3000')!,
    )
    const zone = clockOfZone('Australia/Sydney')
    for (const text of [
      '2024-01-01T00:00:00Z',
      '2024-04-06T15:59:59Z',
      '2024-04-06T16:00:00Z',
      '2024-10-05T16:00:00Z',
    ])
      expect(sydney.offsetAt(at(text))).toBe(zone.offsetAt(at(text)))
  })

  test('the last weekday of a month, the weekday on or after a day, and a day of the month are understood', () => {
    const rule = { month: 3, operator: 7, dayOfMonth: 0, weekday: 7, secondOfDay: 3600 }
    const time = (text: string) => wall(text)
    expect(localTimeOf(rule, 2024)).toBe(time('2024-03-31T01:00'))
    expect(localTimeOf({ ...rule, operator: 1, dayOfMonth: 8 }, 2024)).toBe(time('2024-03-10T01:00'))
    expect(localTimeOf({ ...rule, operator: 0, dayOfMonth: 8 }, 2024)).toBe(time('2024-03-08T01:00'))
  })

  test('a rule by the day of the month needs one, a rule by the weekday does not', () => {
    expect(readDaylightRule('30802000')).toEqual({
      month: 3,
      operator: 0,
      dayOfMonth: 8,
      weekday: 0,
      secondOfDay: 7200,
    })
    expect(readDaylightRule('30002000')).toBeUndefined()
    expect(readDaylightRule('320E2000')).toBeUndefined()
    expect(readDaylightRule('328E2000')).toMatchObject({ operator: 1, dayOfMonth: 8, weekday: 7 })
    expect(readDaylightRule('340E2000')).toMatchObject({ operator: 2, dayOfMonth: 0, weekday: 7 })
  })

  test('FFFFFFFF means no daylight saving, and what is no rule is told apart', () => {
    expect(readDaylightRule('FFFFFFFF')).toBeNull()
    expect(
      clockOfRules({ tzOffset: 3600, dstOffset: 3600 }, null, null).offsetAt(at('2024-07-01T00:00:00Z')),
    ).toBe(3600)
    // No month; no hexadecimal digits; an hour of 31; a weekday of 0 where one is needed.
    expect(['060E2000', 'summer', '361FF000', '36002000'].map(readDaylightRule)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ])
  })
})

test('a clock that was seen at some offsets holds each until the next, and the first before all', () => {
  const clock = clockOfSteps('seen', [
    { from: 2000, offset: 7200 },
    { from: 1000, offset: 3600 },
  ])
  expect([0, 1000, 1999, 2000, 9000].map((instant) => clock.offsetAt(instant))).toEqual([
    3600, 3600, 3600, 7200, 7200,
  ])
})
