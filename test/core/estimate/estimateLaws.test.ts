import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Interval } from '../../../src/core/estimate/estimate.ts'
import type { Device } from '../../../src/core/inventory/household.ts'
import { devices, estimateOf, households, oneDevice, ranges, readings } from './households.ts'

/** The same but for the last of six digits. */
const near = (actual: number, expected: number, share = 2e-5) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(share * Math.abs(expected) + 1e-9)
const RUNS = { numRuns: 60 }
const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** A reading of zero beside narrow parts is where an end is least exact: README.md of core/quantity, share of the width. */
const NEAR_ZERO = 0.05
const totalOf = (list: readonly Device[], more = {}) => estimateOf(list, more).total.energyKwhPerYear

describe('the parts of an estimate add up', () => {
  test('mean energy, cost, emissions and shares of the devices are those of the total', () => {
    fc.assert(
      fc.property(households, (list) => {
        const { devices: each, total } = estimateOf(list)
        const sum = (of: (device: (typeof each)[number]) => number) =>
          each.reduce((all, one) => all + of(one), 0)
        near(
          sum((one) => one.energyKwhPerYear.expected),
          total.energyKwhPerYear.expected,
        )
        near(
          sum((one) => one.costPerYear.expected),
          total.costPerYear.expected,
        )
        near(
          sum((one) => one.emissionsKgCo2ePerYear.expected),
          total.emissionsKgCo2ePerYear.expected,
        )
        if (total.energyKwhPerYear.expected > 1e-6)
          near(
            sum((one) => one.shareOfTotal),
            1,
          )
      }),
      RUNS,
    )
  })

  test('mean energy of the modes is that of the device, and power is energy over the hours counted', () => {
    fc.assert(
      fc.property(devices, (device) => {
        const [one] = estimateOf([device]).devices
        const kwh = one!.modes.reduce((all, mode) => all + mode.energyKwhPerYear.expected, 0)
        const hours = one!.modes.reduce((all, mode) => all + mode.hoursPerYear, 0)
        near(kwh, one!.energyKwhPerYear.expected)
        near((one!.powerW.expected * hours) / 1000, one!.energyKwhPerYear.expected)
      }),
      RUNS,
    )
  })

  test('confidence shares add up to 1 where there is energy', () => {
    fc.assert(
      fc.property(households, (list) => {
        const { confidenceShares, energyKwhPerYear } = estimateOf(list).total
        const sum = Object.values(confidenceShares).reduce((all, share) => all + share, 0)
        if (energyKwhPerYear.expected > 1e-6) near(sum, 1)
        else expect([0, 1]).toContain(Math.round(sum * 1e6) / 1e6)
      }),
      RUNS,
    )
  })

  test('the order of the devices changes no figure', () => {
    fc.assert(
      fc.property(households, (list) => {
        const [there, back] = [totalOf(list), totalOf(list.toReversed())]
        for (const end of ['expected', 'low', 'high'] as const) near(there[end], back[end], 2e-3)
      }),
      RUNS,
    )
  })
})

describe('an estimate scales', () => {
  test('with the price and the emission factor, ends and all', () => {
    fc.assert(
      fc.property(households, positive(0.01, 2), positive(0.01, 1), (list, pricePerKwh, kgCo2ePerKwh) => {
        const { total } = estimateOf(list, {
          tariff: { kind: 'flat', currency: 'EUR', pricePerKwh },
          emissionFactor: { kgCo2ePerKwh },
        })
        for (const end of ['expected', 'low', 'high'] as const) {
          near(total.costPerYear[end], pricePerKwh * total.energyKwhPerYear[end])
          near(total.emissionsKgCo2ePerYear[end], kgCo2ePerKwh * total.energyKwhPerYear[end])
        }
      }),
      RUNS,
    )
  })

  test('with the hours of a device', () => {
    fc.assert(
      fc.property(readings, positive(1, 80), (reading, hoursPerWeek) => {
        const once = totalOf([oneDevice({ reading, hoursPerWeek })])
        const twice = totalOf([oneDevice({ reading, hoursPerWeek: 2 * hoursPerWeek })])
        for (const end of ['expected', 'low', 'high'] as const) near(twice[end], 2 * once[end])
      }),
      RUNS,
    )
  })

  test('with the number of devices behind one reading', () => {
    fc.assert(
      fc.property(readings, fc.integer({ min: 2, max: 20 }), (reading, quantity) => {
        const one = totalOf([oneDevice({ reading })])
        const many = totalOf([oneDevice({ reading }, { quantity })])
        for (const end of ['expected', 'low', 'high'] as const) near(many[end], quantity * one[end])
      }),
      RUNS,
    )
  })

  test('less than that in its width with independent assumed devices, whose mean scales', () => {
    const [one, nine] = [totalOf([oneDevice({})]), totalOf([oneDevice({}, { quantity: 9 })])]
    near(nine.expected, 9 * one.expected)
    expect(nine.high - nine.low).toBeLessThan(4 * (one.high - one.low))
    expect(nine.high - nine.low).toBeGreaterThan(2 * (one.high - one.low))
  })
})

describe('an estimate never falls when an input grows', () => {
  const grows = (smaller: Interval, larger: Interval) => {
    for (const end of ['expected', 'low', 'high'] as const)
      expect(larger[end]).toBeGreaterThanOrEqual(smaller[end] * (1 - 2e-5) - 1e-9)
  }
  const pair = (min: number, max: number) =>
    fc
      .tuple(positive(min, max), positive(min, max))
      .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const)

  test('hours, exact or as a range', () => {
    fc.assert(
      fc.property(
        readings,
        pair(0, 168),
        ranges(0, 80),
        pair(1, 2),
        (reading, [few, many], range, [, by]) => {
          const at = (hoursPerWeek: typeof range | number) => totalOf([oneDevice({ reading, hoursPerWeek })])
          grows(at(few), at(many))
          const wider = { low: range.low * by, typical: range.typical * by, high: range.high * by }
          grows(at(range), at(wider))
        },
      ),
      RUNS,
    )
  })

  test('watts, watt hours, volt-amperes, amperes, volts and a label', () => {
    fc.assert(
      fc.property(pair(0, 40), (pairOf) => {
        const kinds = [
          (x: number) => ({ kind: 'power', watts: x }) as const,
          (x: number) => ({ kind: 'energy', wattHours: x, durationHours: 5 }) as const,
          (x: number) => ({ kind: 'apparent-power', voltAmperes: x }) as const,
          (x: number) => ({ kind: 'current', amperes: x / 100 }) as const,
          (x: number) => ({ kind: 'current', amperes: 0.1, volts: 100 + x }) as const,
          (x: number) => ({ kind: 'declared', watts: x }) as const,
        ]
        for (const kind of kinds) {
          const [less, more] = pairOf.map((x) => totalOf([oneDevice({ reading: kind(x) })]))
          grows(less!, more!)
        }
      }),
      RUNS,
    )
  })

  test('power factor, quantity, weeks a year', () => {
    fc.assert(
      fc.property(
        pair(0.05, 1),
        pair(1, 53),
        fc.integer({ min: 1, max: 6 }),
        ([low, high], [few, many], quantity) => {
          const at = (powerFactor: number) =>
            totalOf([oneDevice({ reading: { kind: 'current', amperes: 0.1, powerFactor } })])
          grows(at(low), at(high))
          const of = (count: number, weeksPerYear: number) =>
            totalOf([oneDevice({}, { quantity: count })], { weeksPerYear })
          grows(of(quantity, few), of(quantity, many))
          grows(of(quantity, 50), of(quantity + 1, 50))
        },
      ),
      RUNS,
    )
  })

  test('one more device', () => {
    fc.assert(
      fc.property(households, devices, (list, more) => {
        const [less, all] = [totalOf(list), totalOf([...list, more])]
        const slack = NEAR_ZERO * (all.high - all.low)
        expect(all.expected).toBeGreaterThanOrEqual(less.expected * (1 - 2e-5))
        expect(all.high).toBeGreaterThanOrEqual(less.high - slack)
        expect(all.low).toBeGreaterThanOrEqual(less.low - slack)
      }),
      RUNS,
    )
  })
})

describe('an interval', () => {
  test('is in order, and nested in the coverage that is asked for', () => {
    fc.assert(
      fc.property(households, (list) => {
        const intervals = [0.5, 0.8, 0.9, 0.99].map((coverageProbability) =>
          totalOf(list, { coverageProbability }),
        )
        intervals.forEach(({ low, high, expected }, i) => {
          expect(low).toBeGreaterThanOrEqual(0)
          expect(high).toBeGreaterThanOrEqual(low)
          near(expected, intervals[0]!.expected)
          if (i === 0) return
          const narrower = intervals[i - 1]!
          const slack = NEAR_ZERO * (high - low) + 2e-5 * high
          expect(low).toBeLessThanOrEqual(narrower.low + slack)
          expect(high).toBeGreaterThanOrEqual(narrower.high - slack)
        })
      }),
      RUNS,
    )
  })

  test('of one assumed device is the catalogue’s low and high, with the typical draw inside', () => {
    const [{ powerW } = { powerW: { low: 0, high: 0 } }] = estimateOf([oneDevice({})]).devices
    expect([powerW.low, powerW.high]).toEqual([0.5, 3])
    const narrow = estimateOf([oneDevice({})], { coverageProbability: 0.5 }).devices[0]!.powerW
    expect(narrow.low).toBeLessThan(1)
    expect(narrow.high).toBeGreaterThan(1)
  })

  test('holds the median of the total', () => {
    fc.assert(
      fc.property(households, (list) => {
        const { low, high } = totalOf(list, { coverageProbability: 0.5 })
        const drawn = totalOf(list, { coverageProbability: 0.5, method: 'monte-carlo', draws: 4000 })
        const median = (drawn.low + drawn.high) / 2
        const slack = 0.1 * (high - low) + 2e-5 * high + 1e-9
        expect(median).toBeGreaterThanOrEqual(low - slack)
        expect(median).toBeLessThanOrEqual(high + slack)
      }),
      { numRuns: 20 },
    )
  })
})

describe('an estimate by Monte Carlo', () => {
  test('gives the same bytes for the same seed and draws, and says which in the method’s version', () => {
    fc.assert(
      fc.property(households, fc.integer({ min: 0, max: 1000 }), (list, seed) => {
        const drawn = { method: 'monte-carlo', draws: 500, seed } as const
        const answer = estimateOf(list, drawn)
        expect(estimateOf(list, drawn)).toEqual(answer)
        expect(answer.used.methodVersion).toMatch(new RegExp(`\\+monte-carlo\\.500\\.${seed}$`))
      }),
      { numRuns: 20 },
    )
  })

  test('draws a device as it draws it in the total', () => {
    const [answer] = [estimateOf([oneDevice({}, { quantity: 2 })], { method: 'monte-carlo', draws: 1000 })]
    expect(answer.devices[0]!.energyKwhPerYear).toEqual(answer.total.energyKwhPerYear)
  })

  test('agrees with the convolved one', () => {
    const list = [
      oneDevice({}),
      oneDevice({ reading: { kind: 'current', amperes: 0.05 } }),
      oneDevice({ reading: { kind: 'power', watts: 3 }, hoursPerWeek: { low: 20, typical: 60, high: 100 } }),
    ]
    const [drawn, convolved] = [totalOf(list, { method: 'monte-carlo' }), totalOf(list)]
    const width = convolved.high - convolved.low
    for (const end of ['expected', 'low', 'high'] as const)
      expect(Math.abs(drawn[end] - convolved[end])).toBeLessThan(0.02 * width)
  })
})
