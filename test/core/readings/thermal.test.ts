import { describe, expect, test } from 'vitest'
import { characteristicLength, heatLoss } from '../../../src/core/readings/heatLoss.ts'
import { powerOfThermal } from '../../../src/core/readings/powerOfThermal.ts'
import type { ThermalReading } from '../../../src/core/readings/reading.ts'
import { intervalOfSum } from '../../../src/core/quantity/intervalOfSum.ts'
import { codesOf } from './contextOf.ts'

const plugPack: ThermalReading = {
  kind: 'thermal',
  surfaceTemperatureC: 38,
  ambientTemperatureC: 21,
  areaM2: 0.006,
  heightM: 0.08,
  orientation: 'vertical',
}
const loss = (changes: Partial<ThermalReading>) => heatLoss({ ...plugPack, ...changes })
const warningsOf = (changes: Partial<ThermalReading>) =>
  codesOf(powerOfThermal({ ...plugPack, ...changes }).warnings)

describe('the length that counts', () => {
  test.each([
    ['is the height of a vertical surface', 'vertical', 0.02, 0.1, 0.1],
    ['is the side of a square where no height is given', 'vertical', 0.04, undefined, 0.2],
    ['is area over perimeter of a horizontal rectangle', 'facing-up', 0.02, 0.1, 0.02 / 0.6],
    ['is a quarter of the side of a horizontal square', 'facing-down', 0.04, undefined, 0.05],
  ] as const)('%s', (_, orientation, areaM2, heightM, length) => {
    expect(characteristicLength(orientation, areaM2, heightM)).toBeCloseTo(length, 12)
  })
})

describe('heat loss', () => {
  test('is convection by h and radiation by the fourth powers, of the area given', () => {
    const heat = loss({})
    expect(heat.filmK).toBeCloseTo(302.65, 9)
    expect(heat.filmCoefficient).toBeCloseTo((heat.nusselt * heat.air.conductivity) / 0.08, 12)
    expect(heat.convectionW).toBeCloseTo(0.006 * heat.filmCoefficient * 17, 12)
    expect(heat.radiationW).toBeCloseTo(0.006 * 0.9 * 5.670374419e-8 * (311.15 ** 4 - 294.15 ** 4), 12)
  })

  test('takes the air at the mean of both temperatures, not at the room’s', () => {
    expect(loss({ surfaceTemperatureC: 60, ambientTemperatureC: 20 }).air.expansion).toBeCloseTo(
      1 / 313.15,
      12,
    )
  })

  test('of a horizontal surface is more where it faces up than down', () => {
    expect(loss({ orientation: 'facing-up' }).convectionW).toBeGreaterThan(
      1.3 * loss({ orientation: 'facing-down' }).convectionW,
    )
  })

  test('by radiation follows the emissivity; convection does not', () => {
    expect(loss({ emissivity: 0.45 }).radiationW).toBeCloseTo(loss({}).radiationW / 2, 12)
    expect(loss({ emissivity: 0.45 }).convectionW).toBe(loss({}).convectionW)
  })
})

describe('a thermal reading', () => {
  test('is an indication: rectangular, 30 % to either side, and never measured', () => {
    const { power, flag, heat, explanation } = powerOfThermal(plugPack)
    const watts = heat!.convectionW + heat!.radiationW
    const { expected, low, high } = intervalOfSum([power], 0.9)
    expect(flag).toBe('partly-measured')
    expect(expected).toBeCloseTo(watts, 12)
    expect(low).toBeCloseTo(watts * (1 - 0.9 * 0.3), 9)
    expect(high).toBeCloseTo(watts * (1 + 0.9 * 0.3), 9)
    expect(explanation).toContain('an indication to +-30 %')
  })

  test('warns of nothing where the surface is warm, matt and large enough', () => {
    expect(warningsOf({})).toEqual([])
    expect(warningsOf({ orientation: 'facing-up' })).toEqual([])
    expect(warningsOf({ orientation: 'facing-down' })).toEqual([])
  })

  test.each([
    ['too small to face down', { orientation: 'facing-down', areaM2: 0.0004, heightM: 0.02 }, /too small/],
    [
      'too large',
      { orientation: 'facing-up', areaM2: 10, surfaceTemperatureC: 250, heightM: undefined },
      null,
    ],
    [
      'a thread',
      { orientation: 'facing-up', areaM2: 0.0001, heightM: 5, surfaceTemperatureC: 60 },
      /too small/,
    ],
  ] as const)('says so where the surface is %s for the correlation', (_, changes, message) => {
    const { warnings, heat } = powerOfThermal({ ...plugPack, ...changes })
    expect(codesOf(warnings)).toEqual(message ? ['thermal-outside-range'] : [])
    expect(heat!.withinRange).toBe(message === null)
    if (message) expect(warnings[0]!.message).toMatch(message)
  })

  test('says so where the surface is so tall and hot that no correlation speaks of it', () => {
    const { warnings, heat } = powerOfThermal({
      ...plugPack,
      surfaceTemperatureC: 250,
      ambientTemperatureC: -30,
      areaM2: 10,
      heightM: 5,
    })
    expect(heat!.rayleigh).toBeGreaterThan(1e12)
    expect(codesOf(warnings)).toEqual(['thermal-outside-range'])
    expect(warnings[0]!.message).toContain('too large or too warm')
  })

  test('says so where the difference is no larger than what a camera is wrong by', () => {
    expect(warningsOf({ surfaceTemperatureC: 27 })).toEqual(['thermal-difference-small'])
    expect(warningsOf({ surfaceTemperatureC: 28 })).toEqual([])
  })

  test('says so where the surface is bare metal', () => {
    expect(warningsOf({ emissivity: 0.1 })).toEqual(['thermal-shiny-surface'])
    expect(warningsOf({ emissivity: 0.5 })).toEqual([])
  })
})
