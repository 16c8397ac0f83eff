import { describe, expect, test } from 'vitest'
import type { Device, DeviceMode } from '../../../src/core/inventory/household.ts'
import { estimateOf, oneDevice } from './households.ts'

const EXACT = { percentOfReading: 0, counts: 0, resolution: 0.01 }
const of = (device: Device, more = {}) => estimateOf([device], more).devices[0]!

describe('sums done by hand', () => {
  test('1 W all year is 8.76 kWh', () => {
    const device = oneDevice({ hoursPerWeek: 168, reading: { kind: 'power', watts: 1, accuracy: EXACT } })
    const { energyKwhPerYear } = of(device, { weeksPerYear: 365 / 7 })
    expect(energyKwhPerYear).toEqual({ expected: 8.76, low: 8.76, high: 8.76 })
  })

  test('0.2 A at 240 V for 100 h a week of 52 weeks at unity power factor is 249.6 kWh', () => {
    const reading = { kind: 'current', amperes: 0.2, volts: 240, powerFactor: 1, accuracy: EXACT } as const
    const device = of(oneDevice({ hoursPerWeek: 100, reading }), { weeksPerYear: 52 })
    expect(device.modes[0]!.hoursPerYear).toBe(5200)
    expect(device.energyKwhPerYear.expected).toBe(249.6)
    expect(device.costPerYear.amounts.expected).toBe('74.88')
    expect(device.emissionsKgCo2ePerYear.expected).toBe(62.4)
  })

  test('a ten-turn splitter window that reads 5.4 A is 0.54 A', () => {
    const read = { kind: 'current', volts: 230, powerFactor: 1, accuracy: EXACT } as const
    const split = of(oneDevice({ reading: { ...read, amperes: 5.4, loops: 10 } }))
    const plain = of(oneDevice({ reading: { ...read, amperes: 0.54 } }))
    expect(split.powerW).toEqual(plain.powerW)
    expect(split.powerW.expected).toBe(124.2)
  })

  test('230 V and 0.1 A without a power factor are 23 VA, and watts only as a range', () => {
    const reading = { kind: 'current', amperes: 0.1, volts: 230, accuracy: EXACT } as const
    const [mode] = of(oneDevice({ reading })).modes
    expect(mode!.apparentPowerVa!.expected).toBe(23)
    // The category's power factor is 0.4 to 0.6, typically 0.5.
    expect(mode!.powerW.expected).toBe(11.5)
    expect(mode!.powerW.low).toBeGreaterThan(9.2)
    expect(mode!.powerW.high).toBeLessThan(13.8)
    expect(mode!.confidence).toBe('partly-measured')
  })

  test('24 Wh over 12 h are 2 W', () => {
    const reading = { kind: 'energy', wattHours: 24, durationHours: 12, accuracy: EXACT } as const
    expect(of(oneDevice({ reading })).powerW.expected).toBe(2)
  })

  test('a label of 4 W is a ceiling: 3 W on average, between 2 W and 4 W', () => {
    const { powerW } = of(oneDevice({ reading: { kind: 'declared', watts: 4 } }), {
      coverageProbability: 0.99,
    })
    expect(powerW.expected).toBe(3)
    expect(powerW.low).toBeCloseTo(2.01, 6)
    expect(powerW.high).toBeCloseTo(3.99, 6)
  })

  test('a device of two modes draws their average over the hours counted', () => {
    const modes: DeviceMode[] = [
      { mode: 'standby', hoursPerWeek: 100, reading: { kind: 'power', watts: 1, accuracy: EXACT } },
      { mode: 'idle', hoursPerWeek: 50, reading: { kind: 'power', watts: 4, accuracy: EXACT } },
    ]
    const device = of({ category: 'amplifier', modes }, { weeksPerYear: 52 })
    expect(device.powerW.expected).toBe(2)
    expect(device.energyKwhPerYear.expected).toBe(15.6)
  })

  test('the total draws its energy over the whole year', () => {
    const device = oneDevice({ hoursPerWeek: 84, reading: { kind: 'power', watts: 2, accuracy: EXACT } })
    expect(estimateOf([device]).total.powerW.expected).toBe(1)
  })

  test('no hours are no energy, no power, no share', () => {
    const { total, devices } = estimateOf([oneDevice({ hoursPerWeek: 0 }), oneDevice({ hoursPerWeek: 0 })])
    const nothing = { expected: 0, low: 0, high: 0 }
    expect([total.energyKwhPerYear, total.powerW, devices[0]!.powerW]).toEqual([nothing, nothing, nothing])
    expect(devices.map(({ shareOfTotal }) => shareOfTotal)).toEqual([0, 0])
    expect(total.confidence).toBe('mixed')
  })
})
