import { describe, expect, test } from 'vitest'
import { clockOfRules, localTimeOf, readDaylightRule } from '../../src/core/baseLoad/ruleClock.ts'
import { localDays } from '../../src/core/baseLoad/localDays.ts'
import { percentile } from '../../src/core/baseLoad/percentile.ts'
import { wattsOfEnergy } from '../../src/core/baseLoad/readingColumns.ts'
import { meaningOf } from '../../src/schemas/espiReadingType.ts'

/*
 * Percentiles, definition 7 of Hyndman and Fan:
 *   V   calcipedia.org/calculators/percentile-calculator: 15, 20, 35, 40, 50 have P25 = 20 and P30 = 23
 *   V2  Wikipedia, Percentile, second variant (C = 1), as a public test file has it: the 40th percentile of these is 29
 *   V2  a question-and-answer page on PERCENTILE of spreadsheets, transcribed: 1, 2, 3, 4 at 0.8 and 0.3; 7, 8, 9, 20 at 0.35
 */
describe('percentiles', () => {
  test.each([
    ['V', [15, 20, 35, 40, 50], 0.25, 20],
    ['V', [15, 20, 35, 40, 50], 0.3, 23],
    ['V2', [15, 20, 35, 40, 50], 0.4, 29],
    ['V2', [1, 2, 3, 4], 0.8, 3.4],
    ['V2', [1, 2, 3, 4], 0.3, 1.9],
    ['V2', [7, 8, 9, 20], 0.35, 8.05],
  ] as const)('[%s] of %j at %d: %d', (_, values, share, expected) => {
    expect(percentile(Float64Array.from(values), share)).toBeCloseTo(expected, 12)
  })

  test('control: the nearest rank, another definition in use, gives 20 and not 29 at 0.4', () => {
    const values = [15, 20, 35, 40, 50]
    const nearestRank = values[Math.ceil(0.4 * values.length) - 1]
    expect(nearestRank).toBe(20)
    expect(percentile(Float64Array.from(values), 0.4)).not.toBeCloseTo(nearestRank!, 3)
  })
})

/*
 * Daylight saving rules: the text of DstRuleType in the schema of IEEE 2030.5, which ESPI shares (V2: read in public
 * transcriptions). Its example, the third Friday in March at 1:45, has seconds 2700, hours 1, weekday 5, day of month 0,
 * operator 4, month 3. The rules of the OpenESPI sample files (V) are those of North America.
 */
describe('daylight saving rules', () => {
  const bits = (3 << 28) | (4 << 25) | (0 << 20) | (5 << 17) | (1 << 12) | 2700
  const example = readDaylightRule((bits >>> 0).toString(16))!

  test('[V2] the example of the schema is read as it says', () => {
    expect(example).toEqual({ month: 3, operator: 4, dayOfMonth: 0, weekday: 5, secondOfDay: 3600 + 2700 })
  })

  test.each([
    [2024, '2024-03-15T01:45:00Z'],
    [2025, '2025-03-21T01:45:00Z'],
  ])('[C] the third Friday in March %d', (year, text) => {
    expect(localTimeOf(example, year)).toBe(Date.parse(text) / 1000)
  })

  // M: days of the change in the United States.
  test.each([
    [2011, '2011-03-13T02:00:00Z', '2011-11-06T02:00:00Z'],
    [2012, '2012-03-11T02:00:00Z', '2012-11-04T02:00:00Z'],
  ])('[M] 360E2000 and B40E2000 are the changes of %d', (year, start, end) => {
    expect(localTimeOf(readDaylightRule('360E2000')!, year)).toBe(Date.parse(start) / 1000)
    expect(localTimeOf(readDaylightRule('B40E2000')!, year)).toBe(Date.parse(end) / 1000)
  })
})

/*
 * Figures of the public sample files (V), watts C: OpenESPI test_usage_data_01.xml starts at 1330578000 with tzOffset
 * -18000 and has 16 readings of 900 s from one to five; its least is 273 Wh. The file of cew821/greenbutton starts at
 * 1293868800 with tzOffset -28800 and has 362 readings of 3600 s, 61 of them in that window.
 */
describe('ESPI interval data', () => {
  test('[C on V] 273 Wh of uom 72 in 900 s are 1092 W, and of uom 38 they would be W as they are', () => {
    expect(wattsOfEnergy(273, 900)).toBe(1092)
    const toWatts = (uom: string) => {
      const meaning = meaningOf({
        uom,
        flowDirection: '1',
        accumulationBehaviour: '4',
        powerOfTenMultiplier: '0',
      })
      return meaning.kind === 'use' ? meaning.toWatts(273, 900) : null
    }
    expect([toWatts('72'), toWatts('38')]).toEqual([1092, 273])
  })

  test.each([
    [-18_000, 1_330_578_000, 96, 900, 16, 1],
    [-28_800, 1_293_868_800, 362, 3600, 61, 16],
  ])(
    '[C on V] tzOffset %d, start %d: of %d readings of %d s, %d start from one to five at night, on %d days',
    (tzOffset, start, count, interval, inWindow, days) => {
      const clock = clockOfRules(
        { tzOffset, dstOffset: 3600 },
        readDaylightRule('360E2000')!,
        readDaylightRule('B40E2000')!,
      )
      const readings = {
        startSeconds: Float64Array.from({ length: count }, (_, i) => start + i * interval),
        durationSeconds: new Float64Array(count).fill(interval),
        watts: new Float64Array(count).fill(100),
        places: new Uint32Array(count),
      }
      const found = localDays(readings, clock, { fromHour: 1, toHour: 5 })
      expect([found.night.reduce((sum, each) => sum + each, 0), found.days.length]).toEqual([inWindow, days])
    },
  )
})
