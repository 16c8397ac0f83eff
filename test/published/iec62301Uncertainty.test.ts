import { describe, expect, test } from 'vitest'
import { meterIsGoodEnough } from '../../src/core/readings/meterIsGoodEnough.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * How sure IEC 62301 asks a power measurement to be, at 95 % confidence.
 *   edition 1 (2005), 4.4: V, as adopted in the EU-US office-equipment agreement, Annex C (Council document 10193/12)
 *   edition 2 (2011), 4.4.1: M; U = 2 % x [1 + 0.08 (MCR - 10)] where the maximum current ratio is above 10
 */
const limitsOf = (watts: number, maximumCurrentRatio?: number) => {
  const [first, second] = meterIsGoodEnough(watts, 0, maximumCurrentRatio)
  return { first: first!.limitW, second: second!.limitW }
}

describe('IEC 62301, uncertainty of a power measurement', () => {
  test.each([
    ['V', 0.3, '0.01'],
    ['V', 0.5, '0.010'],
    ['V', 5, '0.10'],
  ])('[%s] edition 1: %d W to %s W', (_, watts, limit) => {
    expect(unitsOff(limitsOf(watts).first, limit)).toBeLessThan(ROUNDING)
  })

  test.each([
    ['M', 0.3, '0.02'],
    ['M', 1, '0.020'],
    ['M', 5, '0.10'],
  ])('[%s] edition 2: %d W to %s W', (_, watts, limit) => {
    expect(unitsOff(limitsOf(watts).second, limit)).toBeLessThan(ROUNDING)
  })

  test.each([
    ['M, C', 10, '2.0'],
    ['M, C', 15, '2.8'],
    ['M, C', 20, '3.6'],
    ['M, C', 30, '5.2'],
  ])('[%s] edition 2: at a maximum current ratio of %d the limit is %s %%', (_, ratio, percent) => {
    expect(unitsOff((100 * limitsOf(10, ratio).second) / 10, percent)).toBeLessThan(ROUNDING)
  })

  test('control: the rule of one edition fails the check of the other between 0.5 W and 1 W', () => {
    expect(unitsOff(limitsOf(0.6).second, '0.012')).toBeGreaterThan(5)
    expect(unitsOff(limitsOf(0.6).first, '0.012')).toBeLessThan(ROUNDING)
  })
})
