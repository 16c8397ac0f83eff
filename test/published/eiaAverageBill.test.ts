import { describe, expect, test } from 'vitest'
import { drawing, estimateOf } from './support/estimateOf.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * US residential average of 2024: 16.48 cents/kWh, 863 kWh a month, a bill of 142.26 dollars. V2, EIA sales_revenue_price
 * and epa_02_04, public files 70991314136, 68779608903, 59221038926; 10,356 kWh a year, V2. Here as a load that runs all
 * year and uses just that.
 */
const KWH_A_MONTH = 863
const yearAt = (pricePerKwh: number) =>
  estimateOf([drawing((12 * KWH_A_MONTH * 1000) / 8760)], {
    tariff: { kind: 'flat', currency: 'USD', pricePerKwh },
    annualUseKwh: 12 * KWH_A_MONTH,
  }).total

describe('US average residential bill (EIA)', () => {
  test('[V2] twelve months of 863 kWh are 10,356 kWh a year', () => {
    expect(unitsOff(yearAt(0.1648).energyKwhPerYear.expected, '10356')).toBeLessThan(ROUNDING)
  })

  test('[V2] a month at 16.48 cents is the printed bill, within the rounding of energy and price', () => {
    // Half a kilowatt-hour is 0.08 dollars, half a hundredth of a cent 0.04.
    expect(Math.abs(yearAt(0.1648).costPerYear.expected / 12 - 142.26)).toBeLessThan(0.08 + 0.04)
  })

  test('control: the price of another year, 16.00 cents, fails the check', () => {
    expect(Math.abs(yearAt(0.16).costPerYear.expected / 12 - 142.26)).toBeGreaterThan(1)
  })
})
