import { clockOfZone } from '../../../src/core/baseLoad/zoneClock.ts'
import type { IntervalData } from '../../../src/core/baseLoad/intervalData.ts'
import type { LocalClock } from '../../../src/core/baseLoad/localClock.ts'
import type { Readings } from '../../../src/core/baseLoad/readings.ts'

export type Row = readonly [start: number, seconds: number, watts: number]

/** Readings from rows; their places count from 1. */
export function readingsOf(rows: readonly Row[]): Readings {
  return {
    startSeconds: Float64Array.from(rows, ([start]) => start),
    durationSeconds: Float64Array.from(rows, ([, seconds]) => seconds),
    watts: Float64Array.from(rows, ([, , watts]) => watts),
    places: Uint32Array.from(rows, (_, index) => index + 1),
  }
}

export const rowsOf = ({ startSeconds, durationSeconds, watts }: Readings): Row[] =>
  Array.from(startSeconds, (start, i) => [start, durationSeconds[i]!, watts[i]!] as const)

export const UTC_CLOCK: LocalClock = clockOfZone('UTC')

export const dataOf = (rows: readonly Row[], given: Partial<IntervalData> = {}): IntervalData => ({
  form: 'json',
  readings: readingsOf(rows),
  clock: UTC_CLOCK,
  exported: false,
  estimated: 0,
  notes: [],
  ...given,
})

/** 2025-01-06, a Monday, 00:00 UTC. */
export const MONDAY = Date.UTC(2025, 0, 6) / 1000

/** Rows of whole days from MONDAY on: `watts` says how much, by day and reading of the day. */
export function daysOf(days: number, interval: number, watts: (day: number, slot: number) => number): Row[] {
  const perDay = 86_400 / interval
  return Array.from({ length: days * perDay }, (_, i): Row => {
    return [MONDAY + i * interval, interval, watts(Math.floor(i / perDay), i % perDay)]
  })
}

/** An invented home: 100 W and a little more at night, use by day; no two days alike. */
export const ordinary = (day: number, hour: number): number =>
  100 + ((day * 5 + hour * 7) % 13) + (hour >= 6 && hour < 23 ? 150 + ((day * 11 + hour * 17) % 200) : 0)
