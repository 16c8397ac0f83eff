import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { Device } from '../../../src/core/inventory/household.ts'
import type { Tariff } from '../../../src/core/money/tariff.ts'
import { planSavings } from '../../../src/core/savings/planSavings.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { catalogue, emissionFactor, planFor, read, television } from './household.ts'

const exactly = (expected: number) => ({
  expected: expect.closeTo(expected, 6),
  low: expect.closeTo(expected, 6),
  high: expect.closeTo(expected, 6),
})
const only = (...codes: string[]) => ({ measures: codes.map((code) => ({ code })) })

describe('an offer at a device', () => {
  test('settings work in the order in which they are given: the second finds the hours that the first moved', () => {
    const modes = [read('networked-standby', 8, 100), read('standby', 2, 20), read('off', 0.5, 10)]
    const toStandby = { code: 'setting', fromMode: 'networked-standby', toMode: 'standby' } as const
    const toOff = { code: 'setting', fromMode: 'standby', toMode: 'off' } as const
    const saved = (...measures: (typeof toStandby | typeof toOff)[]) =>
      planFor({ devices: [{ ...television, modes }], plan: { measures } }).plan!.figures.savedKwhPerYear
    // 8 W in 100 h and 2 W in 20 h all become 0.5 W; or else the 100 h stay at 2 W.
    expect(saved(toStandby, toOff)).toEqual(exactly((7.5 * 100 + 1.5 * 20) * 0.052))
    expect(saved(toOff, toStandby)).toEqual(exactly((6 * 100 + 1.5 * 20) * 0.052))
  })

  test('a setting to a mode that nobody knows the draw of is refused, and says what to do', () => {
    const measures = [{ code: 'setting', fromMode: 'standby', toMode: 'off' }] as const
    const { notOffered } = planFor({ devices: [television], plan: { measures } })
    expect(notOffered).toMatchObject([{ code: 'mode-unknown', deviceIds: ['tv'] }])
    expect(notOffered[0]!.message).toContain('Television draws in off is not known; give a reading')
  })

  test('a timer at a device that is never in a low-power mode saves nothing', () => {
    const devices = [{ ...television, modes: [read('standby', 5, 0)] }]
    expect(planFor({ devices, plan: only('timer') }).notOffered).toMatchObject([{ code: 'saves-nothing' }])
  })

  test('a measure is offered at devices of its categories, unless the household names others', () => {
    const habit = { ...testSettings.measures.get('habit')!, categories: ['television'] }
    const settings = { ...testSettings, measures: new Map([['habit', habit]]) }
    const devices = [television, { ...television, id: 'amp', category: 'amplifier' }]
    const offered = (choice: object) =>
      planSavings(
        { devices, plan: { measures: [{ code: 'habit', ...choice }] } },
        catalogue,
        settings,
      ).measures.flatMap(({ deviceIds }) => deviceIds)
    expect(offered({})).toEqual(['tv'])
    expect(offered({ devices: ['amp'] })).toEqual(['amp'])
  })
})

describe('a strip', () => {
  /** Two devices that may be switched off, and one that must stay powered. */
  const wall: readonly Device[] = [
    { ...television, outlet: 'wall' },
    { ...television, id: 'game', category: 'game-console', outlet: 'wall' },
    { id: 'freezer', category: 'freezer', outlet: 'wall' },
  ]

  test('is not for what heats, washes or cooks, which belongs on fixed outlets of its own', () => {
    const kettle = {
      ...testCategories[0]!,
      code: 'kettle',
      name: 'Kettle',
      aliases: [],
      group: 'kitchen',
    } as const
    const devices = [television, { ...television, id: 'kettle', category: 'kettle' }].map((device) => ({
      ...device,
      outlet: 'wall',
    }))
    const request = { devices, emissionFactor, plan: only('strip') }
    const { notOffered } = planSavings(request, catalogueOf(1, [...testCategories, kettle]), testSettings)
    expect(notOffered).toMatchObject([{ code: 'needs-fixed-outlet' }])
    expect(notOffered[0]!.message).toContain('Kettle belong on fixed outlets')
  })

  test('may carry what it says in W or in A, and where it says neither, the answer says so', () => {
    const planWith = (ratedLoadW: number | null, ratedLoadA: number | null, tv: number) => {
      const strip = { ...testSettings.measures.get('strip')!, ratedLoadW, ratedLoadA }
      const settings = { ...testSettings, measures: new Map([['strip', strip]]) }
      const devices = [
        { deviceId: 'tv', ratedWatts: tv },
        { deviceId: 'game', ratedWatts: 0 },
      ]
      return planSavings({ devices: wall, emissionFactor, plan: { devices } }, catalogue, settings)
    }
    const refusals = (...of: Parameters<typeof planWith>) =>
      planWith(...of).notOffered.map(({ code }) => code)
    expect(refusals(1000, null, 1000)).toEqual([])
    expect(refusals(1000, null, 1001)).toEqual(['over-rated-load'])
    // 4 A at 230 V.
    expect(refusals(null, 4, 920)).toEqual([])
    expect(refusals(null, 4, 921)).toEqual(['over-rated-load'])
    const { measures, notOffered } = planWith(null, null, 99_999)
    expect(notOffered).toEqual([])
    expect(measures[0]!.notes.map(({ message }) => message)).toContainEqual(
      expect.stringContaining('What this strip may carry is not known; read it off the strip'),
    )
  })
})

describe('the money of a plan', () => {
  test('of several devices goes by the hours of each', () => {
    const tariff: Tariff = {
      kind: 'time-of-use',
      currency: 'EUR',
      timeZone: 'UTC',
      bands: [{ name: 'night', pricePerKwh: 0.1, hours: [{ from: '00:00', to: '06:00' }] }],
      otherwisePricePerKwh: 0.4,
    }
    const at = (id: string, from: string, to: string) => ({
      ...television,
      id,
      modes: [{ ...read('standby', 5, 42), schedule: [{ from, to }] }],
    })
    const devices = [at('night', '00:00', '06:00'), at('day', '06:00', '12:00')]
    const measures = [{ code: 'habit', persistence: 1 }]
    const { savedMoneyPerYear } = planFor({ devices, tariff, plan: { measures } }).plan!.figures
    expect(savedMoneyPerYear).toMatchObject(exactly(5 * 42 * 0.052 * (0.1 + 0.4)))
  })
})
