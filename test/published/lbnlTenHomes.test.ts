import { describe, expect, test } from 'vitest'
import { drawing, estimateOf } from './support/estimateOf.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * Whole-house standby of ten California homes: 14 to 169 W, mean 67 W. V, LBNL,
 * buildings.lbl.gov/publications/whole-house-measurements-standby. 67 W over 8,760 h are 587 kWh a year (C).
 */
const YEAR = 365 / 7
const kwhOf = (watts: number, weeksPerYear?: number) =>
  estimateOf([drawing(watts)], weeksPerYear === undefined ? {} : { weeksPerYear }).total.energyKwhPerYear
    .expected

describe('ten California homes (LBNL)', () => {
  test.each([
    [14, '123'],
    [67, '587'],
    [169, '1480'],
  ])('[V, C] %d W all year are %s kWh', (watts, printed) => {
    expect(unitsOff(kwhOf(watts), printed)).toBeLessThan(ROUNDING)
    expect(unitsOff(kwhOf(watts, YEAR), printed)).toBeLessThan(ROUNDING)
  })

  test('[V, C] the year’s mean power is the power that was read, and the hours are 8,760', () => {
    const { total, devices } = estimateOf([drawing(67)])
    expect(total.powerW.expected).toBe(67)
    expect(devices[0]!.modes[0]!.hoursPerYear).toBe(8760)
  })

  test('[V, C] as many homes as devices: ten homes of 67 W are 5,869 kWh', () => {
    const { total } = estimateOf(Array.from({ length: 10 }, () => drawing(67)))
    expect(unitsOff(total.energyKwhPerYear.expected, '5869')).toBeLessThan(ROUNDING)
  })

  test('control: 52 weeks in place of 365/7 fail the check', () => {
    expect(unitsOff(kwhOf(67, 52), '587')).toBeGreaterThan(1)
  })

  test('control: a week’s hours in place of a year’s fail the check', () => {
    expect(unitsOff(kwhOf(67, 1), '587')).toBeGreaterThan(500)
  })
})
