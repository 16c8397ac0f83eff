import { describe, expect, test } from 'vitest'
import { accuracyOf } from '../../../src/core/readings/accuracyOf.ts'
import { meteredValue } from '../../../src/core/readings/meteredValue.ts'
import { meterIsGoodEnough } from '../../../src/core/readings/meterIsGoodEnough.ts'
import type { Meter, MeteredReading } from '../../../src/core/readings/reading.ts'
import { codesOf, contextOf } from './contextOf.ts'

const limits = { percentOfReading: 1.5, counts: 3, resolution: 0.01 }
const withMeter = (meter: Meter) => contextOf({ meters: new Map([[meter.id, meter]]) })
const power = (changes: Partial<MeteredReading> = {}) =>
  ({ kind: 'power', watts: 2, ...changes }) as MeteredReading

describe('the accuracy behind a reading', () => {
  test('is the reading’s own', () => {
    expect(accuracyOf(power({ accuracy: limits }), contextOf())).toEqual({
      unit: 'W',
      limits,
      preset: null,
      meter: null,
    })
  })

  test('is that of the meter that it names', () => {
    const { limits: found, meter } = accuracyOf(power({ meterId: 'm1' }), withMeter({ id: 'm1', ...limits }))
    expect(found).toMatchObject(limits)
    expect(meter).toBe('m1')
  })

  test('is that of a class of meters, in the unit of the reading', () => {
    const context = withMeter({ id: 'm1', preset: 'plug-in-wattmeter' })
    const watts = accuracyOf(power({ meterId: 'm1' }), context)
    const wattHours = accuracyOf(power({ kind: 'energy', meterId: 'm1' }), context)
    expect(watts.limits).toEqual({ percentOfReading: 2, counts: 2, resolution: 0.1 })
    expect(wattHours.limits).toEqual({ percentOfReading: 2, counts: 2, resolution: 1 })
    expect(watts.preset?.code).toBe('plug-in-wattmeter')
  })

  test('of a class has a gain that is shared within one unit only, since each unit has limits of its own', () => {
    const context = withMeter({ id: 'm1', preset: 'plug-in-wattmeter' })
    const meters = (['power', 'samples', 'energy'] as const).map(
      (kind) => accuracyOf(power({ kind, meterId: 'm1' }), context).meter,
    )
    expect(meters[0]).toBe(meters[1])
    expect(meters[0]).not.toBe(meters[2])
  })

  test('is unknown where nothing is given, or an unknown meter is named', () => {
    expect(accuracyOf(power(), contextOf()).limits).toBeNull()
    expect(accuracyOf(power({ meterId: 'gone' }), contextOf()).limits).toBeNull()
  })
})

describe('a metered value', () => {
  const of = (value: number, reading: MeteredReading, context = contextOf()) =>
    meteredValue(value, reading, context)

  test('has the percent part as a share and the counts part in the reading’s unit', () => {
    expect(of(2, power({ accuracy: limits }))).toEqual({
      metered: { value: 2, gain: 0.015, counts: 0.03, meter: null },
      warnings: [],
    })
  })

  test('without an accuracy is exact, with a warning that says what to give', () => {
    const { metered, warnings } = of(2, power())
    expect(metered).toEqual({ value: 2, gain: 0, counts: 0, meter: null })
    expect(codesOf(warnings)).toEqual(['accuracy-unknown'])
    expect(warnings[0]!.message).toContain('percentOfReading')
  })

  test('of a class says that the class is common practice, by its source', () => {
    const { warnings } = of(2, power({ accuracy: { preset: 'smart-plug' } }))
    expect(codesOf(warnings)).toEqual(['meter-class-assumed'])
    expect(warnings[0]!.message).toContain('invented for the tests')
  })

  test('of a class that does not read the unit is exact, with a warning that names both', () => {
    const { metered, warnings } = of(2, power({ accuracy: { preset: 'clamp-true-rms' } }))
    expect(metered.gain).toBe(0)
    expect(codesOf(warnings)).toEqual(['meter-does-not-read-this'])
    expect(warnings[0]!.message).toMatch(/in W.*clamp meter, true-RMS/)
  })

  test.each([
    ['current', 'line splitter'],
    ['power', 'several hours'],
    ['energy', 'several hours'],
    ['apparent-power', 'several hours'],
  ] as const)('of %s within its own counts cannot be told from zero', (kind, advice) => {
    const within = of(0.03, power({ kind, accuracy: limits }))
    expect(codesOf(within.warnings)).toEqual(['within-own-counts'])
    expect(within.warnings[0]!.message).toContain(advice)
    expect(of(0.031, power({ kind, accuracy: limits })).warnings).toEqual([])
  })

  test('of nothing on a meter without counts is taken for nothing', () => {
    expect(of(0, power({ accuracy: { ...limits, counts: 0 } })).warnings).toEqual([])
  })
})

describe('the uncertainty rule of IEC 62301', () => {
  const rules = (...given: Parameters<typeof meterIsGoodEnough>) => meterIsGoodEnough(...given)

  test('names the edition and clause of each rule, and how it was confirmed', () => {
    expect(rules(1, 0.01).map(({ edition, mark }) => [edition, mark])).toEqual([
      ['IEC 62301:2005 (edition 1), 4.4', 'V'],
      ['IEC 62301:2011 (edition 2), 4.4.1', 'M'],
    ])
  })

  test.each([
    [0.1, 0.01, 0.02],
    [0.499, 0.01, 0.02],
    [0.5, 0.01, 0.02],
    [0.8, 0.016, 0.02],
    [0.999, 0.01998, 0.02],
    [1, 0.02, 0.02],
    [5, 0.1, 0.1],
  ])('at %d W is %d W by the first edition and %d W by the second', (watts, first, second) => {
    const [one, two] = rules(watts, 0)
    expect(one!.limitW).toBeCloseTo(first, 12)
    expect(two!.limitW).toBeCloseTo(second, 12)
  })

  test('is met at the limit and not above', () => {
    expect(rules(5, 0.1).map(({ goodEnough }) => goodEnough)).toEqual([true, true])
    expect(rules(5, 0.1001).map(({ goodEnough }) => goodEnough)).toEqual([false, false])
    expect(rules(0.3, 0.015).map(({ goodEnough }) => goodEnough)).toEqual([false, true])
  })

  test.each([
    [5, 0.02],
    [10, 0.02],
    [15, 0.028],
    [20, 0.036],
    [30, 0.052],
  ])('of the second edition eases with a maximum current ratio of %d to %d of the power', (ratio, share) => {
    expect(rules(2, 0, ratio)[1]!.limitW).toBeCloseTo(2 * share, 12)
    expect(rules(0.5, 0, ratio)[1]!.limitW).toBeCloseTo(share, 12)
    expect(rules(2, 0, ratio)[0]!.limitW).toBeCloseTo(0.04, 12)
  })
})
