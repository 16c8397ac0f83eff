import { describe, expect, test } from 'vitest'
import { ReadingColumns } from '../../../src/core/baseLoad/readingColumns.ts'
import { MOST_READINGS } from '../../../src/core/baseLoad/readings.ts'

const columnsOf = (...starts: number[]) => {
  const columns = new ReadingColumns()
  starts.forEach((start, i) => columns.push(start, 0, i, i + 1, 0))
  return columns
}

describe('raw values as they come in', () => {
  test('keep every value when they grow beyond their first room', () => {
    const count = 5000
    const columns = columnsOf(...Array.from({ length: count }, (_, i) => i * 900))
    const { startSeconds, watts, places } = columns.toReadings(
      (value) => value,
      () => 900,
    )
    expect(startSeconds).toEqual(Float64Array.from({ length: count }, (_, i) => i * 900))
    expect(watts).toEqual(Float64Array.from({ length: count }, (_, i) => i))
    expect(places.at(-1)).toBe(count)
  })

  test('leave out what does not count, and start a length before the end that was given', () => {
    const columns = columnsOf(900, 1800, 2700)
    const { startSeconds, watts } = columns.toReadings(
      (value) => (value === 1 ? null : value),
      () => 900,
      true,
    )
    expect([[...startSeconds], [...watts]]).toEqual([
      [0, 1800],
      [0, 2],
    ])
  })

  test('tell whether a channel has any value above zero', () => {
    const columns = new ReadingColumns()
    columns.push(0, 900, 0, 1, 0)
    columns.push(0, 900, 5, 2, 1)
    expect([0, 1].map((asked) => columns.anyAboveZero((channel) => channel === asked))).toEqual([false, true])
    expect(columns.channels()).toEqual(new Set([0, 1]))
  })

  test('have no room for more readings than are held', () => {
    const columns = new ReadingColumns()
    let pushed = 0
    while (pushed < MOST_READINGS && columns.push(pushed, 1, 1, 1, 0)) pushed++
    expect(pushed).toBe(MOST_READINGS)
    expect(columns.push(pushed, 1, 1, 1, 0)).toBe(false)
    expect(columns.length).toBe(MOST_READINGS)
  })
})

describe('the usual step', () => {
  test('is the one that occurs most often, and the shorter of two that occur as often', () => {
    expect(columnsOf(0, 900, 1800, 5400).usualStep()).toBe(900)
    expect(columnsOf(0, 3600, 4500, 8100, 9000).usualStep()).toBe(900)
  })

  test('is none of a single reading, or of readings that all start at once', () => {
    expect(columnsOf(0).usualStep()).toBeNull()
    expect(columnsOf(900, 900, 900).usualStep()).toBeNull()
  })
})
