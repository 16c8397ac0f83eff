import { describe, expect, test } from 'vitest'
import { intervalOfSum } from '../../src/core/quantity/intervalOfSum.ts'
import { termMean } from '../../src/core/quantity/term.ts'
import { powerOfApparentPower } from '../../src/core/readings/powerOfApparentPower.ts'
import { powerOfCurrent } from '../../src/core/readings/powerOfCurrent.ts'
import { relativeError } from './support/printed.ts'
import { context } from './support/readingContext.ts'

/*
 * V: LBNL, standby.lbl.gov/meters.html: standby loads of 1 to 10 W have a "very poor" power factor, sometimes below 0.25.
 * C: at 0.25, volts times amperes is four times the true watts.
 */
const WATTS = [1, 4, 10] as const

describe('power factor of standby loads (LBNL)', () => {
  test.each(WATTS)('[V, C] %d W at a power factor of 0.25 show four times as many volt-amperes', (watts) => {
    const reading = { kind: 'current', amperes: (4 * watts) / 230, volts: 230, powerFactor: 0.25 } as const
    const { power, apparentPower, reactivePower } = powerOfCurrent(reading, context)
    expect(relativeError(termMean(power), watts)).toBeLessThan(1e-12)
    expect(relativeError(termMean(apparentPower!), 4 * watts)).toBeLessThan(1e-12)
    expect(relativeError(termMean(reactivePower!()), watts * Math.sqrt(15))).toBeLessThan(1e-12)
  })

  test('[V, C] a reading in VA without a power factor never counts as that many watts', () => {
    const usual = { low: 0.05, typical: 0.25, high: 0.6 }
    const { power } = powerOfApparentPower(
      { kind: 'apparent-power', voltAmperes: 16 },
      { ...context, powerFactor: usual },
    )
    const interval = intervalOfSum([power], 0.99)
    expect(interval.high).toBeLessThan(0.6 * 16)
    expect(interval.low).toBeLessThan(4)
    expect(interval.high).toBeGreaterThan(4)
  })

  test('control: taking volt-amperes for watts is wrong by a factor of four', () => {
    const reading = { kind: 'apparent-power', voltAmperes: 16, powerFactor: 1 } as const
    expect(relativeError(termMean(powerOfApparentPower(reading, context).power), 4)).toBe(3)
  })
})
