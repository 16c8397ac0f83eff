import { describe, expect, test } from 'vitest'
import { drawing, estimateOf } from './support/estimateOf.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * A home office on DSL, on but unused. V, LBNL, corpora.tika.apache.org/base/docs/govdocs1/601/601634.html: modem 7.4 W,
 * router 6.5 W, inkjet printer 7.7 W, monitor asleep 2 W, computer 43 W, "total 67 W".
 */
const ON_BUT_UNUSED = [7.4, 6.5, 7.7, 2, 43] as const

describe('home office on DSL (LBNL)', () => {
  test('[V] the devices add up to the printed 67 W', () => {
    const { total } = estimateOf(ON_BUT_UNUSED.map(drawing))
    expect(unitsOff(total.powerW.expected, '67')).toBeLessThan(ROUNDING)
  })

  test('[V] each device’s share of the energy is its share of the watts', () => {
    const { devices } = estimateOf(ON_BUT_UNUSED.map(drawing))
    ON_BUT_UNUSED.forEach((watts, i) => expect(devices[i]!.shareOfTotal).toBeCloseTo(watts / 66.6, 5))
    expect(devices.reduce((sum, { shareOfTotal }) => sum + shareOfTotal, 0)).toBeCloseTo(1, 4)
  })

  test('control: without the modem’s own 7.4 W the sum is not 67 W', () => {
    const { total } = estimateOf(ON_BUT_UNUSED.slice(1).map(drawing))
    expect(unitsOff(total.powerW.expected, '67')).toBeGreaterThan(5)
  })
})
