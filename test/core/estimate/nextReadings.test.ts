import { describe, expect, test } from 'vitest'
import { modesOf, modeTerms } from '../../../src/core/estimate/estimateMode.ts'
import { nextReadings } from '../../../src/core/estimate/nextReadings.ts'
import { resolveHousehold } from '../../../src/core/estimate/resolveHousehold.ts'
import type { Device } from '../../../src/core/inventory/household.ts'
import { monteCarloDraws } from '../../../src/core/quantity/monteCarlo.ts'
import { multiplyTerm, type Term } from '../../../src/core/quantity/term.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { catalogue, estimateOf, oneDevice } from './households.ts'

const WATTMETER = testSettings.meterPresets['plug-in-wattmeter'].accuracies.W
const WEEKS = 52
const PRICED = {
  tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
  emissionFactor: { kgCo2ePerKwh: 0.25 },
} as const

function modesOfHousehold(devices: readonly Device[]) {
  const resolved = resolveHousehold({ ...PRICED, devices }, catalogue, testSettings)
  return resolved.devices.flatMap((device) =>
    modesOf(device).map((mode) => ({ deviceId: device.id, terms: modeTerms(mode, device, resolved) })),
  )
}

function varianceOf(draws: Float64Array): number {
  const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length
  return draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / draws.length
}

const DRAWS = 20_000
const VALUES = 60

/**
 * What a wattmeter reading of one mode leaves of the total's variance, by brute force: the mode's power is drawn, the
 * wattmeter shows what was drawn, and the total is drawn anew with that reading; the mean over many drawn powers.
 */
function varianceLeft(devices: readonly Device[], place: number): number {
  const modes = modesOfHousehold(devices)
  const powers = monteCarloDraws([modes[place]!.terms.power], VALUES, 99)
  return powers.reduce((sum, watts, i) => {
    const metered = {
      value: watts,
      gain: WATTMETER.percentOfReading / 100,
      counts: WATTMETER.counts * WATTMETER.resolution,
      meter: null,
    }
    const read: Term = { coefficient: WEEKS / 1000, factors: [], metered }
    const terms = modes.map(({ terms }, at) =>
      at === place ? multiplyTerm(read, terms.hoursPerWeek) : terms.energy,
    )
    return sum + varianceOf(monteCarloDraws(terms, DRAWS, i)) / VALUES
  }, 0)
}

const clamp = (amperes: number) => oneDevice({ reading: { kind: 'current', amperes } })
const HOUSEHOLDS: readonly [string, readonly Device[]][] = [
  [
    'assumed devices',
    [oneDevice({}), oneDevice({ hoursPerWeek: 50 }, { quantity: 2 }), oneDevice({ hoursPerWeek: 168 })],
  ],
  ['clamp readings that share the supply’s voltage', [clamp(0.05), clamp(0.1), oneDevice({})]],
  [
    'uncertain hours, which no reading makes surer',
    [oneDevice({ hoursPerWeek: { low: 20, typical: 60, high: 140 } }), oneDevice({})],
  ],
]

describe.each(HOUSEHOLDS)('what to read next among %s', (_, devices) => {
  const modes = modesOfHousehold(devices)
  const found = nextReadings(modes, WEEKS, WATTMETER)
  const total = varianceOf(
    monteCarloDraws(
      modes.map(({ terms }) => terms.energy),
      200_000,
      1,
    ),
  )

  test('is the share of the variance that a reading removes by brute force', () => {
    modes.forEach(({ deviceId }, place) => {
      const share = found.find((one) => one.deviceId === deviceId)?.varianceShare ?? 0
      expect(Math.abs(share - (1 - varianceLeft(devices, place) / total))).toBeLessThan(0.03)
    })
  })

  test('is ranked, largest first', () => {
    const shares = found.map(({ varianceShare }) => varianceShare)
    expect(shares).toEqual(shares.toSorted((a, b) => b - a))
    expect(shares.length).toBeGreaterThan(0)
  })
})

describe('what to read next', () => {
  test('is nothing where nothing is uncertain', () => {
    const accuracy = { percentOfReading: 0, counts: 0, resolution: 0.01 }
    expect(estimateOf([oneDevice({ reading: { kind: 'power', watts: 2, accuracy } })]).nextReadings).toEqual(
      [],
    )
  })

  test('is never what a wattmeter has read as well already', () => {
    const read = oneDevice({ reading: { kind: 'power', watts: 2, accuracy: WATTMETER } }, { id: 'read' })
    const { nextReadings: found } = estimateOf([read, oneDevice({}, { id: 'assumed' })])
    expect(found.map(({ deviceId }) => deviceId)).toEqual(['assumed'])
  })

  test('names ten at most', () => {
    const many = Array.from({ length: 30 }, (_, i) => oneDevice({}, { id: `d${i}` }))
    expect(estimateOf(many).nextReadings).toHaveLength(10)
  })
})
