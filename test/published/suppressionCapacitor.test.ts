import { describe, expect, test } from 'vitest'
import { intervalOfSum } from '../../src/core/quantity/intervalOfSum.ts'
import { type Term, termMean } from '../../src/core/quantity/term.ts'
import { powerOfCurrent } from '../../src/core/readings/powerOfCurrent.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'
import { context } from './support/readingContext.ts'

/*
 * What an X capacitor against interference draws: I = 2 pi f C V, Q = 2 pi f C V^2, purely reactive, P = 0. All C;
 * that EU law counts it as part of the off mode: (EU) 2023/826, Art. 2(8)(b), V.
 *
 * The core has no capacitor in it: it meets one as a current reading with a power factor of zero. The current is put
 * in as it would be read; apparent and non-active power are the core's.
 */
const SUPPLIES = { europe: [230, 50], america: [120, 60] } as const
const TABLE = [
  // capacitance in uF; supply; current in mA; non-active power in var
  [0.1, 'europe', '7.226', '1.662'],
  [0.22, 'europe', '15.896', '3.656'],
  [0.47, 'europe', '33.961', '7.811'],
  [1, 'europe', '72.257', '16.619'],
  [0.1, 'america', '4.524', '0.543'],
  [0.22, 'america', '9.953', '1.194'],
  [0.47, 'america', '21.262', '2.551'],
  [1, 'america', '45.239', '5.429'],
] as const

const currentOf = (microfarads: number, supply: keyof typeof SUPPLIES) => {
  const [volts, hertz] = SUPPLIES[supply]
  return { volts, amperes: 2 * Math.PI * hertz * microfarads * 1e-6 * volts }
}
const readAs = (microfarads: number, supply: keyof typeof SUPPLIES, powerFactor: number) =>
  powerOfCurrent({ kind: 'current', ...currentOf(microfarads, supply), powerFactor }, context)
/** What the core says of the reading that a meter would show, the printed milliamperes. */
const shown = (milliamperes: string, volts: number): Term =>
  powerOfCurrent({ kind: 'current', amperes: Number(milliamperes) / 1000, volts, powerFactor: 0 }, context)
    .apparentPower!

describe('X capacitors (2 pi f C V)', () => {
  test.each(TABLE)('[C] %d uF, %s: %s mA are %s VA, all of it reactive, and 0 W', (...row) => {
    const [microfarads, supply, milliamperes, voltAmperes] = row
    const { volts, amperes } = currentOf(microfarads, supply)
    expect(unitsOff(1000 * amperes, milliamperes)).toBeLessThan(ROUNDING)
    expect(unitsOff(termMean(shown(milliamperes, volts)), voltAmperes)).toBeLessThan(ROUNDING)
    const read = readAs(microfarads, supply, 0)
    expect(unitsOff(termMean(read.apparentPower!), voltAmperes)).toBeLessThan(ROUNDING)
    expect(unitsOff(termMean(read.reactivePower!()), voltAmperes)).toBeLessThan(ROUNDING)
    expect(termMean(read.power)).toBe(0)
    expect(intervalOfSum([read.power], 0.9)).toEqual({ expected: 0, low: 0, high: 0 })
  })

  test('control: taking volt-amperes for watts gives a capacitor watts that it does not draw', () => {
    const asWatts = termMean(readAs(0.22, 'europe', 1).power)
    expect(unitsOff(asWatts, '0.00')).toBeGreaterThan(100)
    expect(unitsOff(asWatts, '3.656')).toBeLessThan(ROUNDING)
  })

  test('control: the current of a 120 V, 60 Hz supply fails the check at 230 V, 50 Hz', () => {
    expect(unitsOff(1000 * currentOf(0.22, 'america').amperes, '15.896')).toBeGreaterThan(1000)
    expect(unitsOff(termMean(readAs(0.22, 'america', 0).apparentPower!), '3.656')).toBeGreaterThan(1000)
  })
})
