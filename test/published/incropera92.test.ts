import { describe, expect, test } from 'vitest'
import type { AirProperties } from '../../src/core/readings/convection/airProperties.ts'
import { airProperties } from '../../src/core/readings/convection/airProperties.ts'
import { nusseltVertical } from '../../src/core/readings/convection/nusseltVertical.ts'
import { rayleigh } from '../../src/core/readings/convection/rayleigh.ts'
import { heatLoss } from '../../src/core/readings/heatLoss.ts'
import { ROUNDING, relativeError, unitsOff } from './support/printed.ts'

/*
 * Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 9.2: vertical glass, 0.71 m high, 1.02 m wide, at
 * 232 °C in a room at 23 °C. Ra = 1.813e9 and Nu = 147: V, public file 55842584792 and git:CalebBell/ht@f9c60c4. Inputs and
 * the printed 1060 W: M; the chain of the same inputs: C, 1.8125e9, 147.11, 7.003 W/(m² K), 1059.98 W.
 *
 * The book takes g = 9.8 m/s², the core the standard 9.80665: 0.07 % more Ra, 0.02 % more Nu.
 */
const AIR_AT_400_K: AirProperties = {
  conductivity: 33.8e-3,
  kinematicViscosity: 26.4e-6,
  thermalDiffusivity: 38.3e-6,
  prandtl: 0.69,
  expansion: 0.0025,
}
const BOOK_GRAVITY = 9.8 / 9.80665
const DIFFERENCE = 232 - 23
const number = rayleigh(DIFFERENCE, 0.71, AIR_AT_400_K)
const wattsOf = (nusselt: number) => ((nusselt * AIR_AT_400_K.conductivity) / 0.71) * 0.71 * 1.02 * DIFFERENCE

describe('Incropera, example 9.2', () => {
  test('[V] Ra is 1.813e9 with the book’s gravity', () => {
    expect(unitsOff(number * BOOK_GRAVITY, '1.813e9')).toBeLessThan(1)
    expect(relativeError(number, 1.8125e9)).toBeLessThan(1e-3)
  })

  test('[V] Nu is 147', () => {
    expect(unitsOff(nusseltVertical(number, AIR_AT_400_K.prandtl), '147')).toBeLessThan(ROUNDING)
  })

  test('[C, M] the convection coefficient is 7.0 W/(m² K) and the heat 1060 W', () => {
    const nusselt = nusseltVertical(number, AIR_AT_400_K.prandtl)
    expect(unitsOff((nusselt * AIR_AT_400_K.conductivity) / 0.71, '7.0')).toBeLessThan(ROUNDING)
    expect(unitsOff(wattsOf(nusselt), '1.06e3')).toBeLessThan(ROUNDING)
    expect(relativeError(wattsOf(nusselt), 1059.98)).toBeLessThan(5e-4)
  })

  test('[M] the core’s own air at 400 K is within 3 % of the book’s', () => {
    const own = airProperties(400)
    for (const key of [
      'conductivity',
      'kinematicViscosity',
      'thermalDiffusivity',
      'prandtl',
      'expansion',
    ] as const)
      expect(relativeError(own[key], AIR_AT_400_K[key])).toBeLessThan(0.03)
  })

  test('[M] the whole way, from the two temperatures to the heat, is within 3 % of 1060 W', () => {
    const { convectionW, rayleigh: ra } = heatLoss({
      kind: 'thermal',
      surfaceTemperatureC: 232,
      ambientTemperatureC: 23,
      areaM2: 0.71 * 1.02,
      heightM: 0.71,
      orientation: 'vertical',
    })
    expect(relativeError(convectionW, 1060)).toBeLessThan(0.03)
    expect(relativeError(ra, 1.813e9)).toBeLessThan(0.06)
  })

  test('control: the width in place of the height fails the check', () => {
    const wide = rayleigh(DIFFERENCE, 1.02, AIR_AT_400_K)
    expect(unitsOff(nusseltVertical(wide, AIR_AT_400_K.prandtl), '147')).toBeGreaterThan(10)
  })

  test('control: air at room temperature in place of the film’s fails the check', () => {
    const cold = airProperties(296)
    expect(unitsOff(nusseltVertical(rayleigh(DIFFERENCE, 0.71, cold), cold.prandtl), '147')).toBeGreaterThan(
      10,
    )
  })
})
