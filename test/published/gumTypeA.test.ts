import { describe, expect, test } from 'vitest'
import { meanOf } from '../../src/core/readings/series/blockMeans.ts'
import { uncertaintyOfMean } from '../../src/core/readings/series/uncertaintyOfMean.ts'
import { ROUNDING, relativeError, unitsOff } from './support/printed.ts'

/*
 * JCGM 100:2008 (GUM), 4.2 and 4.4.3: standard uncertainty of the mean of repeated observations, type A.
 */

/**
 * GUM, table 1: twenty temperatures in °C, M. The table is sorted and names no order; here high and low alternate, so
 * that nothing looks like drift. Printed (4.4.3): mean 100.145, s = 1.489, s/sqrt 20 = 0.333, all M.
 */
const SORTED = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
  101.11, 101.2, 101.57, 101.84, 102.36, 102.72,
] as const
const ALTERNATING = SORTED.slice(0, 10).flatMap((low, i) => [low, SORTED[19 - i]!])

/** GUM, table H.2: five observations each, V, git:cran/propagate@60718ff data/H.2.rda; s(mean) C from them. */
const VOLTS = [5.007, 4.994, 5.005, 4.99, 4.999] as const
const RADIANS = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433] as const

describe('GUM 4.2, type A (JCGM 100:2008)', () => {
  test('[M] twenty temperatures: mean 100.145 °C, u 0.333 °C, 19 degrees of freedom', () => {
    const { standard, degrees } = uncertaintyOfMean(ALTERNATING)
    expect(unitsOff(meanOf(ALTERNATING), '100.145')).toBeLessThan(ROUNDING)
    expect(unitsOff(standard, '0.333')).toBeLessThan(ROUNDING)
    expect(unitsOff(standard * Math.sqrt(20), '1.489')).toBeLessThan(ROUNDING)
    expect(degrees).toBe(19)
  })

  test.each([
    ['volts', VOLTS, 4.999, 0.0032094],
    ['phase', RADIANS, 1.04446, 0.00075206],
  ] as const)('[C on V] five observations of the %s', (_, values, mean, uncertainty) => {
    const { standard, degrees } = uncertaintyOfMean(values)
    expect(relativeError(meanOf(values), mean)).toBeLessThan(1e-6)
    expect(relativeError(standard, uncertainty)).toBeLessThan(2e-5)
    expect(degrees).toBe(4)
  })

  test('control: the scatter of one observation fails the check of the mean', () => {
    const { standard } = uncertaintyOfMean(ALTERNATING)
    expect(unitsOff(standard * Math.sqrt(20), '0.333')).toBeGreaterThan(1000)
  })

  test('control: the same temperatures as a drift, sorted, do not pass for twenty independent ones', () => {
    expect(uncertaintyOfMean(SORTED).standard).toBeGreaterThan(2 * 0.333)
  })
})
