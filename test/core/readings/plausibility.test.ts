import { describe, expect, test } from 'vitest'
import type { ReadingContext } from '../../../src/core/readings/powerModel.ts'
import { powerOfReading } from '../../../src/core/readings/powerOfReading.ts'
import type { Reading } from '../../../src/core/readings/reading.ts'
import { codesOf, contextOf, EXACT } from './contextOf.ts'

const warningsOf = (reading: Reading, changes: Partial<ReadingContext> = {}) =>
  powerOfReading(reading, contextOf(changes)).warnings
/** Codes of the doubts alone: the readings here are exact, and their power factor is given. */
const doubts = (reading: Reading, changes: Partial<ReadingContext> = {}) =>
  codesOf(warningsOf(reading, changes))

const metered = { accuracy: EXACT }
const power = (watts: number): Reading => ({ kind: 'power', watts, ...metered })
const current = (amperes: number, changes: object = {}): Reading => ({
  kind: 'current',
  amperes,
  volts: 230,
  powerFactor: 0.5,
  ...metered,
  ...changes,
})

/** Of a device that usually draws 1 to 5 W, at 230 V and a power factor of 0.5: 115 W for each ampere. */
describe('a reading is held against what such a device usually draws', () => {
  test.each([
    ['within the range', power(3)],
    ['a little outside of it', power(9)],
    ['below it, but not far', power(0.2)],
    ['a current within it', current(0.02)],
    ['a current through ten turns within it', current(0.2, { loops: 10 })],
  ])('%s it is believed', (_, reading) => {
    expect(doubts(reading)).toEqual([])
  })

  test('mA typed as A is named, with the figure to give', () => {
    const [warning] = warningsOf(current(26))
    expect(warning).toMatchObject({ code: 'milliamperes-as-amperes' })
    expect(warning!.message).toContain('comes to 2990 W, but Test device usually draws 1 to 5 W')
    expect(warning!.message).toContain('give 0.026 A in place of 26')
  })

  test.each([
    ['kW typed as W', power(0.0031), 'kilowatts-as-watts', '3.1 W in place of 0.0031'],
    ['mW typed as W', power(3100), 'milliwatts-as-watts', '3.1 W in place of 3100'],
    ['kW declared as W', { kind: 'declared', watts: 0.004 }, 'kilowatts-as-watts', '4 W in place of 0.004'],
    [
      'kW sampled as W',
      { kind: 'samples', watts: [0.003, 0.003], intervalSeconds: 500, ...metered },
      'kilowatts-as-watts',
      '3 W in place of 0.003',
    ],
    [
      'mW sampled as W',
      { kind: 'samples', watts: [3000, 3000], intervalSeconds: 500, ...metered },
      'milliwatts-as-watts',
      '3 W in place of 3000',
    ],
    [
      'kWh typed as Wh',
      { kind: 'energy', wattHours: 0.024, durationHours: 12, ...metered },
      'kilowatt-hours-as-watt-hours',
      '24 Wh in place of 0.024',
    ],
    [
      'kVA typed as VA',
      { kind: 'apparent-power', voltAmperes: 0.006, powerFactor: 0.5, ...metered },
      'kilovolt-amperes-as-volt-amperes',
      '6 VA in place of 0.006',
    ],
    [
      'mVA typed as VA',
      { kind: 'apparent-power', voltAmperes: 6000, powerFactor: 0.5, ...metered },
      'millivolt-amperes-as-volt-amperes',
      '6 VA in place of 6000',
    ],
  ] as const)('%s is named, with the figure to give', (_, reading, code, advice) => {
    const found = warningsOf(reading).find((warning) => warning.code === code)
    expect(found?.message).toContain(advice)
  })

  test('a forgotten x10 window is named', () => {
    const [warning] = warningsOf(current(0.26))
    expect(warning).toMatchObject({ code: 'loops-forgotten' })
    expect(warning!.message).toContain('loops: 10')
    expect(doubts(current(0.26, { loops: 10 }))).toEqual([])
  })

  test('a window that was counted twice is named', () => {
    const [warning] = warningsOf(current(0.026, { loops: 10 }))
    expect(warning).toMatchObject({ code: 'loops-applied-twice' })
    expect(warning!.message).toContain('divided by loops (10) here')
    expect(doubts(current(0.02, { loops: 1 }))).toEqual([])
  })

  test('turns are not named where they explain nothing', () => {
    expect(doubts(current(0.5))).toEqual(['outside-usual-range'])
    expect(doubts(current(0.002, { loops: 3 }))).toEqual(['both-conductors-in-jaw'])
    expect(doubts(current(0.9, { loops: 10 }))).toEqual([])
  })

  test('both conductors in the jaw are named where next to nothing was read', () => {
    const [warning] = warningsOf(current(0.0002))
    expect(warning).toMatchObject({ code: 'both-conductors-in-jaw' })
    expect(warning!.message).toContain('one conductor alone')
    expect(doubts(current(0, { accuracy: { percentOfReading: 2, counts: 5, resolution: 0.01 } }))).toEqual([
      'within-own-counts',
      'both-conductors-in-jaw',
    ])
  })

  test('a device that may draw next to nothing is believed to', () => {
    expect(doubts(current(0.0001), { usual: { name: 'Charger', low: 0, high: 0.3 } })).toEqual([])
  })

  test.each([
    ['power', power(60), 'mode that the device was in'],
    ['energy', { kind: 'energy', wattHours: 60, durationHours: 1, ...metered }, 'units of energy and time'],
    ['declared', { kind: 'declared', watts: 90 }, 'in use, not what it draws in this mode'],
    [
      'thermal',
      {
        kind: 'thermal',
        surfaceTemperatureC: 60,
        ambientTemperatureC: 20,
        areaM2: 0.3,
        orientation: 'vertical',
      },
      'Check the area',
    ],
  ] as const)('%s that no slip explains is doubted all the same, ten times outside', (_, reading, advice) => {
    const [warning] = warningsOf(reading)
    expect(warning).toMatchObject({ code: 'outside-usual-range' })
    expect(warning!.message).toContain(advice)
  })

  test('just below ten times outside it is not', () => {
    expect(doubts(power(49))).toEqual([])
    expect(doubts(power(51))).toEqual(['outside-usual-range'])
    expect(doubts(power(0.101))).toEqual([])
    expect(doubts(power(0.099))).toEqual(['outside-usual-range'])
  })

  test('where no category is known there is nothing to hold it against', () => {
    expect(doubts(power(60), { usual: null })).toEqual([])
    expect(doubts(power(0.00001), { usual: null })).toEqual([])
  })
})

describe('a figure that no outlet carries', () => {
  test('is doubted without any category', () => {
    const [warning] = warningsOf(current(26), { usual: null })
    expect(warning).toMatchObject({ code: 'more-than-an-outlet-carries' })
    expect(warning!.message).toContain('give 0.026 in place of 26')
    expect(warningsOf(power(5000), { usual: null })[0]!.message).toContain('mW, W or kW')
  })

  test('is not found up to 16 A, nor in a x10 window up to 160 A', () => {
    expect(doubts(current(16), { usual: null })).toEqual([])
    expect(doubts(current(120, { loops: 10 }), { usual: null })).toEqual([])
    expect(doubts(power(3600), { usual: null })).toEqual([])
  })

  test('is not told beside a warning that explains it better', () => {
    expect(doubts(current(26))).toEqual(['milliamperes-as-amperes'])
  })
})

describe('a voltage', () => {
  test('that is not the supply’s is doubted', () => {
    const [warning] = warningsOf(current(0.02, { volts: 120 }))
    expect(warning).toMatchObject({ code: 'voltage-does-not-fit-supply' })
    expect(warning!.message).toContain('120 V does not fit a supply of 230 V +-10 %')
  })

  test('within 10 % of it, or within its tolerance where that is wider, is believed', () => {
    expect(doubts(current(0.02, { volts: 208 }))).toEqual([])
    expect(doubts(current(0.02, { volts: 205 }))).toEqual(['voltage-does-not-fit-supply'])
    const wide = { volts: 230, tolerancePercent: 15, hertz: 50 }
    expect(doubts(current(0.02, { volts: 205 }), { supply: wide })).toEqual([])
  })

  test('that was not read is not doubted', () => {
    expect(doubts(current(0.02, { volts: undefined }))).toEqual([])
  })
})

describe('an average-responding meter', () => {
  const clamp = (changes: object) =>
    current(0.2, { loops: 10, accuracy: { preset: 'clamp-average-responding' }, ...changes })

  test('on a power factor far below 1 is doubted, read or assumed', () => {
    expect(doubts(clamp({ powerFactor: 0.5 }))).toContain('average-responding-on-distorted-current')
    expect(doubts(clamp({ powerFactor: undefined }))).toContain('average-responding-on-distorted-current')
    const [warning] = warningsOf(clamp({})).filter(({ code }) => code.startsWith('average'))
    expect(warning!.message).toContain('true-RMS')
  })

  test('that is named among the meters is known, too, also where it shows VA', () => {
    const meters = new Map([['m', { id: 'm', preset: 'clamp-average-responding' } as const]])
    const reading: Reading = { kind: 'apparent-power', voltAmperes: 6, powerFactor: 0.5, meterId: 'm' }
    expect(doubts(reading, { meters })).toContain('average-responding-on-distorted-current')
  })

  test('near a power factor of 1, where the current is nearly a sine wave, is believed', () => {
    expect(doubts(clamp({ powerFactor: 0.95 }))).not.toContain('average-responding-on-distorted-current')
    const range = { low: 0.5, typical: 0.8, high: 1 }
    expect(doubts(clamp({ powerFactor: range }))).not.toContain('average-responding-on-distorted-current')
  })

  test('is not suspected behind any other meter', () => {
    expect(doubts(clamp({ accuracy: { preset: 'clamp-true-rms' } }))).not.toContain(
      'average-responding-on-distorted-current',
    )
    expect(doubts(clamp({ accuracy: EXACT }))).toEqual([])
  })
})
