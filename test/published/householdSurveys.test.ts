import { describe, expect, test } from 'vitest'
import { drawing, estimateOf } from './support/estimateOf.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * Surveys that print both the watts and the kilowatt-hours of a home, one row a survey. Each was converted with 8,760 h,
 * which is what the check finds out.
 */
const SURVEYS = [
  ['V', 'Australia 2000, 64 homes', 86.8, '760', 'eceee Summer Study 2001, panel 4, paper 4.18'],
  ['V2', 'Australia 2005, 120 homes', 92.2, '807', 'the report as quoted on reductionrevolution.com.au'],
] as const
const kwhOf = (watts: number, weeksPerYear?: number) =>
  estimateOf([drawing(watts)], weeksPerYear === undefined ? {} : { weeksPerYear }).total.energyKwhPerYear
    .expected

describe('surveys of whole homes', () => {
  test.each(SURVEYS)('[%s] %s: %d W are %s kWh a year', (_, __, watts, printed) => {
    // The watts are rounded to 0.1 W, which is 0.9 kWh a year, so that a printed figure may be one off.
    expect(unitsOff(kwhOf(watts), printed)).toBeLessThan(1)
  })

  // V: Halifax, 75 homes, paperexplained.cn 2031711e: 427 kWh a year "or 49 W", 177 kWh (-59 %) with all devices at 1 W.
  const halifax = (kwh: number) =>
    estimateOf([{ kind: 'energy', wattHours: 1000 * kwh, durationHours: 8760 }])
  test('[V] Halifax: 427 kWh a year are 49 W', () => {
    const { total } = halifax(427)
    expect(unitsOff(total.powerW.expected, '49')).toBeLessThan(ROUNDING)
    expect(unitsOff(total.energyKwhPerYear.expected, '427')).toBeLessThan(1e-6)
  })

  test('[V] Halifax: from 427 kWh to 177 kWh are 59 % less', () => {
    const [before, after] = [halifax(427), halifax(177)].map(({ total }) => total.energyKwhPerYear.expected)
    expect(unitsOff(100 * (1 - after! / before!), '59')).toBeLessThan(ROUNDING)
  })

  test.each(SURVEYS)('control: [%s] %s: 52 weeks fail the check', (_, __, watts, printed) => {
    expect(unitsOff(kwhOf(watts, 52), printed)).toBeGreaterThan(1)
  })

  test('control: Halifax over 52 weeks is not 427 kWh', () => {
    const reading = { kind: 'energy', wattHours: 427_000, durationHours: 8760 } as const
    const { total } = estimateOf([reading], { weeksPerYear: 52 })
    expect(unitsOff(total.energyKwhPerYear.expected, '427')).toBeGreaterThan(1)
  })
})
