import { describe, expect, test } from 'vitest'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { Device } from '../../../src/core/inventory/household.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { catalogue, emissionFactor, figuresOf, planFor, read } from './household.ts'

/** Standby of 0.5, 1, 3 W at the 5th, 50th and 95th percentile, 140 h a week: 7.28 kWh a year for each watt. */
const assumed: Device = { id: 'tv', category: 'television', outlet: 'wall' }
const KWH_PER_WATT = (140 * 52) / 1000
const EUR_PER_WATT = KWH_PER_WATT * 0.3

describe('the probability of payback', () => {
  const probabilityAt = (watts: number) => {
    const lifeYears = 4
    const measures = [{ code: 'habit', persistence: 1, price: watts * EUR_PER_WATT * lifeYears, lifeYears }]
    return figuresOf(planFor({ devices: [assumed], plan: { measures } }), 'habit.1@tv').probabilityOfPayback
  }

  test('is that of the draw’s percentiles where the draw alone is uncertain', () => {
    // Prices have whole cents, and 10,000 draws a standard error of 0.005 at most.
    expect(Math.abs(probabilityAt(0.5) - 0.95)).toBeLessThan(0.01)
    expect(Math.abs(probabilityAt(1) - 0.5)).toBeLessThan(0.02)
    expect(Math.abs(probabilityAt(3) - 0.05)).toBeLessThan(0.01)
  })

  test('is 1 or 0 where nothing is uncertain, and 1 just at the price', () => {
    const devices = [{ ...assumed, modes: [read('standby', 5, 100)] }]
    const at = (price: number) =>
      figuresOf(
        planFor({ devices, plan: { measures: [{ code: 'habit', persistence: 1, price, lifeYears: 5 }] } }),
        'habit.1@tv',
      ).probabilityOfPayback
    expect([at(39), at(39.01), at(0)]).toEqual([1, 0, 1])
  })
})

test('what switches a device off for good saves its energy, with the interval that the estimate gives it', () => {
  const { devices } = estimate({ devices: [assumed], emissionFactor }, catalogue, testSettings)
  const measures = [{ code: 'habit', persistence: 1 }]
  const { savedKwhPerYear } = figuresOf(planFor({ devices: [assumed], plan: { measures } }), 'habit.1@tv')
  const { expected, low, high } = devices[0]!.energyKwhPerYear
  expect(savedKwhPerYear.expected).toBeCloseTo(expected, 4)
  expect(Math.abs(savedKwhPerYear.low - low)).toBeLessThan((high - low) * 0.02)
  expect(Math.abs(savedKwhPerYear.high - high)).toBeLessThan((high - low) * 0.03)
})

test('a meter’s and the supply’s error cancel between a mode and the one that its hours move to', () => {
  const accuracy = { percentOfReading: 20, counts: 0, resolution: 0 }
  const modes = (['networked-standby', 'standby'] as const).map((mode) => ({
    mode,
    hoursPerWeek: 80,
    reading: { kind: 'power' as const, watts: 10, meterId: 'm' },
  }))
  const plan = planFor({
    meters: [{ id: 'm', ...accuracy }],
    devices: [
      {
        id: 'tv',
        category: 'television',
        modes: [modes[0]!, { ...modes[1]!, reading: { ...modes[1]!.reading, watts: 9 } }],
      },
    ],
    plan: { measures: [{ code: 'setting' }] },
  })
  const { expected, low, high } = figuresOf(plan, 'setting.1@tv').savedKwhPerYear
  // 1 W over 4160 h, with the gain of +-20 % on the difference alone.
  expect(expected).toBeCloseTo(4.16, 6)
  expect(low).toBeCloseTo(4.16 * 0.82, 1)
  expect(high).toBeCloseTo(4.16 * 1.18, 1)
})

/** A generator of its own: mulberry32 (public domain, from memory). */
function uniformFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

describe('beside a Monte Carlo that is written anew', () => {
  const uniform = uniformFrom(7)
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform())
  /** ln X two-piece normal: 0.5, 1, 3 W. */
  const draw = () => {
    const z = normal()
    return Math.exp((z * Math.log(z < 0 ? 2 : 3)) / 1.6448536)
  }
  /** Triangular from the sum of two rectangular ones, which is symmetric. */
  const share = (low: number, high: number) => low + ((high - low) * (uniform() + uniform())) / 2

  /** A strip for two devices, one of which has a setting before it: its share lasts as one for both. */
  const saved = Float64Array.from({ length: 200_000 }, () => {
    const [one, other, setting, strip] = [draw(), draw(), share(0.4, 0.8), share(0.5, 0.9)]
    const after = 8 * (1 - setting) + other * setting
    const left = (1 - strip) * (one * KWH_PER_WATT + after * 5.2)
    return one * KWH_PER_WATT + 8 * 5.2 - left - 0.1 * 8.736
  }).sort()
  const at = (p: number) => saved[Math.floor(p * saved.length)]!

  test('a plan has the same mean, interval and probability of payback', () => {
    const { plan } = planFor({
      devices: [
        assumed,
        { id: 'other', category: 'set-top-box', outlet: 'wall', modes: [read('networked-standby', 8, 100)] },
      ],
      plan: {
        budget: 60,
        measures: [
          { code: 'setting', persistence: { low: 0.4, typical: 0.6, high: 0.8 } },
          { code: 'strip', persistence: { low: 0.5, typical: 0.7, high: 0.9 }, price: 60, lifeYears: 5 },
        ],
      },
    })
    expect(plan!.measureIds).toEqual(['setting.1@other', 'strip.2@wall'])
    const { savedKwhPerYear, probabilityOfPayback } = plan!.figures
    const mean = saved.reduce((sum, kwh) => sum + kwh, 0) / saved.length
    const width = at(0.95) - at(0.05)
    expect(Math.abs(savedKwhPerYear.expected - mean)).toBeLessThan(width * 0.01)
    expect(Math.abs(savedKwhPerYear.low - at(0.05))).toBeLessThan(width * 0.03)
    expect(Math.abs(savedKwhPerYear.high - at(0.95))).toBeLessThan(width * 0.03)
    const paid = saved.reduce((count, kwh) => (kwh * 0.3 * 5 >= 60 ? count + 1 : count), 0) / saved.length
    expect(paid).toBeGreaterThan(0.1)
    expect(paid).toBeLessThan(0.9)
    expect(Math.abs(probabilityOfPayback - paid)).toBeLessThan(0.02)
  })
})
