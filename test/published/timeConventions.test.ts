import { describe, expect, test } from 'vitest'
import { estimate } from '../../src/core/estimate/estimateHousehold.ts'
import type { DeviceMode } from '../../src/core/inventory/household.ts'
import { catalogue, drawing, estimateOf, settings } from './support/estimateOf.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * How many hours a year has. 8,760 h: the convention of the surveys in householdSurveys.test.ts (C on V). 8,766 h: 365.25
 * days (M, common). 52 weeks: the common calculation by hand, 8,736 h (C).
 */
const YEARS = [
  ['C on V', '365/7', 365 / 7, 8760, '0.000'],
  ['M', '365.25/7', 365.25 / 7, 8766, '0.068'],
  ['C', '52', 52, 8736, '-0.274'],
] as const
const HOME = [{ mode: 'standby', hoursPerWeek: 168, reading: drawing(100) }] as const satisfies DeviceMode[]
const homeWith = (modes: readonly DeviceMode[], weeksPerYear?: number) =>
  estimate(
    { devices: [{ category: 'device', modes }], ...(weeksPerYear !== undefined && { weeksPerYear }) },
    catalogue,
    settings,
  )

describe('hours of a year', () => {
  test.each(YEARS)('[%s] %s weeks are the hours that the convention says', (_, __, weeks, hours) => {
    const { devices, used } = homeWith(HOME, weeks)
    expect(devices[0]!.modes[0]!.hoursPerYear).toBe(hours)
    expect(devices[0]!.energyKwhPerYear.expected).toBe(hours / 10)
    expect(used.weeksPerYear).toBe(weeks)
  })

  test.each(YEARS)('[%s] %s weeks differ from 8,760 h as printed', (_, __, weeks, ___, percent) => {
    const ratio = homeWith(HOME, weeks).total.energyKwhPerYear.expected / 876
    expect(unitsOff(100 * (ratio - 1), percent)).toBeLessThan(ROUNDING)
  })

  test('[C] unless it is told otherwise the service counts 8,760 h', () => {
    expect(homeWith(HOME).devices[0]!.modes[0]!.hoursPerYear).toBe(8760)
  })

  test('[C] 100 h a week by the calculation by hand are 5,200 h a year', () => {
    const modes = [{ mode: 'standby', hoursPerWeek: 100, reading: drawing(10) }] as const
    expect(homeWith(modes, 52).devices[0]!.modes[0]!.hoursPerYear).toBe(5200)
    expect(homeWith(modes, 52).total.energyKwhPerYear.expected).toBe(52)
  })

  // M: (EU) 617/2013, Annex II: ETEC = (8760/1000)(0.55 P_off + 0.05 P_sleep + 0.40 P_idle) of desktop computers; the watts
  // are invented, 1, 3 and 30 W: 8.76 x 12.7 = 111.252 kWh.
  test('[M] weights of a year as hours of a week give the yearly energy of a computer', () => {
    const modes = [
      { mode: 'off', hoursPerWeek: 0.55 * 168, reading: drawing(1) },
      { mode: 'standby', hoursPerWeek: 0.05 * 168, reading: drawing(3) },
      { mode: 'idle', hoursPerWeek: 0.4 * 168, reading: drawing(30) },
    ] as const
    const { devices } = homeWith(modes)
    expect(devices[0]!.energyKwhPerYear.expected).toBe(111.252)
    expect(devices[0]!.powerW.expected).toBe(12.7)
  })

  test('control: 52 weeks fail the check of 8,760 h by 0.27 %', () => {
    expect(unitsOff(homeWith(HOME, 52).total.energyKwhPerYear.expected, '876.0')).toBeGreaterThan(20)
  })

  test('control: 168 h a week for both of two modes would count a year twice', () => {
    const twice = estimateOf([drawing(100), drawing(100)]).total.energyKwhPerYear.expected
    expect(unitsOff(twice, '876.0')).toBeGreaterThan(1000)
  })
})
