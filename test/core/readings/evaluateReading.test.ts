import { describe, expect, test } from 'vitest'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import { ANY_POWER_FACTOR } from '../../../src/core/readings/evaluateReading.ts'
import { READING_KINDS, type Reading } from '../../../src/core/readings/reading.ts'
import { usualDraw } from '../../../src/core/readings/usualDraw.ts'
import { codesOf, EXACT } from './contextOf.ts'
import { catalogue, category, evaluate, limits, READINGS, settings } from './evaluation.ts'
import { seriesOf } from './noise.ts'

/** Of the operator's cautions, those that apply to the kind. */
const CAUTIONS_SHOWN: Readonly<Record<string, readonly string[]>> = {
  power: ['a-warning-for-all'],
  current: ['a-warning-for-all', 'a-warning-for-clamps'],
}

describe('every kind of reading', () => {
  test.each(READING_KINDS)('%s gives watts, steps, guidance and cautions', (kind) => {
    const { powerW, steps, guidance, cautions, ...answer } = evaluate({ reading: READINGS[kind] })
    expect(answer.kind).toBe(kind)
    expect(powerW.low).toBeLessThan(powerW.expected)
    expect(powerW.expected).toBeLessThan(powerW.high)
    expect(steps.length).toBeGreaterThanOrEqual(2)
    for (const { what, formula, result } of steps) {
      expect(what).toMatch(/^[A-Z].{3,}$/)
      expect(formula.length).toBeGreaterThan(3)
      expect(result).toMatch(/\d/)
    }
    expect(steps.at(-1)!.what).toContain('90 %')
    expect(guidance.length).toBeGreaterThan(0)
    for (const { code, message, source } of guidance)
      expect([code, message, source].every((text) => text.length > 3)).toBe(true)
    expect(codesOf(cautions)).toEqual(CAUTIONS_SHOWN[kind] ?? [])
  })

  test.each(READING_KINDS)('%s gives the same interval and flag as in an estimate', (kind) => {
    const { powerW, apparentPowerVa, confidence, warnings } = evaluate({
      reading: READINGS[kind],
      category: 'lamp',
      mode: 'standby',
      year: 2020,
      quantity: 4,
    })
    const household = {
      devices: [
        { category: 'lamp', year: 2020, modes: [{ mode: 'standby' as const, reading: READINGS[kind] }] },
      ],
    }
    const [device] = estimate(household, catalogue, settings).devices
    const [mode] = device!.modes
    expect(mode!.powerW).toEqual(powerW)
    expect(mode!.apparentPowerVa).toEqual(apparentPowerVa)
    expect(mode!.confidence).toBe(confidence)
    expect(codesOf(device!.warnings)).toEqual(codesOf(warnings))
  })

  test('warns of what is hard to believe in an estimate, too', () => {
    const household = {
      devices: [
        {
          category: 'lamp',
          year: 2020,
          modes: [
            {
              mode: 'standby' as const,
              reading: {
                kind: 'current' as const,
                amperes: 15,
                volts: 120,
                accuracy: { preset: 'clamp-average-responding' as const },
              },
            },
          ],
        },
      ],
    }
    expect(codesOf(estimate(household, catalogue, settings).devices[0]!.warnings)).toEqual([
      'meter-class-assumed',
      'power-factor-assumed',
      'milliamperes-as-amperes',
      'voltage-does-not-fit-supply',
      'average-responding-on-distorted-current',
    ])
  })
})

describe('what is read against', () => {
  test('is the category’s power factor where one is known, and a wide one where none is', () => {
    const reading = READINGS.current
    expect(evaluate({ reading, category: 'light' }).powerFactor).toEqual(category.powerFactor)
    expect(evaluate({ reading }).powerFactor).toEqual(ANY_POWER_FACTOR)
    expect(evaluate({ reading: { ...reading, powerFactor: 0.5 } as Reading }).powerFactor).toEqual({
      low: 0.5,
      typical: 0.5,
      high: 0.5,
    })
    expect(evaluate({ reading: READINGS.power }).powerFactor).toBeUndefined()
  })

  test('is the supply of the request, else the operator’s', () => {
    const reading: Reading = { kind: 'current', amperes: 1, powerFactor: 1, accuracy: EXACT }
    const supply = { volts: 100, tolerancePercent: 0, hertz: 60 }
    expect(evaluate({ reading, supply })).toMatchObject({ supply, powerW: { expected: 100 } })
    expect(evaluate({ reading })).toMatchObject({
      supply: settings.supply,
      powerW: { expected: 230 },
    })
  })

  test('is the meter that it names', () => {
    const reading: Reading = { kind: 'power', watts: 2, meterId: 'm' }
    const exact = evaluate({ reading, meters: [{ id: 'm', ...EXACT }] })
    expect(exact.powerW).toEqual({ expected: 2, low: 2, high: 2 })
    const preset = evaluate({ reading, meters: [{ id: 'm', preset: 'smart-plug' }] })
    expect(preset.powerW.high - preset.powerW.low).toBeGreaterThan(0.5)
    expect(preset.assumptions).toEqual([
      'The meter is as good as its class, smart plug: +-(3 % + 5 x 0.1 W); invented for the tests.',
    ])
  })

  test.each([
    ['mode and year', 'standby', 2020, 1, 2],
    ['the mode, of all years', 'standby', undefined, 1, 9],
    ['all modes where none is given', undefined, 2020, 0.1, 2],
    ['all modes where the catalogue has no figure in it', 'idle', 2005, 0.1, 9],
  ] as const)('is the usual draw of %s', (_, mode, year, low, high) => {
    expect(usualDraw(category, mode, year)).toEqual({ name: 'Lamp', low, high })
  })

  test('says whether figures of the category are invented', () => {
    const reading = READINGS.power
    expect(evaluate({ reading, category: 'lamp' })).toMatchObject({
      category: 'lamp',
      categoryName: 'Lamp',
      sampleData: true,
    })
    expect(evaluate({ reading, category: 'fan' }).sampleData).toBe(false)
    expect(evaluate({ reading })).toMatchObject({ category: null, categoryName: null, sampleData: false })
  })
})

describe('the answer', () => {
  test('is of one device, or of as many as it is said to stand for', () => {
    const one = evaluate({ reading: READINGS.current })
    const three = evaluate({ reading: READINGS.current, quantity: 3 })
    for (const name of ['powerW', 'apparentPowerVa', 'reactivePowerVar'] as const)
      for (const end of ['expected', 'low', 'high'] as const)
        expect(three[name]![end] / one[name]![end]).toBeCloseTo(3, 4)
    expect(three.steps.at(-2)).toMatchObject({ formula: 'P x 3' })
    expect(one.steps).toHaveLength(three.steps.length - 1)
  })

  test('has the coverage probability that was asked for', () => {
    const wide = evaluate({ reading: READINGS.current, coverageProbability: 0.99 })
    const narrow = evaluate({ reading: READINGS.current, coverageProbability: 0.5 })
    expect(wide.powerW.low).toBeLessThan(narrow.powerW.low)
    expect(wide.coverageProbability).toBe(0.99)
    expect(wide.steps.at(-1)!.what).toContain('99 %')
  })

  test('has non-active power beside real and apparent power, or none of them', () => {
    const { powerW, apparentPowerVa, reactivePowerVar } = evaluate({
      reading: { kind: 'apparent-power', voltAmperes: 10, powerFactor: 0.6, accuracy: EXACT },
    })
    expect([powerW.expected, apparentPowerVa!.expected, reactivePowerVar!.expected]).toEqual([6, 10, 8])
    const power = evaluate({ reading: READINGS.power })
    expect(power).not.toHaveProperty('apparentPowerVa')
    expect(power).not.toHaveProperty('reactivePowerVar')
    expect(power).not.toHaveProperty('series')
  })

  test('judges a series, and rounds what it says of it', () => {
    const { series } = evaluate({ reading: READINGS.samples })
    expect(series).toMatchObject({ verdict: 'stable', samples: 900, used: 600, cycle: null })
    expect(String(series!.meanW).length).toBeLessThanOrEqual(8)
    const cyclic: Reading = {
      kind: 'samples',
      watts: seriesOf(1800, (i) => (i % 70 < 30 ? 3 : 1)),
      intervalSeconds: 1,
    }
    expect(evaluate({ reading: cyclic }).series!.cycle).toEqual({ periodSeconds: 70, cycles: 17 })
  })

  test('is the same for the same reading', () => {
    const asked = { reading: READINGS.samples, category: 'lamp' }
    expect(JSON.stringify(evaluate(asked))).toBe(JSON.stringify(evaluate(asked)))
  })
})

describe('whether the meter is good enough', () => {
  const rulesFor = (reading: Reading, maximumCurrentRatio?: number) =>
    evaluate({ reading, ...(maximumCurrentRatio !== undefined && { maximumCurrentRatio }) }).uncertaintyRules

  test('is said of both editions, with the half-width at 95 %', () => {
    const rules = rulesFor({ kind: 'power', watts: 2, accuracy: { ...limits, percentOfReading: 3 } })
    expect(rules.map(({ limitW, goodEnough }) => [limitW, goodEnough])).toEqual([
      [0.04, false],
      [0.04, false],
    ])
    expect(rules[0]!.expandedUncertaintyW).toBeCloseTo(0.95 * 0.06, 6)
    expect(rulesFor(READINGS.power).map(({ goodEnough }) => goodEnough)).toEqual([true, true])
  })

  test('eases in the second edition with the maximum current ratio', () => {
    const reading: Reading = { kind: 'power', watts: 2, accuracy: { ...limits, percentOfReading: 3 } }
    expect(rulesFor(reading, 20).map(({ goodEnough }) => goodEnough)).toEqual([false, true])
  })

  test('of a current without a power factor it never is, since the watts are a range', () => {
    expect(rulesFor(READINGS.current).some(({ goodEnough }) => goodEnough)).toBe(false)
  })

  test('is not said where no meter was read, or nothing is known of it', () => {
    expect(rulesFor(READINGS.declared)).toEqual([])
    expect(rulesFor(READINGS.thermal)).toEqual([])
    expect(rulesFor({ kind: 'power', watts: 2 })).toEqual([])
  })
})
