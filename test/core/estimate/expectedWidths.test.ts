import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { modesOf, modeTerms } from '../../../src/core/estimate/estimateMode.ts'
import { resolveHousehold } from '../../../src/core/estimate/resolveHousehold.ts'
import type { Device } from '../../../src/core/inventory/household.ts'
import { drawingOf } from '../../../src/core/quantity/drawing.ts'
import { monteCarloDraws, monteCarloInterval } from '../../../src/core/quantity/monteCarlo.ts'
import type { Term } from '../../../src/core/quantity/term.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { catalogue, estimateOf, households, oneDevice } from './households.ts'

const WATTMETER = testSettings.meterPresets['plug-in-wattmeter'].accuracies.W
const GAIN = WATTMETER.percentOfReading / 100
const COUNTS = WATTMETER.counts * WATTMETER.resolution
const WEEKS = 52
const COVERAGE = 0.9
/** What the readings may show is drawn so often, and the total with them so often each time. */
const [SHOWN, DRAWS] = [40, 10_000]
/** Of the present width: what the docstring of expectedWidths claims. */
const TOLERANCE = 0.02

function modesOfHousehold(devices: readonly Device[]) {
  const resolved = resolveHousehold({ devices }, catalogue, testSettings)
  return resolved.devices.flatMap((device) =>
    modesOf(device).map((mode) => modeTerms(mode, device, resolved)),
  )
}

/**
 * Mean width of the total's interval after readings at these places, by brute force: what each power is, is drawn (those
 * that share the supply's voltage together), the wattmeter shows that with an error of its own, and the total is drawn
 * anew with what it shows.
 */
function widthAfter(devices: readonly Device[], places: readonly number[]): number {
  const modes = modesOfHousehold(devices)
  const drawing = drawingOf(SHOWN, 5)
  const powers = places.map((place) =>
    monteCarloDraws([{ ...modes[place]!.power, drawn: { drawing, stream: place } }], SHOWN, 5),
  )
  const [gains, errors] = [uniforms(SHOWN, 'gain'), places.map((place) => uniforms(SHOWN, `counts ${place}`))]
  let sum = 0
  for (let i = 0; i < SHOWN; i++) {
    const terms = modes.map(({ energy, hoursPerWeek }, at): Term => {
      const turn = places.indexOf(at)
      if (turn < 0) return energy
      const shown = powers[turn]![i]! * (1 + GAIN * gains[i]!) + COUNTS * errors[turn]![i]!
      const metered = { value: Math.max(shown, 0), gain: GAIN, counts: COUNTS, meter: 'one for all' }
      return { coefficient: WEEKS / 1000, factors: [hoursPerWeek], metered }
    })
    const { low, high } = monteCarloInterval(terms, COVERAGE, DRAWS, i)
    sum += (high - low) / SHOWN
  }
  return sum
}

/** From -1 to 1. */
function uniforms(count: number, key: string): Float64Array {
  const rectangular = { value: 1, gain: 1, counts: 0, meter: key }
  return monteCarloDraws([{ coefficient: 1, factors: [], metered: rectangular }], count, 11).map((x) => x - 1)
}

const clamp = (amperes: number) => oneDevice({ reading: { kind: 'current', amperes } })
const RANGE = { low: 20, typical: 60, high: 140 }
const HOUSEHOLDS: readonly [string, readonly Device[]][] = [
  [
    'assumed devices',
    [168, 140, 120, 100, 60, 40].map((hoursPerWeek, i) =>
      oneDevice({ hoursPerWeek }, { quantity: 1 + (i % 2) }),
    ),
  ],
  ['clamp readings that share the supply’s voltage', [clamp(0.05), clamp(0.1), clamp(0.2), oneDevice({})]],
  [
    'uncertain hours, which no reading makes surer',
    [oneDevice({ hoursPerWeek: RANGE }), oneDevice({}), oneDevice({ hoursPerWeek: RANGE }, { quantity: 3 })],
  ],
]

const widthsOf = (devices: readonly Device[]) => {
  const named = devices.map((device, i) => ({ ...device, id: `${i}` }))
  const { expectedWidths, total } = estimateOf(named, {
    weeksPerYear: WEEKS,
    coverageProbability: COVERAGE,
    expectedWidths: true,
  })
  const present = total.energyKwhPerYear.high - total.energyKwhPerYear.low
  return { widths: expectedWidths!, present }
}

describe.each(HOUSEHOLDS)('the expected width among %s', (_, devices) => {
  const { widths, present } = widthsOf(devices)

  test('is the mean width over what the readings may show, within 2 % of the present width', () => {
    for (const { at, widthKwhPerYear } of widths) {
      const byForce = widthAfter(
        devices,
        at.map(({ deviceId }) => Number(deviceId)),
      )
      expect(Math.abs(widthKwhPerYear - byForce) / present).toBeLessThan(TOLERANCE)
    }
  })

  test('is not what reading the worst devices in place of the best would leave', () => {
    const best = Number(widths[0]!.at[0]!.deviceId)
    const others = devices.map((__, place) => widthAfter(devices, place === best ? [] : [place]))
    expect(widths[0]!.widthKwhPerYear).toBeLessThan(Math.max(...others) - TOLERANCE * present)
    for (const other of others) expect(widths[0]!.widthKwhPerYear).toBeLessThan(other + TOLERANCE * present)
  })

  test('is told after one and two readings and five, or as many as are worth taking', () => {
    const most = Math.min(devices.length, 5)
    expect(widths.map(({ readings }) => readings)).toEqual([1, 2, most])
    for (const { readings, at, widthKwhPerYear, widthShare } of widths) {
      expect(at).toHaveLength(readings)
      expect(widthShare).toBeCloseTo(widthKwhPerYear / present, 4)
    }
  })

  test('keeps the places of fewer readings, in their order', () => {
    const [one, two, most] = widths.map(({ at }) => at)
    expect(two!.slice(0, 1)).toEqual(one)
    expect(most!.slice(0, 2)).toEqual(two)
  })
})

describe('expected widths', () => {
  test('are left out unless they are asked for', () => {
    expect(estimateOf([oneDevice({})])).not.toHaveProperty('expectedWidths')
    expect(estimateOf([oneDevice({})], { expectedWidths: false })).not.toHaveProperty('expectedWidths')
  })

  test('change nothing else of the estimate', () => {
    fc.assert(
      fc.property(households, (list) => {
        const { expectedWidths, ...asked } = estimateOf(list, { expectedWidths: true })
        expect(asked).toEqual(estimateOf(list))
        expect(expectedWidths!.length).toBeLessThanOrEqual(3)
      }),
      { numRuns: 50 },
    )
  })

  test('begin where the next readings begin', () => {
    fc.assert(
      fc.property(households, (list) => {
        const { expectedWidths, nextReadings } = estimateOf(list, { expectedWidths: true })
        expect(expectedWidths!.length > 0).toBe(nextReadings.length > 0)
        const [first] = expectedWidths!
        if (!first) return
        const share = ({ deviceId, mode }: { deviceId: string; mode: string }) =>
          nextReadings.find((one) => one.deviceId === deviceId && one.mode === mode)!.varianceShare
        expect(share(first.at[0]!)).toBe(nextReadings[0]!.varianceShare)
      }),
      { numRuns: 50 },
    )
  })

  test('are none where nothing is uncertain, and none for what a wattmeter has read as well already', () => {
    const accuracy = { percentOfReading: 0, counts: 0, resolution: 0.01 }
    const exact = oneDevice({ reading: { kind: 'power', watts: 2, accuracy } })
    const read = oneDevice({ reading: { kind: 'power', watts: 2, accuracy: WATTMETER } })
    expect(widthsOf([exact]).widths).toEqual([])
    expect(widthsOf([read, read]).widths).toEqual([])
    expect(widthsOf([read, oneDevice({})]).widths.map(({ at }) => at)).toEqual([
      [{ deviceId: '1', mode: 'standby' }],
    ])
  })

  test('count the wattmeter’s gain as one error of all its readings', () => {
    const many = Array.from({ length: 5 }, () => oneDevice({ hoursPerWeek: 168 }, { quantity: 50 }))
    const { widths } = widthsOf(many)
    const read = many.map((device) => ({
      ...device,
      quantity: 1,
      modes: [
        {
          mode: 'standby' as const,
          hoursPerWeek: 168,
          reading: { kind: 'power' as const, watts: meanWatts(many), meterId: 'w' },
        },
      ],
    }))
    const { total } = estimateOf(read, { weeksPerYear: WEEKS, meters: [{ id: 'w', ...WATTMETER }] })
    const { low, high } = total.energyKwhPerYear
    expect(widths.at(-1)!.widthKwhPerYear / (high - low)).toBeCloseTo(1, 2)
  })

  test('are the same by Monte Carlo, since they are convolved', () => {
    const devices = [oneDevice({}), clamp(0.1)]
    const asked = { expectedWidths: true }
    expect(estimateOf(devices, { ...asked, method: 'monte-carlo', draws: 1_000 }).expectedWidths).toEqual(
      estimateOf(devices, asked).expectedWidths,
    )
  })
})

const meanWatts = (devices: readonly Device[]) => estimateOf(devices).devices[0]!.powerW.expected
