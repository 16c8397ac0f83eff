import { describe, expect, test } from 'vitest'
import { isExact } from '../../../src/core/quantity/distribution.ts'
import { intervalOfSum } from '../../../src/core/quantity/intervalOfSum.ts'
import { monteCarloDraws } from '../../../src/core/quantity/monteCarlo.ts'
import { termMean } from '../../../src/core/quantity/term.ts'
import { powerFactorOf } from '../../../src/core/readings/powerFactor.ts'
import type { PowerOfReading, ReadingContext } from '../../../src/core/readings/powerModel.ts'
import { powerOfReading } from '../../../src/core/readings/powerOfReading.ts'
import type { Reading } from '../../../src/core/readings/reading.ts'
import { codesOf, contextOf, EXACT } from './contextOf.ts'
import { noise, seriesOf } from './noise.ts'

const usual = null
const read = (reading: Reading, changes: Partial<ReadingContext> = {}): PowerOfReading =>
  powerOfReading(reading, contextOf({ usual, ...changes }))
const watts = (reading: Reading, changes: Partial<ReadingContext> = {}, coverage = 0.9) =>
  intervalOfSum([read(reading, changes).power], coverage)

describe('power and energy', () => {
  test('are measured, and P = E / t', () => {
    expect(watts({ kind: 'power', watts: 2.3, accuracy: EXACT }).expected).toBe(2.3)
    const energy: Reading = { kind: 'energy', wattHours: 24, durationHours: 48, accuracy: EXACT }
    expect(watts(energy).expected).toBe(0.5)
    expect([read({ kind: 'power', watts: 2.3, accuracy: EXACT }).flag, read(energy).flag]).toEqual([
      'measured',
      'measured',
    ])
    expect(read(energy).explanation).toBe('P = E / t = 24 Wh / 48 h.')
  })

  test('have the limits of error of the meter, counts in its own unit', () => {
    const accuracy = { percentOfReading: 0, counts: 2, resolution: 1 }
    const { low, high } = watts({ kind: 'energy', wattHours: 24, durationHours: 48, accuracy })
    expect(high - low).toBeCloseTo((2 * 0.9 * 2) / 48, 9)
  })
})

describe('a declared figure', () => {
  test('is a ceiling: anything between half of it and all of it, and declared', () => {
    const { expected, low, high } = watts({ kind: 'declared', watts: 4 })
    expect([expected, low, high].map((one) => Number(one.toFixed(9)))).toEqual([3, 2.1, 3.9])
    expect(read({ kind: 'declared', watts: 4 }).flag).toBe('declared')
    expect(read({ kind: 'declared', watts: 4 }).explanation).toContain('between 2 W and 4 W')
  })
})

describe('a current', () => {
  const current: Reading = { kind: 'current', amperes: 0.1, accuracy: EXACT }

  test('at 230 V is 23 VA, and without a power factor a range of watts, partly measured', () => {
    const { apparentPower, flag, warnings, explanation } = read(current)
    expect(termMean(apparentPower!)).toBeCloseTo(23, 12)
    const { low, high } = watts(current)
    expect(low).toBeGreaterThan(23 * 0.3)
    expect(high).toBeLessThan(23 * 0.65 * 1.06)
    expect(high - low).toBeGreaterThan(3)
    expect(flag).toBe('partly-measured')
    expect(codesOf(warnings)).toEqual(['power-factor-assumed'])
    expect(explanation).toBe(
      'P = V I PF = 230 V (nominal, +-6 %) x 0.1 A x PF, with PF between 0.3 and 0.65, the category’s range.',
    )
  })

  test('with voltage and power factor read is one figure, measured', () => {
    const whole: Reading = { ...current, volts: 231, powerFactor: 0.4 }
    expect(watts(whole).expected).toBeCloseTo(231 * 0.1 * 0.4, 12)
    expect(watts(whole).high).toBe(watts(whole).low)
    expect(read(whole).flag).toBe('measured')
    expect(read(whole).explanation).toContain('231 V (read)')
  })

  test('through a x10 window is a tenth, and so are its counts', () => {
    const accuracy = { percentOfReading: 1.5, counts: 5, resolution: 0.01 }
    const direct: Reading = { kind: 'current', amperes: 0.54, volts: 230, powerFactor: 1, accuracy }
    const turns: Reading = { ...direct, amperes: 5.4, loops: 10 }
    expect(watts(turns).expected).toBeCloseTo(watts(direct).expected, 9)
    const width = ({ low, high }: { low: number; high: number }) => high - low
    expect(width(watts(turns))).toBeLessThan(0.3 * width(watts(direct)))
    expect(read(turns).explanation).toContain('5.4 A / 10 turns')
  })

  test('shares the supply’s voltage with others only where its own was not read', () => {
    expect(read(current).power.shared?.key).toBe('supply-voltage')
    expect(read({ ...current, volts: 230 }).power.shared).toBeUndefined()
    const steady = { volts: 230, tolerancePercent: 0, hertz: 50 }
    expect(read(current, { supply: steady }).power.shared).toBeUndefined()
  })

  test('has a power factor range of its own where one is stated, partly measured without a warning', () => {
    const stated: Reading = { ...current, powerFactor: { low: 0.2, typical: 0.3, high: 0.4 } }
    expect(read(stated).flag).toBe('partly-measured')
    expect(read(stated).warnings).toEqual([])
    expect(read(stated).explanation).toContain('PF between 0.2 and 0.4 as stated')
    expect(watts(stated).expected).toBeCloseTo(23 * 0.3, 9)
  })

  test('with a power factor above the category’s is doubted', () => {
    expect(codesOf(read({ ...current, powerFactor: 1 }).warnings)).toEqual(['power-factor-unusual'])
    expect(read({ ...current, powerFactor: 0.65 }).warnings).toEqual([])
  })
})

describe('apparent, real and non-active power', () => {
  const reading: Reading = {
    kind: 'apparent-power',
    voltAmperes: 10,
    accuracy: { percentOfReading: 2, counts: 2, resolution: 0.1 },
  }

  test('obey S^2 = P^2 + Q^2 where the power factor was read', () => {
    const { power, apparentPower, reactivePower } = read({ ...reading, powerFactor: 0.6 })
    const [p, s, q] = [power, apparentPower!, reactivePower!()].map(termMean)
    expect(p).toBeCloseTo(6, 9)
    expect(q).toBeCloseTo(8, 9)
    expect(Math.hypot(p!, q!)).toBeCloseTo(s!, 9)
    expect(isExact(powerFactorOf(0.6, { low: 0.1, typical: 0.2, high: 0.3 }).distribution)).toBe(true)
  })

  test.each([
    ['apparent power', reading],
    ['current', { kind: 'current', amperes: 0.06, accuracy: EXACT }],
  ] as const)('of a reading of %s: Q is sqrt(S^2 - P^2) draw by draw', (_, given) => {
    const { reactivePower, apparentPower, flag } = read(given)
    expect(flag).toBe('partly-measured')
    const draws = 200_000
    // S and PF are drawn apart, and Q is worked out from both.
    const s = monteCarloDraws([apparentPower!], draws, 1)
    const { distribution } = powerFactorOf(undefined, contextOf().powerFactor)
    const factors = monteCarloDraws([{ coefficient: 1, factors: [distribution] }], draws, 2)
    const q = s.map((each, i) => Math.sqrt(each ** 2 - (each * factors[i]!) ** 2)).sort()
    const { expected, low, high } = intervalOfSum([reactivePower!()], 0.9)
    const width = high - low
    expect(Math.abs(expected - q.reduce((sum, one) => sum + one / draws, 0))).toBeLessThan(0.01 * width)
    expect(Math.abs(low - q[0.05 * draws]!)).toBeLessThan(0.02 * width)
    expect(Math.abs(high - q[0.95 * draws]!)).toBeLessThan(0.02 * width)
  })

  test('say in words what they are', () => {
    expect(read({ ...reading, powerFactor: 0.4 }).explanation).toBe(
      'P = S PF = 10 VA x PF, with PF 0.4 as read.',
    )
  })
})

describe('samples', () => {
  const next = noise(11)
  const steady = seriesOf(1200, () => 2 + 0.05 * next())
  const samples = (changes: object = {}): Reading => ({
    kind: 'samples',
    watts: steady,
    intervalSeconds: 1,
    accuracy: EXACT,
    ...changes,
  })

  test('that are stable are measured, with their scatter alone where the meter is exact', () => {
    const { flag, series, warnings } = read(samples())
    const { expected, low, high } = watts(samples(), {}, 0.95)
    expect([flag, series!.verdict, codesOf(warnings)]).toEqual(['measured', 'stable', []])
    expect(expected).toBeCloseTo(series!.meanW, 9)
    expect((high - low) / 2 / series!.standardUncertaintyW).toBeCloseTo(1.963, 2)
  })

  test('have the meter’s error, too, which does not average out', () => {
    const accuracy = { percentOfReading: 2, counts: 2, resolution: 0.1 }
    const alone = watts({ kind: 'power', watts: read(samples()).series!.meanW, accuracy })
    const both = watts(samples({ accuracy }))
    expect(both.high - both.low).toBeGreaterThanOrEqual((alone.high - alone.low) * 0.999)
    expect(both.high - both.low).toBeLessThan((alone.high - alone.low) * 1.01)
  })

  test('combine both errors where they are alike, as by drawing', () => {
    const few = seriesOf(60, (i) => 2 + (i % 3) / 4 + 0.3 * next())
    const reading = samples({
      watts: few,
      intervalSeconds: 20,
      accuracy: { percentOfReading: 3, counts: 0, resolution: 0 },
    })
    const { series, power } = read(reading)
    const { low, high } = watts(reading, {}, 0.95)
    const drawn = monteCarloDraws([power], 200_000, 3).sort()
    expect(series!.degreesOfFreedom).toBeLessThan(40)
    expect(Math.abs(low - drawn[5000]!)).toBeLessThan(0.02 * (high - low))
    expect(Math.abs(high - drawn[195_000]!)).toBeLessThan(0.02 * (high - low))
  })

  test('that are not stable are partly measured, and say how far and what to do', () => {
    const drifting = read(samples({ watts: seriesOf(1200, (i) => 2 + i / 3600) }))
    expect(drifting.flag).toBe('partly-measured')
    expect(codesOf(drifting.warnings)).toEqual(['series-unstable'])
    expect(drifting.warnings[0]!.message).toMatch(/1000 mW an hour.*go on sampling/)
    expect(drifting.explanation).toContain('unstable by IEC 62301:2011 5.3.2')
  })

  test('that are too few are partly measured, and say how long to sample', () => {
    const short = read(samples({ watts: steady.slice(0, 300) }))
    expect(short.flag).toBe('partly-measured')
    expect(codesOf(short.warnings)).toEqual(['series-too-short'])
    expect(short.warnings[0]!.message).toContain('lasts 5 minutes')
  })

  test('of too few cycles are too short, and say how long to sample', () => {
    const cyclic = read(samples({ watts: seriesOf(1800, (i) => (i % 500 < 100 ? 5 : 1)) }))
    expect(cyclic.flag).toBe('partly-measured')
    expect(codesOf(cyclic.warnings)).toEqual(['series-too-short'])
    expect(cyclic.warnings[0]!.message).toContain('every 500 s, and only 2 whole cycles')
    expect(cyclic.warnings[0]!.message).toContain('at least 50 minutes')
    expect(cyclic.explanation).toContain('whole cycles of 500 s')
  })

  test('that are far apart can miss peaks, which is said and not flagged', () => {
    const sparse = read(samples({ watts: seriesOf(120, () => 2), intervalSeconds: 10 }))
    expect([sparse.flag, codesOf(sparse.warnings)]).toEqual(['measured', ['sampling-interval-long']])
    expect(codesOf(read(samples({ intervalSeconds: 1 })).warnings)).toEqual([])
  })

  test('that never move have no scatter', () => {
    expect(read(samples({ watts: seriesOf(900, () => 1.2) })).power.factors).toEqual([])
    const zero = watts(samples({ watts: seriesOf(900, () => 0) }))
    expect(zero).toEqual({ expected: 0, low: 0, high: 0 })
  })

  test('of two values count as three degrees of freedom, the fewest that have a variance', () => {
    const two = watts(samples({ watts: [1.9, 2.1], intervalSeconds: 600 }), {}, 0.95)
    expect((two.high - two.low) / 2).toBeCloseTo(3.182 * 0.1, 2)
  })
})
