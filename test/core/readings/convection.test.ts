import { describe, expect, test } from 'vitest'
import { airProperties } from '../../../src/core/readings/convection/airProperties.ts'
import {
  FACING_DOWN_LAMINAR_FROM,
  FACING_DOWN_RANGE,
  nusseltFacingDown,
} from '../../../src/core/readings/convection/nusseltFacingDown.ts'
import {
  FACING_UP_LAMINAR_FROM,
  FACING_UP_RANGE,
  FACING_UP_TURBULENT_FROM,
  nusseltFacingUp,
} from '../../../src/core/readings/convection/nusseltFacingUp.ts'
import { nusseltVertical } from '../../../src/core/readings/convection/nusseltVertical.ts'
import { radiation } from '../../../src/core/readings/convection/radiation.ts'
import { rayleigh } from '../../../src/core/readings/convection/rayleigh.ts'

const AIR = 0.71
const stepAt = (nusselt: (rayleigh: number, prandtl: number) => number, at: number) =>
  nusselt(at * (1 + 1e-9), AIR) / nusselt(at * (1 - 1e-9), AIR)

describe('air', () => {
  test('at sea level is as the U.S. Standard Atmosphere, 1976, prints it (from memory)', () => {
    const { conductivity, kinematicViscosity, prandtl, expansion } = airProperties(288.15)
    expect(conductivity).toBeCloseTo(2.5326e-2, 6)
    expect(kinematicViscosity * 1e5).toBeCloseTo(1.4607, 4)
    expect(prandtl).toBeCloseTo(0.71, 2)
    expect(expansion).toBe(1 / 288.15)
  })

  test('at 35 °C is within 3 % of the figures that a published solution uses (V, reference values section 10)', () => {
    const { conductivity, kinematicViscosity, prandtl, expansion } = airProperties(308.15)
    expect(Math.abs(conductivity / 0.02625 - 1)).toBeLessThan(0.03)
    expect(Math.abs(kinematicViscosity / 1.655e-5 - 1)).toBeLessThan(0.03)
    expect(Math.abs(prandtl / 0.7268 - 1)).toBeLessThan(0.04)
    expect(expansion).toBeCloseTo(0.003247, 5)
  })

  test('diffuses heat as conductivity over density and specific heat', () => {
    const { kinematicViscosity, thermalDiffusivity, prandtl } = airProperties(300)
    expect(thermalDiffusivity).toBeCloseTo(kinematicViscosity / prandtl, 15)
  })
})

describe('the Rayleigh number', () => {
  test('grows with the difference, and with the cube of the length', () => {
    const air = airProperties(300)
    const one = rayleigh(10, 0.1, air)
    expect(rayleigh(20, 0.1, air) / one).toBeCloseTo(2, 12)
    expect(rayleigh(10, 0.2, air) / one).toBeCloseTo(8, 12)
    expect(one).toBeCloseTo(
      (9.80665 * (1 / 300) * 10 * 0.001) / (air.kinematicViscosity * air.thermalDiffusivity),
      3,
    )
  })
})

describe('the correlations', () => {
  test('are what a public library computes from the same formulas (V, git:CalebBell/ht)', () => {
    expect(nusseltVertical(0.69 * 2.63e9, 0.69)).toBeCloseTo(147.16185223770603, 10)
    expect(nusseltFacingUp(5.54 * 3.21e8, 5.54)).toBeCloseTo(181.73121274384457, 10)
    expect(nusseltFacingDown(5.54 * 3.21e8, 5.54)).toBeCloseTo(55.44564799362829, 10)
  })

  test('grow with the Rayleigh number over all of their range', () => {
    for (const [nusselt, range] of [
      [nusseltFacingUp, FACING_UP_RANGE],
      [nusseltFacingDown, FACING_DOWN_RANGE],
      [nusseltVertical, { from: 0.1, to: 1e12 }],
    ] as const) {
      let last = 0
      for (let number = range.from; number <= range.to; number *= 1.9) {
        // The step down at 1e5 is the one exception, and a test of its own.
        if (nusselt !== nusseltFacingDown || number < 1e5 || number > 2e5)
          expect(nusselt(number, AIR)).toBeGreaterThan(last)
        last = nusselt(number, AIR)
      }
    }
  })

  test('step where their source says another formula, by less than 10 %', () => {
    expect(stepAt(nusseltFacingUp, FACING_UP_TURBULENT_FROM)).toBeCloseTo(1.064, 3)
    expect(stepAt(nusseltFacingUp, FACING_UP_LAMINAR_FROM)).toBeCloseTo(1.086, 3)
    expect(stepAt(nusseltFacingDown, FACING_DOWN_LAMINAR_FROM)).toBeCloseTo(0.931, 3)
  })

  test('keep to the printed range just above 1e7, where a textbook example does not', () => {
    expect(nusseltFacingUp(1.195e7, AIR)).toBeCloseTo(0.15 * 1.195e7 ** (1 / 3), 10)
    expect(nusseltFacingUp(1e7, AIR)).toBeCloseTo(0.54 * 1e7 ** 0.25, 10)
  })

  test('of small surfaces add what the air conducts to the laminar layer', () => {
    const thin = 0.835 * (0.671 / (1 + (0.492 / AIR) ** (9 / 16)) ** (4 / 9)) * 100 ** 0.25
    expect(nusseltFacingUp(100, AIR)).toBeGreaterThan(thin)
    expect(nusseltFacingUp(100, AIR)).toBeCloseTo(1.4 / Math.log(1 + 1.4 / thin), 3)
    expect(nusseltFacingDown(1e4, AIR)).toBeCloseTo(
      2.5 / Math.log(1 + (2.5 * (1 + (1.9 / AIR) ** 0.9) ** (2 / 9)) / (0.527 * 1e4 ** 0.2)),
      10,
    )
  })

  test('let less heat off a surface that faces down than off one that faces up', () => {
    for (const number of [1e3, 1e4, 1e6, 1e8])
      expect(nusseltFacingDown(number, AIR)).toBeLessThan(nusseltFacingUp(number, AIR))
  })
})

describe('radiation', () => {
  test('is that of a black body times the emissivity, less what comes back', () => {
    expect(radiation(300, 0, 1)).toBeCloseTo(5.670374419e-8 * 300 ** 4, 9)
    expect(radiation(310, 300, 0.5)).toBeCloseTo(0.5 * (radiation(310, 0, 1) - radiation(300, 0, 1)), 9)
    expect(radiation(300, 300, 0.9)).toBe(0)
  })
})
