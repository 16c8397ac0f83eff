import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { CategoryMode, TypicalDraw } from '../../../src/core/catalogue/category.ts'
import { gatherReadings } from '../../../src/core/proposals/gatherReadings.ts'
import { openAgainAt } from '../../../src/core/proposals/openAgainAt.ts'
import { oneReadingEach } from '../../../src/core/proposals/oneReadingEach.ts'
import { type ReadDevice, readDevice } from '../../../src/core/proposals/readDevice.ts'
import { realPower } from '../../../src/core/proposals/realPower.ts'
import { yearsName, yearsNamed } from '../../../src/core/proposals/yearsName.ts'

const draw = (yearFrom: number | null, yearTo: number | null): TypicalDraw => ({
  yearFrom,
  yearTo,
  lowW: 1,
  typicalW: 2,
  highW: 3,
  provenance: { kind: 'sample', citation: null, n: null },
})
const modeOf = (...draws: readonly TypicalDraw[]): CategoryMode => ({
  mode: 'standby',
  defaultHoursPerWeek: 100,
  draws,
})
const read = (watts: number | null, fields: Partial<ReadDevice> = {}): ReadDevice => ({
  organisation: 'one',
  inventory: 'home',
  visit: '2026-01-15',
  place: 0,
  device: 'tv',
  mode: 'standby',
  year: null,
  quantity: 1,
  watts,
  ...fields,
})
const wattsOf = (readings: readonly ReadDevice[]) => readings.map(({ watts }) => watts).sort()

describe('of the visits to a household', () => {
  test('the latest one that read a device counts', () => {
    const visits = [read(1), read(3, { visit: '2026-03-15' }), read(2, { visit: '2026-02-15' })]
    expect(wattsOf(oneReadingEach(visits))).toEqual([3])
    const another = read(5, { device: 'second', visit: '2025-01-15', place: 1 })
    expect(wattsOf(oneReadingEach([...visits, another]))).toEqual([3, 5])
  })

  test('the latest one alone counts where it has devices without an id', () => {
    const later = { visit: '2026-02-15', device: null }
    const readings = [read(1), read(2, { ...later, place: 1 }), read(3, { ...later, place: 2 })]
    expect(wattsOf(oneReadingEach(readings))).toEqual([2, 3])
    expect(wattsOf(oneReadingEach([read(1, { device: null }), read(2, { visit: '2026-02-15' })]))).toEqual([
      2,
    ])
  })

  test('a device that came twice, since its inventory was stored anew meanwhile, counts once, as it is later', () => {
    expect(wattsOf(oneReadingEach([read(1, { device: null }), read(2, { device: null })]))).toEqual([2])
  })
})

describe('the readings of a draw', () => {
  const old = draw(null, 2009)
  const recent = draw(2010, null)

  test('are those of its years; without a fitting year they are left out', () => {
    const readings = [2005, 2009, 2010, null].map((year, i) => read(i, { year, device: `${i}` }))
    const ofOld = gatherReadings(modeOf(old, recent), old, 1, readings)
    expect(ofOld.sortedW).toEqual([0, 1])
    expect(ofOld.leftOut.noFittingYear).toBe(1)
    expect(gatherReadings(modeOf(old, recent), recent, 1, readings).sortedW).toEqual([2])
  })

  test('are those of every year where the mode has one draw only', () => {
    const readings = [2005, 2020, null].map((year, i) => read(i, { year, device: `${i}` }))
    const { sortedW, leftOut } = gatherReadings(modeOf(old), old, 1, readings)
    expect([sortedW, leftOut.noFittingYear]).toEqual([[0, 1, 2], 0])
  })

  test('are of single devices and stable, and of its mode', () => {
    const readings = [
      read(1),
      read(2, { device: 'pair', quantity: 2 }),
      read(3, { device: 'usual', quantity: null }),
      read(null, { device: 'unstable' }),
      read(4, { device: 'other', mode: 'off' }),
    ]
    const all = draw(null, null)
    expect(gatherReadings(modeOf(all), all, 1, readings)).toEqual({
      sortedW: [1, 3],
      households: 1,
      organisations: 1,
      leftOut: { severalDevices: 1, notStable: 1, noFittingYear: 0 },
    })
    expect(gatherReadings(modeOf(all), all, 2, readings).sortedW).toEqual([1])
  })

  test('tell households of the same name in two organisations apart', () => {
    const all = draw(null, null)
    const { households, organisations } = gatherReadings(modeOf(all), all, 1, [
      read(1),
      read(2, { organisation: 'two' }),
    ])
    expect([households, organisations]).toEqual([2, 2])
  })
})

describe('the power of a reading', () => {
  test('is what was read, energy over time, or the mean of a stable series', () => {
    expect(realPower({ kind: 'power', watts: 0.7 })).toBe(0.7)
    expect(realPower({ kind: 'energy', wattHours: 24, durationHours: 48 })).toBe(0.5)
    const watts = Array.from({ length: 1_000 }, () => 0.4)
    expect(realPower({ kind: 'samples', watts, intervalSeconds: 1 })).toBeCloseTo(0.4, 12)
  })

  test('is none where a series rises, or is too short to tell', () => {
    const rising = Array.from({ length: 1_000 }, (_, i) => 1 + i / 1_000)
    expect(realPower({ kind: 'samples', watts: rising, intervalSeconds: 1 })).toBeNull()
    expect(realPower({ kind: 'samples', watts: [1, 1, 1], intervalSeconds: 1 })).toBeNull()
  })

  test('is all that is kept in mind of a series', () => {
    const reading = { kind: 'samples', watts: [1, 1], intervalSeconds: 1 } as const
    expect(readDevice({ ...read(1), category: 'television', reading })).toEqual(read(null))
  })
})

test.each([
  [8, 16],
  [32, 40],
  [33, 42],
  [100, 125],
])('a proposal that was answered at %i readings is open again at %i', (n, again) => {
  expect(openAgainAt(n)).toBe(again)
})

test('years of manufacture are read back from their word, and nothing else is', () => {
  const year = fc.option(fc.integer({ min: 1950, max: 2100 }), { nil: null })
  fc.assert(
    fc.property(year, year, (yearFrom, yearTo) => {
      expect(yearsNamed(yearsName({ yearFrom, yearTo }))).toEqual({ yearFrom, yearTo })
    }),
  )
  for (const word of ['', 'ALL', 'to-', 'to-99', '2010', '2010-', 'from-2010-2012', 'all\n'])
    expect(yearsNamed(word)).toBeNull()
})
