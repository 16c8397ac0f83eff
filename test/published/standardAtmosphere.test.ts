import { describe, expect, test } from 'vitest'
import { airProperties } from '../../src/core/readings/convection/airProperties.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * U.S. Standard Atmosphere, 1976, table of transport properties, M: at sea level, 288.15 K and 101,325 Pa, kinematic
 * viscosity 1.4607e-5 m²/s, thermal conductivity 2.5326e-2 W/(m K), dynamic viscosity 1.7894e-5 Pa s, density 1.2250 kg/m³;
 * in the lower stratosphere, 216.65 K, conductivity 1.9505e-2 W/(m K).
 */
describe('U.S. Standard Atmosphere, 1976', () => {
  test('[M] air at sea level, 288.15 K', () => {
    const { kinematicViscosity, conductivity, expansion } = airProperties(288.15)
    expect(unitsOff(kinematicViscosity, '1.4607e-5')).toBeLessThan(ROUNDING)
    expect(unitsOff(conductivity, '2.5326e-2')).toBeLessThan(ROUNDING)
    expect(unitsOff(kinematicViscosity * 1.225, '1.7894e-5')).toBeLessThan(1)
    expect(expansion).toBe(1 / 288.15)
  })

  test('[M] conductivity does not depend on pressure: 216.65 K', () => {
    expect(unitsOff(airProperties(216.65).conductivity, '1.9505e-2')).toBeLessThan(ROUNDING)
  })

  test('[M] diffusivity is viscosity over Pr, and Pr of air is near 0.71', () => {
    const { thermalDiffusivity, kinematicViscosity, prandtl } = airProperties(288.15)
    expect(thermalDiffusivity).toBe(kinematicViscosity / prandtl)
    expect(unitsOff(prandtl, '0.71')).toBeLessThan(ROUNDING)
  })

  test('control: air at 35 °C fails the check of sea level', () => {
    expect(unitsOff(airProperties(308.15).conductivity, '2.5326e-2')).toBeGreaterThan(100)
  })
})
