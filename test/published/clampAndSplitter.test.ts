import { describe, expect, test } from 'vitest'
import type { Distribution } from '../../src/core/quantity/distribution.ts'
import { readingDistribution, termMean } from '../../src/core/quantity/term.ts'
import type { MeterAccuracy } from '../../src/core/readings/reading.ts'
import { meteredValue } from '../../src/core/readings/meteredValue.ts'
import { powerOfCurrent } from '../../src/core/readings/powerOfCurrent.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'
import { context } from './support/readingContext.ts'

/*
 * Clamp meter through a line splitter. V: aemc.com/applications/app-clamp/clamp-als, "5.4 A on the x10 loop: 5.4/10 =
 * 0.54 A = 540 mA". The rule "x1 read direct, x10 divide by 10": V, homeownershub.com 775648.
 *
 * Limits +-(1.5 % rdg + 5 dgt) at a resolution of 0.01 A: M for the specification, C for the arithmetic.
 */
const ACCURACY: MeterAccuracy = { percentOfReading: 1.5, counts: 5, resolution: 0.01 }
/** Amperes of a reading at 1 V and a power factor of 1, so that volt-amperes and watts are amperes. */
const loadOf = (amperes: number, loops: number) =>
  powerOfCurrent({ kind: 'current', amperes, loops, volts: 1, powerFactor: 1, accuracy: ACCURACY }, context)
const readingOf = (amperes: number) =>
  readingDistribution(meteredValue(amperes, { kind: 'current', accuracy: ACCURACY }, context).metered)
const halfWidthOf = ({ min, max }: Distribution) => (max - min) / 2
/** How far the load may be from what is worked out, A: both errors at their limits. */
function reachOf(amperes: number, loops: number): number {
  const { coefficient, metered } = loadOf(amperes, loops).apparentPower!
  return coefficient * halfWidthOf(readingDistribution(metered!))
}

describe('line splitter (aemc.com)', () => {
  test('[V] 5.4 A on the x10 loop are 0.54 A', () => {
    expect(unitsOff(termMean(loadOf(5.4, 10).apparentPower!), '0.54')).toBeLessThan(ROUNDING)
    expect(unitsOff(1000 * termMean(loadOf(5.4, 10).power), '540')).toBeLessThan(ROUNDING)
  })

  test('[V] the x1 loop is read direct', () => {
    expect(termMean(loadOf(0.54, 1).apparentPower!)).toBe(0.54)
  })

  test('[M, C] 5.40 A are read to +-0.131 A: 0.081 A by percent, 0.05 A by counts', () => {
    expect(unitsOff(halfWidthOf(readingOf(5.4)), '0.131')).toBeLessThan(ROUNDING)
    const { metered } = meteredValue(5.4, { kind: 'current', accuracy: ACCURACY }, context)
    expect(unitsOff(metered.value * metered.gain, '0.081')).toBeLessThan(ROUNDING)
    expect(unitsOff(metered.counts, '0.05')).toBeLessThan(ROUNDING)
  })

  test('[M, C] through the x10 loop the load is known to +-0.0131 A, +-2.4 %', () => {
    expect(unitsOff(reachOf(5.4, 10), '0.0131')).toBeLessThan(ROUNDING)
    expect(unitsOff((100 * reachOf(5.4, 10)) / 0.54, '2.4')).toBeLessThan(ROUNDING)
  })

  test('[M, C] without the loop the same load is known to +-0.058 A, +-10.8 %', () => {
    expect(unitsOff(reachOf(0.54, 1), '0.058')).toBeLessThan(ROUNDING)
    expect(unitsOff((100 * reachOf(0.54, 1)) / 0.54, '10.8')).toBeLessThan(ROUNDING)
  })

  test('control: forgetting that the conductor passes ten times fails', () => {
    expect(unitsOff(termMean(loadOf(5.4, 1).apparentPower!), '0.54')).toBeGreaterThan(100)
  })

  test('control: leaving the counts out fails', () => {
    const { metered } = meteredValue(5.4, { kind: 'current', accuracy: { ...ACCURACY, counts: 0 } }, context)
    expect(unitsOff(halfWidthOf(readingDistribution(metered)), '0.131')).toBeGreaterThan(10)
  })
})
