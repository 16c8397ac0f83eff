import { describe, expect, test } from 'vitest'
import type { Device } from '../../../src/core/inventory/household.ts'
import type { Tariff } from '../../../src/core/money/tariff.ts'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { catalogue, emissionFactor, figuresOf, planFor, read, television } from './household.ts'

const exactly = (expected: number, digits = 6) => ({
  expected: expect.closeTo(expected, digits),
  low: expect.closeTo(expected, digits),
  high: expect.closeTo(expected, digits),
})
const only = (...codes: string[]) => ({ measures: codes.map((code) => ({ code })) })

describe('one measure, by hand', () => {
  test('switching off saves the share of the energy that the habit lasts for', () => {
    const plan = planFor({ devices: [television], plan: only('habit') })
    const { savedKwhPerYear, savedMoneyPerYear, savedEmissionsKgCo2ePerYear } = figuresOf(plan, 'habit.1@tv')
    // 26 kWh x triangular 0.2, 0.5, 0.8; its 5th percentile is 0.2 + sqrt(0.05 x 0.6 x 0.3) = 0.294868.
    expect(savedKwhPerYear.expected).toBe(13)
    expect(savedKwhPerYear.low).toBeCloseTo(26 * 0.294868, 0)
    expect(savedKwhPerYear.high).toBeCloseTo(26 * 0.705132, 0)
    expect(savedMoneyPerYear.amounts.expected).toBe('3.90')
    expect(savedEmissionsKgCo2ePerYear.expected).toBe(6.5)
  })

  test('a timer saves its hours off, less its own draw in all hours', () => {
    const plan = planFor({ devices: [television], plan: only('timer') })
    const { savedKwhPerYear, savedMoneyPerYear, simplePaybackYears } = figuresOf(plan, 'timer.1@tv')
    // 5 W x 56 h x 52 = 14.56 kWh; 0.5 W x 168 h x 52 = 4.368 kWh.
    expect(savedKwhPerYear).toEqual(exactly(10.192))
    expect(savedMoneyPerYear).toMatchObject(exactly(3.0576))
    expect(simplePaybackYears).toEqual(exactly(8 / 3.0576, 4))
  })

  test('a timer takes no more hours than there are', () => {
    const devices = [{ ...television, modes: [read('standby', 5, 20)] }]
    const { savedKwhPerYear } = figuresOf(planFor({ devices, plan: only('timer') }), 'timer.1@tv')
    expect(savedKwhPerYear).toEqual(exactly(5.2 - 4.368))
  })

  test('each of a quantity needs a timer of its own', () => {
    const devices = [{ ...television, quantity: 3 }]
    const { savedKwhPerYear, price } = figuresOf(planFor({ devices, plan: only('timer') }), 'timer.1@tv')
    expect([savedKwhPerYear.expected, price]).toEqual([30.576, 24])
  })

  test('a setting moves hours to the draw of the other mode', () => {
    const modes = [read('networked-standby', 8, 100), read('standby', 1, 10)]
    const plan = planFor({ devices: [{ ...television, modes }], plan: only('setting') })
    expect(figuresOf(plan, 'setting.1@tv').savedKwhPerYear).toEqual(exactly(7 * 5.2))
  })

  test('a setting goes by the catalogue where the draw of the other mode was not read', () => {
    const devices = [{ ...television, modes: [read('networked-standby', 8, 100)] }]
    const { savedKwhPerYear } = figuresOf(planFor({ devices, plan: only('setting') }), 'setting.1@tv')
    // Standby is 0.5, 1, 3 W: the saving is 8 W less that, high where that is low.
    expect(savedKwhPerYear.low).toBeCloseTo(5 * 5.2, -1)
    expect(savedKwhPerYear.high).toBeCloseTo(7.5 * 5.2, 0)
    const mean = estimate({ devices: [{ category: 'television' }], emissionFactor }, catalogue, testSettings)
      .devices[0]!
    expect(savedKwhPerYear.expected).toBeCloseTo((8 - mean.powerW.expected) * 5.2, 4)
  })

  test('a replacement draws its own power in the hours of the old device', () => {
    const plan = planFor({ devices: [television], plan: only('new') })
    expect(figuresOf(plan, 'new.1@tv').savedKwhPerYear).toEqual(exactly(4.8 * 5.2))
  })

  test('figures that the household gives stand in place of those of the service', () => {
    const measures = [
      { code: 'timer', price: 4.25, ownDrawW: 0, hoursOffPerWeek: 10, lifeYears: 3, persistence: 0.5 },
    ]
    const figures = figuresOf(planFor({ devices: [television], plan: { measures } }), 'timer.1@tv')
    expect(figures.savedKwhPerYear).toEqual(exactly(5 * 10 * 0.052 * 0.5))
    expect(figures).toMatchObject({ price: 4.25, priceAmount: '4.25', lifeYears: 3 })
  })
})

/** Two televisions and a freezer on one outlet. */
const wall: readonly Device[] = [
  { ...television, outlet: 'wall' },
  {
    id: 'game',
    category: 'game-console',
    outlet: 'wall',
    modes: [read('networked-standby', 10, 100), read('standby', 1, 0)],
  },
  { id: 'freezer', category: 'freezer', outlet: 'wall' },
]

describe('a strip', () => {
  test('saves what all its devices draw, less its own draw once', () => {
    const plan = planFor({ devices: wall, plan: only('strip') })
    expect(figuresOf(plan, 'strip.1@wall').savedKwhPerYear).toEqual(exactly(26 + 52 - 0.1 * 8.736))
  })

  test('and a setting on one of its devices save together what is left, not their sum', () => {
    const measures = [{ code: 'strip', persistence: 0.6 }, { code: 'setting' }]
    const plan = planFor({ devices: wall, plan: { measures, budget: 10 } })
    expect(plan.plan!.measureIds).toEqual(['strip.1@wall', 'setting.2@game'])
    // First the setting: 10 W to 1 W over 5200 h leaves 5.2 kWh; then 60 % of 26 and of 5.2 kWh.
    expect(plan.plan!.figures.savedKwhPerYear).toEqual(exactly(46.8 + 0.6 * (26 + 5.2) - 0.8736))
    const [strip, setting] = plan.measures.map(({ figures }) => figures.savedKwhPerYear.expected)
    expect(strip! + setting!).toBeGreaterThan(plan.plan!.figures.savedKwhPerYear.expected + 20)
  })

  test('is not for a device that must stay powered, which is listed apart and to be plugged in elsewhere', () => {
    const plan = planFor({ devices: wall })
    expect(plan.measures.flatMap(({ deviceIds }) => deviceIds)).not.toContain('freezer')
    expect(plan.keptPowered).toEqual([
      {
        deviceId: 'freezer',
        label: null,
        category: 'freezer',
        categoryName: 'Freezer',
        reason: 'refrigeration',
        note: 'The food spoils.',
      },
    ])
    const { notes } = plan.measures.find(({ id }) => id.startsWith('strip'))!
    expect(notes.find(({ code }) => code === 'plug-elsewhere')?.message).toContain('Freezer')
  })

  test('leaves a kept device alone when it is named, too', () => {
    const measures = [{ code: 'habit', devices: ['freezer', 'tv'] }]
    const plan = planFor({ devices: wall, plan: { measures } })
    expect(plan.measures.map(({ id }) => id)).toEqual(['habit.1@tv'])
  })

  const refusalOf = (devices: readonly Device[], plan: Parameters<typeof planFor>[0]['plan'] = {}) => {
    const { measures, notOffered } = planFor({ devices, plan: { ...only('strip'), ...plan } })
    return [measures.length, ...notOffered.map(({ code }) => code)]
  }

  test('is refused where the rated loads are over what it may carry, in W or in A', () => {
    const rated = (tv: number, game: number) => [
      { deviceId: 'tv', ratedWatts: tv },
      { deviceId: 'game', ratedWatts: game },
    ]
    expect(refusalOf(wall, { devices: rated(400, 600) })).toEqual([1])
    expect(refusalOf(wall, { devices: rated(400, 601) })).toEqual([0, 'over-rated-load'])
    const measures = [{ code: 'strip', ratedLoadW: 5000, ratedLoadA: 4 }]
    expect(refusalOf(wall, { measures, devices: rated(400, 520) })).toEqual([1])
    expect(refusalOf(wall, { measures, devices: rated(400, 521) })).toEqual([0, 'over-rated-load'])
  })

  test('counts the load of each of a quantity', () => {
    const two = wall.map((device) => (device.id === 'tv' ? { ...device, quantity: 2 } : device))
    expect(refusalOf(two, { devices: [{ deviceId: 'tv', ratedWatts: 501 }] })).toEqual([0, 'over-rated-load'])
  })

  test('says where a rated load is not known', () => {
    const { measures } = planFor({
      devices: wall,
      plan: { ...only('strip'), devices: [{ deviceId: 'tv', ratedWatts: 100 }] },
    })
    const note = measures[0]!.notes.find(({ code }) => code === 'rated-load-unknown')!
    expect(note.message).toContain('Game console')
    expect(note.message).not.toContain('Television')
  })

  test('is refused with too few outlets, and behind another strip', () => {
    const many = wall.map((device) => (device.id === 'tv' ? { ...device, quantity: 4 } : device))
    expect(refusalOf(many)).toEqual([0, 'too-few-outlets'])
    expect(refusalOf(wall, { outletsWithStrip: ['wall'] })).toEqual([0, 'strip-behind-strip'])
  })

  test('is not thought of for a single plug', () => {
    expect(refusalOf(wall.filter(({ id }) => id !== 'game'))).toEqual([0])
  })

  test('is one at most at an outlet, and nothing cuts its devices off twice', () => {
    const measures = [
      { code: 'strip' },
      { code: 'habit' },
      { code: 'timer', price: 0, ownDrawW: 0, hoursOffPerWeek: 1 },
    ]
    const { plan } = planFor({ devices: wall, plan: { measures, budget: 100 } })
    expect(plan!.measureIds).toEqual(['strip.1@wall'])
  })
})

describe('money', () => {
  const blocks: Tariff = {
    kind: 'block',
    currency: 'EUR',
    per: 'year',
    blocks: [{ upToKwh: 2500, pricePerKwh: 0.24 }, { pricePerKwh: 0.33 }],
  }
  const moneyAt = (annualUseKwh: number, tariff: Tariff = blocks, devices: Device[] = [television]) =>
    figuresOf(
      planFor({ devices, tariff, annualUseKwh, plan: { measures: [{ code: 'habit', persistence: 1 }] } }),
      'habit.1@tv',
    ).savedMoneyPerYear

  test('is the bill as it is less the bill without what is saved', () => {
    expect(moneyAt(3000).expected).toBeCloseTo(26 * 0.33, 9)
    expect(moneyAt(2000).expected).toBeCloseTo(26 * 0.24, 9)
    expect(moneyAt(2510).expected).toBeCloseTo(10 * 0.33 + 16 * 0.24, 9)
  })

  test('has a mean between the blocks where the saving is uncertain about their edge', () => {
    const unsure = { ...television, modes: [{ mode: 'standby' as const, hoursPerWeek: 160 }] }
    const { expected, low, high } = moneyAt(2510, blocks, [unsure])
    const kwh = figuresOf(
      planFor({ devices: [unsure], plan: { measures: [{ code: 'habit', persistence: 1 }] } }),
      'habit.1@tv',
    ).savedKwhPerYear
    expect(expected).toBeGreaterThan(kwh.expected * 0.24)
    expect(expected).toBeLessThan(kwh.expected * 0.33)
    expect(low).toBeCloseTo(kwh.low * 0.33, 3)
    expect(high).toBeCloseTo(10 * 0.33 + (kwh.high - 10) * 0.24, 1)
  })

  test('goes by the price of the hours that are saved', () => {
    const tariff: Tariff = {
      kind: 'time-of-use',
      currency: 'EUR',
      timeZone: 'UTC',
      bands: [{ name: 'night', pricePerKwh: 0.1, hours: [{ from: '00:00', to: '06:00' }] }],
      otherwisePricePerKwh: 0.4,
    }
    const night = {
      ...television,
      modes: [{ ...read('standby', 5, 42), schedule: [{ from: '00:00', to: '06:00' }] }],
    }
    expect(moneyAt(3000, tariff, [night])).toMatchObject(exactly(5 * 42 * 0.052 * 0.1))
  })

  test('is as unsure as the price', () => {
    const { low, high } = moneyAt(3000, {
      kind: 'flat',
      currency: 'EUR',
      pricePerKwh: 0.3,
      relativeUncertainty: 0.1,
    })
    // Rectangular on +-10 %: 5th and 95th percentile at -9 % and +9 %.
    expect(low).toBeCloseTo(7.8 * 0.91, 1)
    expect(high).toBeCloseTo(7.8 * 1.09, 1)
  })

  test('of another currency than a measure’s price makes no offer until the price is given', () => {
    const tariff: Tariff = { kind: 'flat', currency: 'USD', pricePerKwh: 0.2 }
    const refused = planFor({ devices: [television], tariff, plan: only('timer', 'habit') })
    expect(refused.notOffered.map(({ code }) => code)).toEqual(['price-in-other-currency'])
    expect(refused.measures.map(({ measureCode }) => measureCode)).toEqual(['habit'])
    const measures = [{ code: 'timer', price: 9 }]
    expect(planFor({ devices: [television], tariff, plan: { measures } }).notOffered).toEqual([])
  })
})

describe('the plan', () => {
  test('has the total of the estimate of the same household', () => {
    const plan = planFor({ devices: wall })
    const before = estimate({ devices: wall, emissionFactor }, catalogue, testSettings)
    expect(plan.total).toEqual(before.total)
  })

  test('is the same, to the last digit, for the same request', () => {
    const request = { devices: [{ category: 'television' }, ...wall], plan: { budget: 20 } }
    expect(JSON.stringify(planFor(request))).toBe(JSON.stringify(planFor(request)))
  })

  test('spends a budget for most energy, and without one only what pays back over its life', () => {
    const measures = [{ code: 'new', lifeYears: 5 }]
    // 24.96 kWh, 7.488 EUR a year; 50 EUR over five years are 10 EUR a year.
    expect(planFor({ devices: [television], plan: { measures, budget: 50 } }).plan?.measureIds).toEqual([
      'new.1@tv',
    ])
    expect(planFor({ devices: [television], plan: { measures, budget: 49.99 } }).plan).toBeNull()
    expect(planFor({ devices: [television], plan: { measures } }).plan).toBeNull()
    const lasting = [{ code: 'new', lifeYears: 7 }]
    expect(planFor({ devices: [television], plan: { measures: lasting } }).plan).not.toBeNull()
  })

  test('takes the shortest life of what was bought', () => {
    const measures = [
      { code: 'habit', lifeYears: 1, devices: ['tv'] },
      { code: 'new', lifeYears: 9, devices: ['tv'] },
      { code: 'timer', lifeYears: 7, devices: ['other'] },
    ]
    const devices = [television, { ...television, id: 'other' }]
    const { plan } = planFor({ devices, plan: { measures, budget: 200 } })
    expect(plan!.measureIds).toEqual(['habit.1@tv', 'new.2@tv', 'timer.3@other'])
    expect(plan!.figures).toMatchObject({ lifeYears: 7, price: 58 })
  })

  test('offers nothing that would save nothing, and says so', () => {
    const devices = [{ ...television, modes: [read('standby', 0.1, 100)] }]
    const plan = planFor({ devices, plan: only('timer', 'new') })
    expect([plan.measures, plan.plan]).toEqual([[], null])
    expect(plan.notOffered.map(({ code }) => code)).toEqual(['saves-nothing', 'saves-nothing'])
  })

  test('carries the cautions on savings, and says where its figures are invented', () => {
    const { cautions, sampleData, warnings } = planFor({ devices: wall })
    expect(cautions.map(({ code }) => code)).toEqual(['a-warning-for-all'])
    expect(sampleData).toBe(true)
    expect(warnings.map(({ code }) => code)).toContain('sample-data')
  })
})
