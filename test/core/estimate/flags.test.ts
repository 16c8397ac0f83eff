import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { confidenceShares, deviceFlag, totalConfidence } from '../../../src/core/estimate/confidence.ts'
import { DEVICE_FLAGS, type Flag } from '../../../src/core/estimate/estimate.ts'
import type { Reading } from '../../../src/core/readings/reading.ts'
import { estimateOf, oneDevice } from './households.ts'

const flagOf = (reading?: Reading) =>
  estimateOf([oneDevice(reading ? { reading } : {})]).devices[0]!.confidence
const WARM = {
  surfaceTemperatureC: 35,
  ambientTemperatureC: 21,
  areaM2: 0.03,
  heightM: 0.1,
  orientation: 'vertical',
  emissivity: 0.9,
} as const

describe('the flag of a figure (DESIGN section 4)', () => {
  test.each<[Flag, string, Reading | undefined]>([
    ['measured', 'real power', { kind: 'power', watts: 2 }],
    ['measured', 'energy', { kind: 'energy', wattHours: 20, durationHours: 10 }],
    [
      'measured',
      'a current with a power factor that was read',
      { kind: 'current', amperes: 0.02, powerFactor: 0.5 },
    ],
    [
      'measured',
      'volt-amperes with a power factor that was read',
      { kind: 'apparent-power', voltAmperes: 5, powerFactor: 0.5 },
    ],
    ['partly-measured', 'a current without a power factor', { kind: 'current', amperes: 0.02 }],
    ['partly-measured', 'volt-amperes without a power factor', { kind: 'apparent-power', voltAmperes: 5 }],
    [
      'partly-measured',
      'an unstable series',
      {
        kind: 'samples',
        intervalSeconds: 10,
        watts: Array.from({ length: 120 }, (_, i) => 1 + i / 20),
      },
    ],
    [
      'measured',
      'a stable series',
      { kind: 'samples', intervalSeconds: 10, watts: Array.from({ length: 120 }, () => 2) },
    ],
    ['partly-measured', 'a warm surface', { kind: 'thermal', ...WARM }],
    ['declared', 'a label', { kind: 'declared', watts: 2 }],
    ['assumed', 'a typical draw', undefined],
  ])('is %s for %s', (flag, _, reading) => {
    expect(flagOf(reading)).toBe(flag)
  })
})

const flags = fc.constantFrom(...DEVICE_FLAGS)
const parts = fc.array(
  fc.record({
    confidence: flags,
    expectedKwh: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 100, noNaN: true })),
  }),
  { minLength: 1, maxLength: 6 },
)
const strength = (flag: Flag) => DEVICE_FLAGS.length - DEVICE_FLAGS.indexOf(flag)

describe('the flag of a device', () => {
  test('is the weakest of the modes that make up its energy, of all where there is none', () => {
    fc.assert(
      fc.property(parts, (modes) => {
        const counted = modes.filter(({ expectedKwh }) => expectedKwh > 0)
        const weakest = Math.min(
          ...(counted.length > 0 ? counted : modes).map(({ confidence }) => strength(confidence)),
        )
        expect(strength(deviceFlag(modes))).toBe(weakest)
      }),
    )
  })

  test('is not weakened by an assumed mode that no hours are counted for', () => {
    const device = oneDevice({ reading: { kind: 'power', watts: 2 } })
    const { confidence } = estimateOf([
      {
        ...device,
        category: 'amplifier',
        modes: [...device.modes!, { mode: 'idle', hoursPerWeek: 0, reading: { kind: 'declared', watts: 5 } }],
      },
    ]).devices[0]!
    expect(confidence).toBe('measured')
  })
})

describe('the confidence of a total', () => {
  test('is measured or assumed from nine tenths of the energy on, mixed below', () => {
    fc.assert(
      fc.property(parts, (modes) => {
        const shares = confidenceShares(modes)
        const confidence = totalConfidence(shares)
        if (shares.measured > 0.9001) expect(confidence).toBe('measured')
        else if (shares.assumed > 0.9001) expect(confidence).toBe('assumed')
        else if (shares.measured < 0.8999 && shares.assumed < 0.8999) expect(confidence).toBe('mixed')
      }),
    )
  })

  test.each([
    [0.9, 0.1, 'measured'],
    [0.1, 0.9, 'assumed'],
    [0.8999, 0.1001, 'mixed'],
    [0.1001, 0.8999, 'mixed'],
    [0.3 + 0.3 + 0.3, 0.1, 'measured'],
  ] as const)('with %d measured and %d assumed is %s %s', (measured, assumed, confidence) => {
    expect(totalConfidence({ measured, assumed, 'partly-measured': 0, declared: 0 })).toBe(confidence)
  })

  test('shares are those of the energy', () => {
    expect(
      confidenceShares([
        { confidence: 'measured', expectedKwh: 3 },
        { confidence: 'declared', expectedKwh: 1 },
        { confidence: 'measured', expectedKwh: 4 },
      ]),
    ).toEqual({ measured: 7 / 8, 'partly-measured': 0, declared: 1 / 8, assumed: 0 })
    expect(confidenceShares([{ confidence: 'measured', expectedKwh: 0 }]).measured).toBe(0)
  })
})
