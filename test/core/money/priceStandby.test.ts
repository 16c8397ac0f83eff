import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { costDifference } from '../../../src/core/money/costDifference.ts'
import { marginalCost } from '../../../src/core/money/marginalCost.ts'
import type { PricedMode } from '../../../src/core/money/pricedMode.ts'
import { priceStandby } from '../../../src/core/money/priceStandby.ts'
import { standbyEnergy } from '../../../src/core/money/standbyEnergy.ts'
import type { Tariff } from '../../../src/core/money/tariff.ts'
import { intervalOfSum } from '../../../src/core/quantity/intervalOfSum.ts'
import { monteCarloDraws } from '../../../src/core/quantity/monteCarlo.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'
import { exact } from '../../../src/core/quantity/exact.ts'
import { DAY_AND_NIGHT, FALLING, RISING, TWO_PART } from './tariffs.ts'

const COVERAGE = 0.9
const NIGHT = [{ from: '00:00', to: '06:00' }] as const
const DAY = [{ days: ['monday', 'tuesday', 'wednesday', 'friday'], from: '08:00', to: '18:00' }] as const
const drawn = (kwh: number, schedule: PricedMode['schedule'] = null): PricedMode => ({
  energy: { coefficient: kwh, factors: [twoPieceLognormal({ low: 0.4, typical: 1, high: 3 })] },
  schedule,
})
const read = (kwh: number, schedule: PricedMode['schedule'] = null): PricedMode => ({
  energy: { coefficient: kwh, factors: [exact(1)] },
  schedule,
})
const energyOf = (modes: readonly PricedMode[]) =>
  intervalOfSum(
    modes.map(({ energy }) => energy),
    COVERAGE,
  )
const priced = (tariff: Tariff, modes: readonly PricedMode[], annualUseKwh: number | null) =>
  priceStandby(
    tariff,
    { annualUseKwh, monthlyUseKwh: null },
    standbyEnergy(energyOf(modes), modes),
    modes,
    COVERAGE,
  )
const draws = (modes: readonly PricedMode[], count: number) =>
  monteCarloDraws(
    modes.map(({ energy }) => energy),
    count,
    7,
  )
const quantile = (values: Float64Array, p: number) =>
  Float64Array.from(values).sort()[Math.floor(values.length * p)]!

describe('the parts of devices', () => {
  const tariffs: fc.Arbitrary<Tariff> = fc.constantFrom<Tariff>(
    RISING,
    DAY_AND_NIGHT,
    TWO_PART,
    { ...RISING, minimumCharge: { amount: 1, per: 'day' } },
    { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3, relativeUncertainty: 0.2 },
  )
  const someModes = fc.array(
    fc
      .tuple(fc.integer({ min: 1, max: 900 }), fc.constantFrom(null, NIGHT, DAY))
      .map(([kwh, schedule]) => read(kwh, schedule)),
    { minLength: 1, maxLength: 6 },
  )

  test('add up to the total, whatever the tariff, and do not depend on the order', () => {
    fc.assert(
      fc.property(tariffs, someModes, fc.option(fc.integer({ min: 0, max: 9000 })), (tariff, modes, use) => {
        const cost = priced(tariff, modes, use)
        const turned = priced(tariff, [...modes].reverse(), use)
        const part = (one: PricedMode) => cost.ofDevice(energyOf([one]), [one]).expected
        const sum = modes.reduce((all, one) => all.plus(part(one)), cost.total.expected.times(0))
        expect(sum.minus(cost.total.expected).abs().lt(1e-9)).toBe(true)
        const first = modes[0]!
        expect(
          turned
            .ofDevice(energyOf([first]), [first])
            .expected.minus(part(first))
            .abs()
            .lt(1e-9),
        ).toBe(true)
      }),
      { numRuns: 100 },
    )
  })
})

describe('a block’s edge within the energy’s distribution', () => {
  // 60 kWh and as much again, skewed; the last block of RISING begins 60 kWh/yr below the use.
  const modes = [drawn(60), drawn(50), drawn(25)]
  const use = 12 * 500 + 60
  const cost = priced(RISING, modes, use)
  const curve = marginalCost(RISING, use, null)
  const costs = draws(modes, 20_000).map((kwh) => curve(kwh).toNumber())

  test('gives the mean within 0.2 % of the mean of draws', () => {
    const mean = costs.reduce((sum, one) => sum + one, 0) / costs.length
    const spread = Math.sqrt(costs.reduce((sum, one) => sum + (one - mean) ** 2, 0)) / costs.length
    expect(Math.abs(cost.total.expected.toNumber() - mean)).toBeLessThan(0.002 * mean + 3 * spread)
  })

  test('control: the cost of the mean energy is not the mean cost', () => {
    const { expected } = energyOf(modes)
    expect(curve(expected).toNumber() / cost.total.expected.toNumber() - 1).toBeGreaterThan(0.004)
  })

  test('gives ends that are the ends of the energy, put through the cost', () => {
    const { low, high } = energyOf(modes)
    expect(cost.total.low.toNumber()).toBeCloseTo(curve(low).toNumber(), 9)
    expect(cost.total.high.toNumber()).toBeCloseTo(curve(high).toNumber(), 9)
    expect(Math.abs(cost.total.low.toNumber() / quantile(costs, 0.05) - 1)).toBeLessThan(0.02)
    expect(Math.abs(cost.total.high.toNumber() / quantile(costs, 0.95) - 1)).toBeLessThan(0.02)
  })
})

describe('without the household’s annual use', () => {
  test('any price between the cheapest and the dearest block is as likely as another', () => {
    const { price, total } = priced(RISING, [read(100)], null)
    expect(price.basis).toBe('use-unknown')
    expect(price.perKwh.toNumber()).toBe(0.175)
    // Rectangular from 0.1 to 0.25: its 5th and 95th percentile.
    expect(total.low.toNumber()).toBeCloseTo(100 * 0.1075, 6)
    expect(total.high.toNumber()).toBeCloseTo(100 * 0.2425, 6)
  })

  test('energy that is free in every block costs nothing, and surely so', () => {
    const free = { ...RISING, blocks: [{ upToKwh: 200, pricePerKwh: 0 }, { pricePerKwh: 0 }] }
    const { price, total } = priced(free, [drawn(100)], null)
    expect([price.perKwh.toNumber(), price.relativeUncertainty]).toEqual([0, 0])
    expect([total.expected, total.low, total.high].map(Number)).toEqual([0, 0, 0])
  })

  test('a single price needs none', () => {
    expect(priced(DAY_AND_NIGHT, [read(100)], null).price).toMatchObject({
      basis: 'one-price',
      relativeUncertainty: 0,
    })
  })
})

describe('stated hours', () => {
  test('price a mode by those hours alone', () => {
    const { pricesPerKwh, total } = priced(DAY_AND_NIGHT, [read(100, NIGHT), read(50, DAY)], null)
    expect(pricesPerKwh.map((price) => Number(price.toFixed(12)))).toEqual([0.2, 0.4])
    expect(total.expected.toNumber()).toBeCloseTo(40, 9)
  })

  test('count for nothing on a tariff without prices by time', () => {
    expect(priced(RISING, [read(100, NIGHT)], 6000).total).toEqual(priced(RISING, [read(100)], 6000).total)
  })
})

describe('a household without devices', () => {
  test('pays nothing for standby', () => {
    const { total, pricesPerKwh } = priced(RISING, [], 6000)
    expect([total.expected, total.low, total.high].map(Number)).toEqual([0, 0, 0])
    expect(pricesPerKwh).toEqual([])
  })

  test('differs by nothing from one tariff to another', () => {
    const energy = standbyEnergy(energyOf([]), [])
    const { expected, low, high } = costDifference(
      priced(RISING, [], 6000),
      priced(FALLING, [], 6000),
      energy,
      COVERAGE,
    )
    expect([expected, low, high].map((money) => Math.abs(money.toNumber()))).toEqual([0, 0, 0])
  })
})

test('energy that stays within one block costs its price, however uncertain it is', () => {
  const modes = [drawn(60), drawn(50)]
  // 4 800 kWh/yr are 400 a month, 200 above the edge below them.
  const { total } = priced(RISING, modes, 12 * 400)
  expect(total.expected.toNumber()).toBeCloseTo(0.15 * energyOf(modes).expected, 9)
  expect(total.high.toNumber()).toBeCloseTo(0.15 * energyOf(modes).high, 6)
})

describe('no energy', () => {
  test.each<[string, Tariff]>([
    ['blocks', RISING],
    ['time of use', DAY_AND_NIGHT],
    ['two parts', TWO_PART],
  ])('costs nothing on %s, and still has a price', (_, tariff) => {
    const { total, price } = priced(tariff, [read(0)], 6000)
    expect([total.expected, total.low, total.high].map(Number)).toEqual([0, 0, 0])
    expect(price.perKwh.toNumber()).toBeGreaterThan(0.05)
  })
})

test('a relative uncertainty of the price widens the interval and keeps the mean', () => {
  const sure = priced(RISING, [read(100)], 12 * 400).total
  const unsure = priced({ ...RISING, relativeUncertainty: 0.2 }, [read(100)], 12 * 400).total
  expect(unsure.expected.toNumber()).toBeCloseTo(sure.expected.toNumber(), 9)
  // 90 % of a rectangle of half-width 0.2.
  expect(unsure.low.toNumber()).toBeCloseTo(0.82 * sure.expected.toNumber(), 6)
  expect(unsure.high.toNumber()).toBeCloseTo(1.18 * sure.expected.toNumber(), 6)
})

describe('the difference of two tariffs', () => {
  const modes = [drawn(60), drawn(50)]
  const energy = standbyEnergy(energyOf(modes), modes)
  const flat = (pricePerKwh: number, relativeUncertainty = 0): Tariff => ({
    kind: 'flat',
    currency: 'USD',
    pricePerKwh,
    relativeUncertainty,
  })
  const difference = (one: Tariff, other: Tariff, use: number | null = null) =>
    costDifference(priced(one, modes, use), priced(other, modes, use), energy, COVERAGE)

  test('is the difference of the prices times the same energy', () => {
    const { expected, low, high } = difference(flat(0.3), flat(0.2))
    expect(expected.toNumber()).toBeCloseTo(0.1 * energy.expected, 9)
    expect(low.toNumber()).toBeCloseTo(0.1 * energy.low, 6)
    expect(high.toNumber()).toBeCloseTo(0.1 * energy.high, 6)
  })

  test('is below zero for a cheaper tariff, with the ends in order', () => {
    const [dearer, cheaper] = [difference(flat(0.3), flat(0.2)), difference(flat(0.2), flat(0.3))]
    expect(cheaper.low.plus(dearer.high).abs().toNumber()).toBeLessThan(1e-9)
    expect(cheaper.high.plus(dearer.low).abs().toNumber()).toBeLessThan(1e-9)
    expect(cheaper.low.lt(cheaper.expected) && cheaper.expected.lt(cheaper.high)).toBe(true)
  })

  test('the other way round is the same with its sign turned', () => {
    const [there, back] = [difference(flat(0.3), RISING, 7000), difference(RISING, flat(0.3), 7000)]
    expect(there.expected.plus(back.expected).abs().lt(1e-9)).toBe(true)
    expect(there.low.plus(back.high).abs().toNumber()).toBeLessThan(1e-6)
    expect(there.high.plus(back.low).abs().toNumber()).toBeLessThan(1e-6)
  })

  test('of a tariff from itself is nothing, however uncertain the energy', () => {
    const { expected, low, high } = difference(RISING, RISING, 7000)
    expect([expected, low, high].map((one) => Math.abs(one.toNumber()))).toEqual([0, 0, 0])
  })

  test('of two uncertain prices is wider than what the energy makes it', () => {
    const [sure, unsure] = [difference(flat(0.3), flat(0.2)), difference(flat(0.3, 0.1), flat(0.2, 0.1))]
    expect(unsure.low.lt(sure.low) && unsure.high.gt(sure.high)).toBe(true)
  })

  test('of prices of which some are dearer and some cheaper has the variance of the sum', () => {
    const mixed = [drawn(60, NIGHT), drawn(50, DAY)]
    const both = standbyEnergy(energyOf(mixed), mixed)
    const { expected, low, high } = costDifference(
      priced({ ...DAY_AND_NIGHT, currency: 'USD' }, mixed, null),
      priced(flat(0.3), mixed, null),
      both,
      COVERAGE,
    )
    const [night, day] = mixed.map((mode) => draws([mode], 20_000))
    const totals = night!.map((kwh, i) => -0.1 * kwh + 0.1 * day![(i * 7919 + 13) % 20_000]!)
    const mean = totals.reduce((sum, one) => sum + one, 0) / totals.length
    const spread = quantile(totals, 0.95) - quantile(totals, 0.05)
    expect(Math.abs(expected.toNumber() - mean)).toBeLessThan(0.1)
    expect(high.minus(low).toNumber() / spread).toBeGreaterThan(0.9)
    expect(high.minus(low).toNumber() / spread).toBeLessThan(1.2)
  })
})
