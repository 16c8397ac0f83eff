import { describe, expect, test } from 'vitest'
import type { AirProperties } from '../../src/core/readings/convection/airProperties.ts'
import { nusseltFacingDown } from '../../src/core/readings/convection/nusseltFacingDown.ts'
import { nusseltFacingUp } from '../../src/core/readings/convection/nusseltFacingUp.ts'
import { nusseltVertical } from '../../src/core/readings/convection/nusseltVertical.ts'
import { rayleigh } from '../../src/core/readings/convection/rayleigh.ts'
import { characteristicLength } from '../../src/core/readings/heatLoss.ts'
import { ROUNDING, relativeError, unitsOff } from './support/printed.ts'

/*
 * Cengel, Heat Transfer, problems 9-41 and 9-19E, published solutions read in scribd.com/document/659281663 and
 * coursehero.com/file/6728826 (both V). The book takes g = 9.81 m/s² (32.2 ft/s²), the core the standard 9.80665.
 */
const BOOK_GRAVITY = 9.81 / 9.80665
const AIR_AT_35_C: AirProperties = {
  conductivity: 0.02625,
  kinematicViscosity: 1.655e-5,
  thermalDiffusivity: 1.655e-5 / 0.7268,
  prandtl: 0.7268,
  expansion: 0.003247,
}
/** A plate of 24 cm x 20 cm at 50 °C in air at 20 °C, both sides free. */
const lengthM = characteristicLength('facing-up', 0.24 * 0.2, 0.24)
const number = rayleigh(30, lengthM, AIR_AT_35_C) * BOOK_GRAVITY

describe('Cengel, problem 9-41: plate of 24 cm x 20 cm', () => {
  test('[V] Lc is 0.05455 m and Ra 411,500', () => {
    expect(unitsOff(lengthM, '0.05455')).toBeLessThan(ROUNDING)
    // Four digits are printed; the length was rounded before it was raised to the third power.
    expect(unitsOff(number, '4.115e5')).toBeLessThan(2)
  })

  test('[V] facing up Nu is 13.68 and h 6.581 W/(m² K)', () => {
    const nusselt = nusseltFacingUp(411_500, 0.7268)
    expect(unitsOff(nusselt, '13.68')).toBeLessThan(ROUNDING)
    // The book divides its rounded Nu, 13.68.
    expect(unitsOff((nusselt * 0.02625) / lengthM, '6.581')).toBeLessThan(2)
  })

  test('[V] facing down Nu is 6.838 and h 3.291 W/(m² K)', () => {
    const nusselt = nusseltFacingDown(411_500, 0.7268)
    expect(unitsOff(nusselt, '6.838')).toBeLessThan(1)
    expect(unitsOff((nusselt * 0.02625) / lengthM, '3.291')).toBeLessThan(1)
  })

  test('control: exchanging up and down fails the check', () => {
    expect(unitsOff(nusseltFacingDown(411_500, 0.7268), '13.68')).toBeGreaterThan(100)
  })
})

describe('Cengel, problem 9-19E: vertical plate 2 ft high, 130 °F in 75 °F', () => {
  // The printed units are feet, seconds and °R; the core's are metres and kelvins, 1 ft = 0.3048 m, 1 K = 1.8 °R.
  const air: AirProperties = {
    conductivity: 0.01535 * 1.730735,
    kinematicViscosity: 0.1823e-3 * 0.3048 ** 2,
    thermalDiffusivity: (0.1823e-3 * 0.3048 ** 2) / 0.7256,
    prandtl: 0.7256,
    expansion: 0.001778 * 1.8,
  }
  const inFeet = rayleigh((130 - 75) / 1.8, 2 * 0.3048, air)

  test('[V] Ra is 5.503e8 and Nu 102.6', () => {
    // The viscosity is printed to 0.03 %, and counts squared; the expansion to 0.03 %.
    expect(relativeError(inFeet * (32.2 / (9.80665 / 0.3048)), 5.503e8)).toBeLessThan(1e-3)
    expect(unitsOff(nusseltVertical(5.503e8, 0.7256), '102.6')).toBeLessThan(1)
  })

  test('control: Fahrenheit degrees taken for kelvins fail the check', () => {
    expect(relativeError(rayleigh(55, 2 * 0.3048, air), 5.503e8)).toBeGreaterThan(0.5)
  })
})
