import { describe, expect, test } from 'vitest'
import type { Visit } from '../../../src/core/verification/verification.ts'
import { drawnSaving } from './drawnSaving.ts'
import { amperes, device, label, verify, visit, watts } from './visits.ts'

/** The invented draw of every category of the tests in standby: 0.5, 1 and 3 W. */
const DRAW = { low: 0.5, typical: 1, high: 3 }
const widthOf = ({ low, high }: { low: number; high: number }) => high - low

describe('the interval of the saving is that of draws of both visits', () => {
  const often = { low: 40, typical: 80, high: 120 }
  const less = { low: 20, typical: 30, high: 60 }
  const world = {
    draw: DRAW,
    powerFactor: { low: 0.4, typical: 0.5, high: 0.6 },
    volts: 230,
    tolerance: 0.06,
    weeksPerYear: 52,
  }
  const cases: Readonly<Record<string, readonly [Visit, Visit]>> = {
    'assumed, other uncertain hours': [visit(device('tv', often)), visit(device('tv', less))],
    'one meter and one habit': [visit(device('tv', often, watts(9))), visit(device('tv', often, watts(7)))],
    'a clamp meter, one power factor and one voltage': [
      visit(device('a', 100, amperes(0.6)), device('b', often, amperes(0.8))),
      visit(device('a', 100, amperes(0.4)), device('b', often, amperes(0.7))),
    ],
    'some assumed devices fewer, at other hours': [
      visit(device('a', 100, undefined, { quantity: 4 })),
      visit(device('a', 60, undefined, { quantity: 2 })),
    ],
    'a whole household': [
      visit(
        device('a', often),
        device('b', 100, amperes(0.6)),
        device('c', 120, watts(6)),
        device('d', often, label(8)),
        device('e', 50, watts(3)),
        device('f', 150),
      ),
      visit(
        device('a', less),
        device('b', 90, amperes(0.5)),
        device('c', 120, watts(5)),
        device('d', less, label(8)),
        device('f', 150),
        device('g', 30, watts(4)),
      ),
    ],
  }

  test.each(Object.entries(cases))('%s', (_, [before, after]) => {
    const { energyKwhPerYear } = verify(before, after).total.all
    const drawn = drawnSaving({ before, after }, world)
    const width = widthOf(drawn)
    for (const end of ['expected', 'low', 'high'] as const)
      expect(Math.abs(energyKwhPerYear[end] - drawn[end]) / width).toBeLessThan(0.012)
  })

  test.each(Object.entries(cases))('and not that of visits that share nothing: %s', (_, [before, after]) => {
    const { energyKwhPerYear } = verify(before, after).total.all
    const apart = drawnSaving({ before, after }, world, false)
    expect(energyKwhPerYear.expected).toBeCloseTo(apart.expected, 0)
    expect(widthOf(apart)).toBeGreaterThan(1.1 * widthOf(energyKwhPerYear))
  })
})
