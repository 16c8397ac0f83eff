import { describe, expect, test } from 'vitest'
import { intervalOfSum } from '../../src/core/quantity/intervalOfSum.ts'
import { monteCarloInterval } from '../../src/core/quantity/monteCarlo.ts'
import type { Term } from '../../src/core/quantity/term.ts'
import { termVariance } from '../../src/core/quantity/term.ts'
import { varianceOfSum } from '../../src/core/quantity/varianceOfSum.ts'
import { estimateOf } from './support/estimateOf.ts'
import { ROUNDING, relativeError, unitsOff } from './support/printed.ts'

/*
 * JCGM 100:2008 (GUM), 5.2.2, example, and F.1.2.3: ten resistors of 1000 ohm, each calibrated against the same standard
 * with 100 milliohm, in series are known to 1 ohm; adding the squares as if they were independent, 0.32 ohm, "is
 * incorrect". Figures M. It is the case of readings with one meter: its gain is shared, and errors add up linearly.
 */
const HALF_WIDTH = 0.1 * Math.sqrt(3)
const resistor = (meter: string | null): Term => ({
  coefficient: 1,
  factors: [],
  metered: { value: 1000, gain: HALF_WIDTH / 1000, counts: 0, meter },
})
const series = (meter: string | null) => Array.from({ length: 10 }, () => resistor(meter))
const uncertaintyOf = (terms: readonly Term[]) => Math.sqrt(varianceOfSum(terms).total)

describe('GUM 5.2.2: ten resistors against one standard (JCGM 100:2008)', () => {
  test('[M] each is known to 100 milliohm', () => {
    expect(relativeError(Math.sqrt(termVariance(resistor('standard'))), 0.1)).toBeLessThan(1e-6)
  })

  test('[M] in series they are known to 1 ohm', () => {
    expect(unitsOff(uncertaintyOf(series('standard')), '1.00')).toBeLessThan(ROUNDING)
  })

  test('[M] all of the error is the standard’s: the interval is ten times as wide as one resistor’s', () => {
    const { expected, low, high } = intervalOfSum(series('standard'), 0.9)
    expect(expected).toBe(10_000)
    expect(relativeError((high - low) / 2, 10 * 0.9 * HALF_WIDTH)).toBeLessThan(0.01)
    const drawn = monteCarloInterval(series('standard'), 0.9, 50_000, 2)
    expect(relativeError((drawn.high - drawn.low) / 2, 10 * 0.9 * HALF_WIDTH)).toBeLessThan(0.02)
  })

  test('[M] a household read with one meter: ten devices of 10 W share its 2 %, and the total keeps 2 %', () => {
    const readings = (meterId?: string) =>
      Array.from({ length: 10 }, () => ({
        kind: 'power' as const,
        watts: 10,
        ...(meterId === undefined
          ? { accuracy: { percentOfReading: 2, counts: 0, resolution: 0.1 } }
          : { meterId }),
      }))
    const meters = [{ id: 'm1', percentOfReading: 2, counts: 0, resolution: 0.1 }]
    const shared = estimateOf(readings('m1'), { meters }).total.powerW
    const apart = estimateOf(readings()).total.powerW
    expect(relativeError((shared.high - shared.low) / 2, 0.9 * 2)).toBeLessThan(0.01)
    // Ten independent rectangles are nearly normal: 1.645 x 2 x sqrt(10/3)/10 W each way.
    expect(relativeError((apart.high - apart.low) / 2, 1.645 * 2 * Math.sqrt(1 / 30))).toBeLessThan(0.02)
  })

  test('control: dropping the correlation gives the 0.32 ohm that the GUM calls incorrect', () => {
    expect(unitsOff(uncertaintyOf(series(null)), '0.32')).toBeLessThan(ROUNDING)
    expect(unitsOff(uncertaintyOf(series(null)), '1.00')).toBeGreaterThan(50)
  })
})
