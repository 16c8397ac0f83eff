import { describe, expect, test } from 'vitest'
import { estimate } from '../../../src/core/estimate/estimateHousehold.ts'
import type { Tariff } from '../../../src/core/money/tariff.ts'
import { checkVerification } from '../../../src/core/verification/checkVerification.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { amperes, catalogue, device, label, verify, visit, WATTMETER, watts } from './visits.ts'

describe('the option of retrofit isolation', () => {
  const optionOf = (...visits: Parameters<typeof verify>) => verify(...visits).devices[0]!.ipmvp.option
  const [often, always] = [100, 168]

  test('is A where the power was read at both visits and hours are as stated', () => {
    expect(optionOf(visit(device('a', often, watts(5))), visit(device('a', often, watts(2))))).toBe('A')
    expect(optionOf(visit(device('a', always, amperes(0.5))), visit(device('a', always, amperes(0.3))))).toBe(
      'A',
    )
  })
  test('is B where nothing is left to estimate: real power at all hours of the week', () => {
    expect(optionOf(visit(device('a', always, watts(5))), visit(device('a', always, watts(2))))).toBe('B')
  })
  test('is none where a power was not read at both visits', () => {
    expect(optionOf(visit(device('a', often, watts(5))), visit(device('a', 20)))).toBeNull()
    expect(optionOf(visit(device('a', often, label(5))), visit(device('a', often, watts(5))))).toBeNull()
  })
  test('of a device that is gone goes by the visit that found it', () => {
    const kept = device('z', often)
    expect(optionOf(visit(device('a', often, watts(5)), kept), visit(kept))).toBe('A')
    expect(optionOf(visit(device('a', often), kept), visit(kept))).toBeNull()
  })
})

describe('how sure a saving is', () => {
  const savingOf = (after: number, counts: number) => {
    const accuracy = { percentOfReading: 0, counts, resolution: 0.1 }
    const at = (value: number) => device('a', 100, { kind: 'power', watts: value, accuracy })
    return verify(visit(at(5)), visit(at(after))).devices[0]!.saving
  }

  test('is larger than noise where its interval leaves out zero, on either side', () => {
    expect(savingOf(4, 2).largerThanNoise).toBe(true)
    expect(savingOf(6, 2).largerThanNoise).toBe(true)
    expect(savingOf(4.9, 2).largerThanNoise).toBe(false)
  })

  test('is half of the interval over the saving, at the coverage and at 0.68 with the limit of 50 %', () => {
    // Two rectangular errors of +-0.2 W: triangular on +-0.4 W about the 1 W, so P(|D - 1| < d) = 1 - (1 - d/0.4)^2.
    const { fractionalSavingsUncertainty, at68Percent } = savingOf(4, 2)
    const half = (coverage: number) => 0.4 * (1 - Math.sqrt(1 - coverage))
    expect(fractionalSavingsUncertainty).toBeCloseTo(half(0.9), 2)
    expect(at68Percent.fractionalSavingsUncertainty).toBeCloseTo(half(0.68), 2)
    expect(at68Percent.below50Percent).toBe(true)
    expect(savingOf(4.7, 2).at68Percent.below50Percent).toBe(false)
    expect(savingOf(5, 2).at68Percent).toEqual({ fractionalSavingsUncertainty: null, below50Percent: null })
  })
})

describe('what a saving is worth', () => {
  const before = visit(device('a', 100, { kind: 'power', watts: 100 }))
  const after = visit(device('a', 100, { kind: 'power', watts: 50 }))
  const KWH = 260
  const block: Tariff = {
    kind: 'block',
    currency: 'EUR',
    per: 'year',
    blocks: [{ upToKwh: 1000, pricePerKwh: 0.1 }, { pricePerKwh: 0.4 }],
  }
  const costOf = (...request: Parameters<typeof verify>) => verify(...request).total.all.costPerYear

  test('is priced at the margin of the use before: the last kWh go first', () => {
    const more = { tariff: block, annualUseKwh: 1100 }
    // Of 260 kWh the last 100 are in the dear block.
    expect(costOf(before, after, more).expected).toBeCloseTo(100 * 0.4 + 160 * 0.1, 4)
    // What is used more comes on top of it.
    expect(costOf(after, before, more).expected).toBeCloseTo(-KWH * 0.4, 4)
    const months = {
      tariff: { ...block, per: 'month' as const },
      monthlyUseKwh: Array.from({ length: 12 }, () => 1100),
    }
    expect(costOf(after, before, months).expected).toBeCloseTo(-KWH * 0.4, 4)
  })

  test('has the uncertainty of the price, which both visits share', () => {
    const tariff = { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3, relativeUncertainty: 0.1 } as const
    const { expected, low, high } = costOf(before, after, { tariff })
    expect([expected, low, high]).toEqual([
      expect.closeTo(78, 4),
      expect.closeTo(78 * 0.91, 4),
      expect.closeTo(78 * 1.09, 4),
    ])
    const factor = { kgCo2ePerKwh: 0.2, gridLoss: 0.2, relativeUncertainty: 0.1 }
    const { emissionsKgCo2ePerYear } = verify(before, after, { emissionFactor: factor }).total.all
    expect(emissionsKgCo2ePerYear).toEqual({
      expected: expect.closeTo(65, 4),
      low: expect.closeTo(65 * 0.91, 4),
      high: expect.closeTo(65 * 1.09, 4),
    })
  })

  test('goes by the hours of the week where the price does, also where only those changed', () => {
    const night: Tariff = {
      kind: 'time-of-use',
      currency: 'EUR',
      timeZone: 'Europe/Vienna',
      bands: [{ name: 'night', pricePerKwh: 0.1, hours: [{ from: '00:00', to: '06:00' }] }],
      otherwisePricePerKwh: 0.4,
    }
    const at = (from: string, to: string) =>
      visit({
        id: 'a',
        category: 'television',
        modes: [
          {
            mode: 'standby',
            hoursPerWeek: 42,
            schedule: [{ from, to }],
            reading: { kind: 'power', watts: 100 },
          },
        ],
      })
    const { total, devices } = verify(at('12:00', '18:00'), at('00:00', '06:00'), { tariff: night })
    expect(devices[0]!.changes.map(({ code }) => code)).toEqual(['schedule-changed'])
    expect(total.all.energyKwhPerYear.expected).toBe(0)
    expect(total.all.costPerYear.expected).toBeCloseTo(42 * 52 * 0.1 * 0.3, 4)
  })

  test('is, with one price, what the costs of the two estimates differ by', () => {
    const [one, other] = [before, after].map(
      ({ devices }) =>
        estimate({ devices, emissionFactor: { kgCo2ePerKwh: 0.25 } }, catalogue, testSettings).total,
    )
    const { costPerYear, emissionsKgCo2ePerYear } = verify(before, after).total.all
    expect(costPerYear.expected).toBeCloseTo(one!.costPerYear.expected - other!.costPerYear.expected, 4)
    expect(emissionsKgCo2ePerYear.expected).toBeCloseTo(
      one!.emissionsKgCo2ePerYear.expected - other!.emissionsKgCo2ePerYear.expected,
      4,
    )
  })
})

describe('a price that goes by the hours of the week', () => {
  const tariff: Tariff = {
    kind: 'time-of-use',
    currency: 'EUR',
    timeZone: 'UTC',
    bands: [{ name: 'night', pricePerKwh: 0.1, hours: [{ from: '00:00', to: '06:00' }] }],
    otherwisePricePerKwh: 0.4,
  }
  const night = (id: string) => ({
    id,
    category: 'television',
    modes: [
      {
        mode: 'standby' as const,
        hoursPerWeek: 42,
        schedule: [{ from: '00:00', to: '06:00' }],
        reading: { kind: 'power' as const, watts: 100 },
      },
    ],
  })
  const kept = device('z', 100, { kind: 'power', watts: 1 })
  const KWH = 42 * 52 * 0.1

  test('counts for a device that is gone and for one that is new at the hours that it had', () => {
    const gone = verify(visit(night('a'), kept), visit(kept), { tariff })
    expect(gone.total.removed.costPerYear.expected).toBeCloseTo(KWH * 0.1, 4)
    const added = verify(visit(kept), visit(night('a'), kept), { tariff })
    expect(added.total.added.costPerYear.expected).toBeCloseTo(-KWH * 0.1, 4)
  })
})

describe('a plan', () => {
  const before = visit(
    device('a', 100, watts(10)),
    device('b', 100, watts(10)),
    device('c', 100, watts(10)),
    device('d', 100, watts(3)),
    device('e', 100),
    device('f', 100, watts(2)),
  )
  const after = visit(
    device('a', 20, watts(10)),
    device('b', 90, watts(10)),
    device('c', 120, watts(10)),
    device('d', 100, watts(2.99)),
    device('e', 100, watts(1)),
    device('f', 50, watts(2)),
  )
  const measure = (id: string, expectedKwhPerYear: number) => ({
    name: `Measure ${id}`,
    deviceIds: [id],
    expectedKwhPerYear,
  })
  const { plan, total } = verify(before, after, {
    plan: [measure('a', 40), measure('b', 30), measure('c', 5), measure('d', 5), measure('e', 20)],
  })

  test('is held against what the devices of each measure saved', () => {
    expect(plan!.measures.map(({ status }) => status)).toEqual([
      'carried-out',
      'partly',
      'not-carried-out',
      'cannot-be-told',
      'not-carried-out',
    ])
    expect(plan!.measures[0]!.savedKwhPerYear.expected).toBeCloseTo(41.6, 4)
    expect(plan!.measures[0]!.realisation.expected).toBeCloseTo(1.04, 5)
  })

  test('is carried out by the share of what was expected, and the rest was saved outside of it', () => {
    expect(plan!.expectedKwhPerYear).toBe(100)
    expect(plan!.carriedOutShare).toBeCloseTo(0.4, 9)
    expect(plan!.savedOutsidePlanKwhPerYear.expected).toBeCloseTo(5.2, 4)
    expect(plan!.savedKwhPerYear.expected + 5.2).toBeCloseTo(total.all.energyKwhPerYear.expected, 3)
    expect(plan!.realisation.expected).toBeCloseTo(plan!.savedKwhPerYear.expected / 100, 5)
  })
})

test('rules on both visits, their meters and the plan are named together, each where it is', () => {
  const raw = {
    tariffCode: 'nothing',
    before: {
      meters: [WATTMETER],
      devices: [
        { id: 'a', category: 'televison' },
        { id: 'a', category: 'router' },
      ],
    },
    after: {
      meters: [{ ...WATTMETER, counts: 9 }],
      devices: [device('a', 170, { kind: 'power', watts: 1, meterId: 'lost' })],
    },
    plan: [
      { name: 'one', deviceIds: ['a', 'x'] },
      { name: 'two', deviceIds: ['a'] },
    ],
  }
  expect(
    checkVerification(raw, catalogue, testSettings)
      .map(({ pointer, code }) => `${pointer} ${code}`)
      .sort(),
  ).toEqual([
    '/after/devices/0/modes hours-exceed-week',
    '/after/devices/0/modes/0/reading/meterId unknown-meter',
    '/after/meters/0 meter-differs',
    '/before/devices/0/category unknown-category',
    '/before/devices/1/id duplicate-id',
    '/plan/0/deviceIds/1 unknown-device',
    '/plan/1/deviceIds/0 device-in-two-measures',
    '/tariffCode unknown-code',
  ])
})

test('what can’t be read of two visits has no fault of the trade: its shape says so already', () => {
  for (const raw of [null, 'visits', [], {}, { before: 3, after: [], plan: 'all' }])
    expect(checkVerification(raw, catalogue, testSettings)).toEqual([])
  const visits = { before: { devices: [device('a', 1)], meters: [{}] }, after: { meters: [{ counts: 3 }] } }
  const plan = [{ deviceIds: 'a' }, { deviceIds: [null, 'a'] }]
  expect(checkVerification({ ...visits, plan }, catalogue, testSettings)).toEqual([])
})

test('a meter that is the same at both visits, or at one alone, is no fault', () => {
  const other = { ...WATTMETER, id: 'other' }
  const raw = {
    before: { meters: [WATTMETER], devices: [] },
    after: { meters: [WATTMETER, other], devices: [] },
  }
  expect(checkVerification(raw, catalogue, testSettings)).toEqual([])
})
