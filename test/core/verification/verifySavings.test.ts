import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { Visit } from '../../../src/core/verification/verification.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { amperes, catalogue, device, label, verify, visit, WATTMETER, watts } from './visits.ts'

const ZERO = { expected: 0, low: 0, high: 0 }
const widthOf = ({ low, high }: { low: number; high: number }) => high - low
const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code)

describe('sums by hand, 52 weeks a year', () => {
  test('an assumed device whose hours fell saves its draw over the hours that are gone', () => {
    const { devices, total } = verify(visit(device('tv', 140)), visit(device('tv', 40)))
    const [tv] = devices
    // 100 h x 52 = 5,200 h a year: 0.5, 1 and 3 W are 2.6, 5.2 and 15.6 kWh, and the ends are those of the draw.
    expect(tv!.saving.energyKwhPerYear.low).toBeCloseTo(2.6, 5)
    expect(tv!.saving.energyKwhPerYear.high).toBeCloseTo(15.6, 4)
    expect(tv!.saving.largerThanNoise).toBe(true)
    expect(tv!.parts).toEqual({ powerEffect: ZERO, hoursEffect: tv!.saving.energyKwhPerYear })
    expect(tv!.saving.powerW).toEqual(ZERO)
    expect(total.all.energyKwhPerYear).toEqual(tv!.saving.energyKwhPerYear)
    expect(codes(tv!.changes)).toEqual(['hours-changed'])
    // Cost at 0.3 a kWh, emissions at 0.25 kg.
    expect(tv!.saving.costPerYear.low).toBeCloseTo(0.78, 5)
    expect(tv!.saving.emissionsKgCo2ePerYear.low).toBeCloseTo(0.65, 5)
  })

  test('two readings of one meter: its percent part counts for the difference, its counts for each', () => {
    const before = visit(device('tv', 100, watts(8)))
    const { devices } = verify(before, visit(device('tv', 100, watts(3))), { coverageProbability: 0.9 })
    const { energyKwhPerYear, powerW, fractionalSavingsUncertainty } = devices[0]!.saving
    expect(powerW.expected).toBeCloseTo(5, 9)
    expect(energyKwhPerYear.expected).toBeCloseTo(26, 9)
    // 5 W (1 + g), g within 2 %, and two counts parts of 0.05 W: within +-0.2 W of 5 W.
    expect(powerW.low).toBeGreaterThan(4.8)
    expect(powerW.high).toBeLessThan(5.2)
    // Two meters: 8 W and 3 W with gains of their own spread by sqrt(8^2 + 3^2) in place of 5.
    const apart = verify(before, {
      meters: [{ ...WATTMETER, id: 'other' }],
      devices: [device('tv', 100, watts(3, 'other'))],
    })
    expect(widthOf(apart.devices[0]!.saving.powerW)).toBeGreaterThan(1.3 * widthOf(powerW))
    expect(fractionalSavingsUncertainty).toBeCloseTo(widthOf(energyKwhPerYear) / 2 / 26, 5)
  })

  test('power and hours that both changed are told apart, and add up', () => {
    const before = visit(device('tv', 100, watts(8)))
    const { devices } = verify(before, visit(device('tv', 60, watts(3))))
    const [{ saving, parts, changes }] = devices as [(typeof devices)[number]]
    // (8 W - 3 W) x 100 h x 52 = 26 kWh; 3 W x 40 h x 52 = 6.24 kWh.
    expect(parts!.powerEffect.expected).toBeCloseTo(26, 9)
    expect(parts!.hoursEffect.expected).toBeCloseTo(6.24, 9)
    expect(saving.energyKwhPerYear.expected).toBeCloseTo(32.24, 9)
    expect(codes(changes)).toEqual(['hours-changed', 'reading-changed'])
  })

  test('of three assumed devices one is gone: one draw is saved, and the other two cancel', () => {
    const [before, after] = [3, 2].map((quantity) => visit(device('tv', 100, undefined, { quantity })))
    const { devices } = verify(before!, after!)
    expect(devices[0]!.saving.energyKwhPerYear.low).toBeCloseTo(2.6, 5)
    expect(devices[0]!.saving.energyKwhPerYear.high).toBeCloseTo(15.6, 4)
    expect(devices[0]!.parts!.hoursEffect).toEqual(ZERO)
  })

  test('removed and added devices are counted apart', () => {
    const { devices, total } = verify(
      visit(device('old', 100, watts(8)), device('tv', 100)),
      visit(device('tv', 100), device('new', 100, watts(2))),
    )
    expect(devices.map(({ id, status, parts }) => [id, status, parts === null])).toEqual([
      ['old', 'removed', true],
      ['tv', 'unchanged', false],
      ['new', 'added', true],
    ])
    expect(total.removed.energyKwhPerYear.expected).toBeCloseTo(41.6, 9)
    expect(total.added.energyKwhPerYear.expected).toBeCloseTo(-10.4, 9)
    expect(total.kept.energyKwhPerYear).toEqual(ZERO)
    expect(total.all.energyKwhPerYear.expected).toBeCloseTo(31.2, 9)
    expect(total.all.powerW.expected).toBeCloseTo((31.2 * 1000) / (52 * 168), 4)
  })

  test('another category under the same id is another device: nothing cancels', () => {
    const { devices } = verify(
      visit(device('box', 100)),
      visit(device('box', 100, undefined, { category: 'set-top-box' })),
    )
    const { energyKwhPerYear, largerThanNoise } = devices[0]!.saving
    expect(energyKwhPerYear.expected).toBe(0)
    expect(energyKwhPerYear.low).toBeLessThan(-8)
    expect(energyKwhPerYear.high).toBeGreaterThan(8)
    expect(largerThanNoise).toBe(false)
    expect(devices[0]!.saving.fractionalSavingsUncertainty).toBeNull()
  })

  test('a replaced device saves by its power, in modes that only one of the two has as well', () => {
    const [{ parts, saving }] = verify(
      visit(device('box', 140, watts(5))),
      visit({
        id: 'box',
        category: 'router',
        modes: [{ mode: 'networked-standby', hoursPerWeek: 40, reading: watts(8) }],
      }),
    ).devices as [ReturnType<typeof verify>['devices'][number]]
    expect(saving.energyKwhPerYear.expected).toBeCloseTo((140 * 5 - 40 * 8) * 0.052, 6)
    expect(parts!.powerEffect.expected).toBeCloseTo(saving.energyKwhPerYear.expected, 6)
    expect(parts!.hoursEffect).toEqual(ZERO)
  })

  test('another mode in place of the one before is a change of hours, at the power of each', () => {
    const before = { id: 'tv', category: 'television' }
    const { devices } = verify(
      visit({ ...before, modes: [{ mode: 'standby', hoursPerWeek: 140, reading: watts(5) }] }),
      visit({ ...before, modes: [{ mode: 'off', hoursPerWeek: 140, reading: watts(0.2) }] }),
    )
    expect(codes(devices[0]!.changes)).toEqual(['mode-removed', 'mode-added'])
    expect(devices[0]!.parts!.hoursEffect.expected).toBeCloseTo(140 * 52 * 0.0048, 4)
    expect(devices[0]!.parts!.powerEffect).toEqual(ZERO)
  })
})

describe('what is better known the second time is no saving', () => {
  test.each([
    ['read', watts(4), 'measured', 'now-measured'],
    ['declared', label(4), 'declared', 'better-known'],
  ] as const)('a device that was assumed and then %s', (_, reading, flag, code) => {
    const { devices, total, betterKnown } = verify(
      visit(device('tv', 100)),
      visit(device('tv', 100, reading)),
    )
    expect(devices[0]!.saving.energyKwhPerYear).toEqual(ZERO)
    expect(total.all.energyKwhPerYear).toEqual(ZERO)
    expect(codes(devices[0]!.changes)).toEqual([code])
    expect(codes(devices[0]!.warnings)).toContain('not-a-saving')
    expect(betterKnown.items).toMatchObject([
      { deviceId: 'tv', mode: 'standby', from: 'assumed', to: flag, rebasedVisit: 'before' },
    ])
  })

  test('saves, where its hours changed too, the hours at the power that was read', () => {
    const { devices, betterKnown } = verify(visit(device('tv', 100)), visit(device('tv', 60, watts(4))))
    expect(devices[0]!.saving.energyKwhPerYear.expected).toBeCloseTo(4 * 40 * 0.052, 9)
    expect(devices[0]!.parts!.powerEffect).toEqual(ZERO)
    expect(betterKnown.items[0]!.rebasedKwhPerYear.expected).toBeCloseTo(4 * 100 * 0.052, 9)
  })

  test('and the same the other way round, and where the year of manufacture is learned', () => {
    const back = verify(visit(device('tv', 100, watts(4))), visit(device('tv', 100)))
    expect(back.devices[0]!.saving.energyKwhPerYear).toEqual(ZERO)
    expect(back.betterKnown.items[0]).toMatchObject({ rebasedVisit: 'after', to: 'measured' })
    const year = verify(visit(device('tv', 100)), visit(device('tv', 100, undefined, { year: 2019 })))
    expect(year.total.all.energyKwhPerYear).toEqual(ZERO)
    expect(codes(year.devices[0]!.changes)).toEqual(['year-known'])
    const replaced = verify(
      visit(device('tv', 100, undefined, { year: 2009 })),
      visit(device('tv', 100, undefined, { year: 2019 })),
    )
    expect(widthOf(replaced.total.all.energyKwhPerYear)).toBeGreaterThan(5)
  })

  test('estimates of the visits differ by the saving and by what is better known', () => {
    const visits = [
      visit(device('a', 100), device('b', 90, watts(4)), device('c', 80, amperes(0.3)), device('d', 50)),
      visit(
        device('a', 60, watts(2)),
        device('b', 70),
        device('c', 90, amperes(0.2)),
        device('e', 20, label(3)),
      ),
    ] as const
    const { total, betterKnown } = verify(...visits)
    const [before, after] = visits.map(
      ({ meters, devices }) =>
        estimate(
          { meters: [...meters!], devices, emissionFactor: { kgCo2ePerKwh: 0.25 } },
          catalogue,
          testSettings,
        ).total.energyKwhPerYear,
    )
    expect(total.beforeKwhPerYear).toEqual(before)
    expect(total.afterKwhPerYear).toEqual(after)
    expect(total.all.energyKwhPerYear.expected + betterKnown.differenceKwhPerYear.expected).toBeCloseTo(
      before!.expected - after!.expected,
      3,
    )
  })
})

const hours = fc.oneof(
  fc.integer({ min: 0, max: 168 }),
  fc.constant({ low: 40, typical: 80, high: 120 }),
  fc.constant({ low: 20, typical: 30, high: 60 }),
)
const figure = fc.oneof(
  fc.constant(undefined),
  fc.integer({ min: 1, max: 20 }).map((value) => watts(value)),
  fc.integer({ min: 1, max: 5 }).map((value) => amperes(value / 10)),
  fc.integer({ min: 1, max: 9 }).map((value) => label(value)),
)
const unread = fc.oneof(
  fc.constant(undefined),
  fc.integer({ min: 1, max: 9 }).map((value) => label(value)),
)
const visitOf = (figures: typeof figure): fc.Arbitrary<Visit> =>
  fc
    .uniqueArray(
      fc.record({
        id: fc.constantFrom('a', 'b', 'c', 'd', 'e'),
        hours,
        figure: figures,
        quantity: fc.constantFrom(1, 3),
      }),
      { selector: ({ id }) => id, minLength: 1 },
    )
    .map((devices) =>
      visit(...devices.map((one) => device(one.id, one.hours, one.figure, { quantity: one.quantity }))),
    )

describe('whatever the household', () => {
  test('the same visit twice saves exactly nothing, with no width where nothing was read', () => {
    fc.assert(
      fc.property(visitOf(unread), (one) => {
        const { total, devices, betterKnown } = verify(one, structuredClone(one))
        for (const { energyKwhPerYear, powerW, emissionsKgCo2ePerYear, largerThanNoise } of [
          total.all,
          ...devices.map(({ saving }) => saving),
        ]) {
          expect([energyKwhPerYear, powerW, emissionsKgCo2ePerYear]).toEqual([ZERO, ZERO, ZERO])
          expect(largerThanNoise).toBe(false)
        }
        expect(devices.flatMap(({ changes }) => changes)).toEqual([])
        expect(betterKnown.items).toEqual([])
      }),
      { numRuns: 30 },
    )
  })

  test('read twice alike, nothing is saved on average, and it is not larger than noise', () => {
    fc.assert(
      fc.property(visitOf(figure), (one) => {
        const { energyKwhPerYear, largerThanNoise } = verify(one, one).total.all
        expect(energyKwhPerYear.expected).toBe(0)
        expect(energyKwhPerYear.low).toBeCloseTo(-energyKwhPerYear.high, 1)
        expect(largerThanNoise).toBe(false)
      }),
      { numRuns: 30 },
    )
  })

  test('before and after exchanged turn every sign', () => {
    fc.assert(
      fc.property(visitOf(figure), visitOf(figure), (one, other) => {
        const [there, back] = [verify(one, other), verify(other, one)]
        for (const field of [
          'energyKwhPerYear',
          'costPerYear',
          'emissionsKgCo2ePerYear',
          'powerW',
        ] as const) {
          const [a, b] = [there.total.all[field], back.total.all[field]]
          for (const [x, y] of [
            [a.expected, b.expected],
            [a.low, b.high],
            [a.high, b.low],
          ] as const)
            // Six digits are shown; another order of the devices may move the last.
            expect(Math.abs(x + y)).toBeLessThan(1e-4 * widthOf(a) + 2e-5 * Math.abs(x) + 1e-9)
        }
        expect(there.betterKnown.differenceKwhPerYear.expected).toBeCloseTo(
          -back.betterKnown.differenceKwhPerYear.expected,
          3,
        )
      }),
      { numRuns: 30 },
    )
  })

  test('means add up: devices to the total, power and hours to the device, kept, removed and added to all', () => {
    fc.assert(
      fc.property(visitOf(figure), visitOf(figure), (one, other) => {
        const { devices, total } = verify(one, other)
        const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0)
        for (const field of ['energyKwhPerYear', 'costPerYear', 'emissionsKgCo2ePerYear'] as const) {
          const all = total.all[field].expected
          expect(sum(devices.map(({ saving }) => saving[field].expected))).toBeCloseTo(all, 2)
          expect(
            sum([total.kept, total.removed, total.added].map((part) => part[field].expected)),
          ).toBeCloseTo(all, 2)
        }
        for (const { parts, saving } of devices)
          if (parts)
            expect(parts.powerEffect.expected + parts.hoursEffect.expected).toBeCloseTo(
              saving.energyKwhPerYear.expected,
              2,
            )
      }),
      { numRuns: 30 },
    )
  })
})
