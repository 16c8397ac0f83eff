import { describe, expect, test } from 'vitest'
import { toOneInterval } from '../../../src/core/baseLoad/oneInterval.ts'
import { gapsOf, tidyReadings } from '../../../src/core/baseLoad/tidyReadings.ts'
import { readingsOf, type Row, rowsOf } from './intervals.ts'

const tidy = (...rows: Row[]) => tidyReadings(readingsOf(rows))

describe('putting readings in order', () => {
  test('readings come out in order of time, whatever order they came in', () => {
    expect(rowsOf(tidy([1800, 900, 3], [0, 900, 1], [900, 900, 2]).readings)).toEqual([
      [0, 900, 1],
      [900, 900, 2],
      [1800, 900, 3],
    ])
  })

  test('a reading that comes again with the same value counts once', () => {
    const { readings, duplicates, conflicts } = tidy([0, 900, 5], [900, 900, 7], [0, 900, 5], [0, 900, 5])
    expect(rowsOf(readings)).toEqual([
      [0, 900, 5],
      [900, 900, 7],
    ])
    expect([duplicates, conflicts.length]).toEqual([2, 0])
  })

  test('a reading that comes again with another value is left out both times, and both places are named', () => {
    const { readings, conflicts } = tidy([0, 900, 5], [900, 900, 7], [0, 900, 6])
    expect(rowsOf(readings)).toEqual([[900, 900, 7]])
    expect(conflicts).toEqual([{ place: 1, otherPlace: 3, watts: 5, otherWatts: 6 }])
  })

  test('of a long reading and the short ones within it the short ones stay', () => {
    const { readings, overlaps } = tidy(
      [0, 3600, 9],
      [0, 900, 1],
      [900, 900, 2],
      [1800, 900, 3],
      [3600, 900, 4],
    )
    expect(rowsOf(readings).map(([, , watts]) => watts)).toEqual([1, 2, 3, 4])
    expect(overlaps).toEqual([1])
  })

  test('a reading that starts within another is left out, and its place is named', () => {
    const { readings, overlaps } = tidy([0, 900, 1], [450, 900, 2], [900, 900, 3])
    expect(rowsOf(readings).map(([, , watts]) => watts)).toEqual([1, 3])
    expect(overlaps).toEqual([2])
  })

  test('a gap is what lies between two readings, not before the first or behind the last', () => {
    expect(gapsOf(tidy([0, 900, 1], [900, 900, 1], [5400, 900, 1]).readings)).toEqual([
      { from: 1800, to: 5400 },
    ])
  })
})

describe('readings of different lengths', () => {
  const quarters = (start: number, ...watts: number[]): Row[] =>
    watts.map((power, i) => [start + i * 900, 900, power])

  test('quarter hours become hours where hours are common, with their mean', () => {
    const rows: Row[] = [[0, 3600, 100], ...quarters(3600, 10, 20, 30, 60), [7200, 3600, 50]]
    const { readings, intervalSeconds, joined, leftOut } = toOneInterval(readingsOf(rows))
    expect(rowsOf(readings)).toEqual([
      [0, 3600, 100],
      [3600, 3600, 30],
      [7200, 3600, 50],
    ])
    expect([intervalSeconds, joined, leftOut]).toEqual([3600, 4, 0])
  })

  test('an hour that is not filled is left out, not taken for a whole one', () => {
    const rows: Row[] = [[0, 3600, 100], ...quarters(3600, 10, 20, 30), [7200, 3600, 50]]
    const { readings, leftOut } = toOneInterval(readingsOf(rows))
    expect(rowsOf(readings).map(([start]) => start)).toEqual([0, 7200])
    expect(leftOut).toBe(3)
  })

  test('a rare long reading does not make the others coarse', () => {
    const rows: Row[] = [...quarters(0, ...Array.from({ length: 96 }, () => 7)), [86_400, 3600, 100]]
    const { readings, intervalSeconds, leftOut } = toOneInterval(readingsOf(rows))
    expect([readings.watts.length, intervalSeconds, leftOut]).toEqual([96, 900, 1])
  })
})
