import { describe, expect, test } from 'vitest'
import { evaluateBaseLoad } from '../../../src/core/baseLoad/evaluateBaseLoad.ts'
import type { IntervalData } from '../../../src/core/baseLoad/intervalData.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { dataOf, daysOf, MONDAY, ordinary, type Row } from './intervals.ts'

const evaluate = (data: IntervalData) =>
  evaluateBaseLoad(data, {}, catalogueOf(1, testCategories), testSettings)
const codes = (answer: ReturnType<typeof evaluate>) => answer.warnings.map(({ code }) => code)
const month = daysOf(35, 3600, ordinary)
const set = (rows: readonly Row[], watts: (row: Row, index: number) => number) =>
  rows.map((row, index): Row => [row[0], row[1], watts(row, index)])

describe('readings', () => {
  test('that overlap or are of other lengths are told with their places, five of them at most', () => {
    const late = (count: number) =>
      Array.from({ length: count }, (_, i): Row => [month[i * 24]![0] + 1800, 3600, 100])
    const warningsOf = (rows: readonly Row[], more: Partial<IntervalData> = {}) =>
      evaluate(dataOf([...month, ...rows], more)).warnings
    const [few, many] = [warningsOf(late(5)), warningsOf(late(6))]
    expect(few).toMatchObject([{ code: 'overlapping-readings' }])
    expect(few[0]!.message).toContain('(value 841, 842, 843, 844, 845).')
    expect(many[0]!.message).toContain('6 readings overlapped others in part')
    expect(many[0]!.message).toContain('(value 841, 842, 843, 844, 845, …).')
    const end = month.at(-1)![0] + 3600
    const [mixed] = warningsOf([[end, 900, 100]])
    expect(mixed).toMatchObject({ code: 'mixed-intervals' })
    expect(mixed!.message).toContain('1 of them fit into no interval of 3600 s')
    const [marked] = warningsOf([], { estimated: 12 })
    expect(marked).toMatchObject({ code: 'estimated-readings' })
    expect(marked!.message).toContain('12 readings are marked')
  })

  test('of zero for less than an hour are no outage, and count', () => {
    const quarters = daysOf(35, 900, (day, slot) => ordinary(day, Math.floor(slot / 4)))
    const zeroes = (count: number) =>
      evaluate(dataOf(set(quarters, ([, , watts], i) => (i >= 50 && i < 50 + count ? 0 : watts))))
    expect([zeroes(3).outages, zeroes(3).data.leastReadingW]).toEqual([[], 0])
    expect(zeroes(4).outages).toHaveLength(1)
  })

  test('of a home that always draws the same has no steps that could be coarse', () => {
    expect(codes(evaluate(dataOf(daysOf(35, 3600, () => 80))))).toEqual([])
  })

  test('that no home has are, in a request of JSON, found in its blocks', () => {
    expect(() => evaluate(dataOf([...month, [MONDAY, 3600, 100_001]]))).toThrow(
      expect.objectContaining({
        faults: [expect.objectContaining({ pointer: '/blocks', code: 'power-too-large' })],
      }),
    )
  })
})
