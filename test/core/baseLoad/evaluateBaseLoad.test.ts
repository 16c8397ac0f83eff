import { describe, expect, test } from 'vitest'
import { readConfig, settingsOf } from '../../../src/config.ts'
import type { BaseLoadOptions } from '../../../src/core/baseLoad/baseLoadEvaluation.ts'
import { evaluateBaseLoad } from '../../../src/core/baseLoad/evaluateBaseLoad.ts'
import type { IntervalData } from '../../../src/core/baseLoad/intervalData.ts'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { FaultyInput } from '../../../src/core/fault.ts'
import { readSeed } from '../../../src/readSeed.ts'
import { dataOf, daysOf, MONDAY, ordinary, type Row } from './intervals.ts'

const seed = await readSeed()
const settings = settingsOf(readConfig({}), seed)
const catalogue = catalogueOf(1, seed.categories)

const evaluate = (data: IntervalData, options: BaseLoadOptions = {}) =>
  evaluateBaseLoad(data, options, catalogue, settings)
const refusal = (data: IntervalData, options: BaseLoadOptions = {}): string[] => {
  try {
    evaluate(data, options)
  } catch (error) {
    if (error instanceof FaultyInput) return error.faults.map(({ pointer, code }) => `${pointer} ${code}`)
    throw error
  }
  return []
}
const codes = (answer: ReturnType<typeof evaluate>) => answer.warnings.map(({ code }) => code)
const month = daysOf(35, 3600, ordinary)
const set = (rows: readonly Row[], watts: (row: Row, index: number) => number) =>
  rows.map((row, index): Row => [row[0], row[1], watts(row, index)])

describe('the evaluation', () => {
  test('without a choice it builds on the mean of daily minima, and says on how many days', () => {
    const { chosen, estimators, warnings } = evaluate(dataOf(month))
    const minima = Array.from({ length: 35 }, (_, day) =>
      Math.min(...Array.from({ length: 24 }, (__, hour) => ordinary(day, hour))),
    )
    const mean = minima.reduce((sum, watts) => sum + watts, 0) / 35
    expect(chosen.estimator).toBe('mean-of-daily-minima')
    expect(chosen.powerW.expected).toBeCloseTo(mean, 3)
    expect(chosen.powerW.low).toBeLessThanOrEqual(mean)
    expect(chosen.powerW.high).toBeGreaterThanOrEqual(mean)
    expect(chosen.energyKwhPerYear.expected).toBeCloseTo((mean * 8760) / 1000, 2)
    expect(chosen.explanation).toContain('rests on 35 days')
    expect(estimators.map(({ powerW }) => powerW === null)).toEqual([false, false, false, false, false])
    expect(warnings).toEqual([])
  })

  test('the same data gives the same answer, in whatever order the readings come', () => {
    expect(evaluate(dataOf([...month].reverse())).chosen).toEqual(evaluate(dataOf(month)).chosen)
  })

  test('fewer than seven whole days are refused, with what to do', () => {
    expect(refusal(dataOf(daysOf(6, 3600, ordinary)))).toEqual([' too-few-days'])
    expect(refusal(dataOf(daysOf(7, 3600, ordinary)))).toEqual([])
  })

  test('readings longer than an hour are refused, and so are no readings, and zeros alone', () => {
    expect(refusal(dataOf(daysOf(9, 86_400, () => 300)))).toEqual([' interval-too-long'])
    expect(refusal(dataOf([]))).toEqual([' no-readings'])
    expect(refusal(dataOf(daysOf(9, 3600, () => 0)))).toEqual([' no-use'])
  })

  test.each([
    ['starts after 2099', [4_102_444_800, 3600, 100], 'time-out-of-range'],
    ['starts before 1970', [-1, 3600, 100], 'time-out-of-range'],
    ['starts beyond what a calendar holds', [1e20, 3600, 100], 'time-out-of-range'],
    ['has no length', [MONDAY, 0, 100], 'invalid-duration'],
    ['is longer than a year', [MONDAY, Infinity, 100], 'invalid-duration'],
    ['is above 100 kW, as a wrong multiplier makes it', [MONDAY, 3600, 100_001], 'power-too-large'],
    ['is no number', [MONDAY, 3600, NaN], 'power-too-large'],
  ] as const)('a reading that %s is refused by its place', (_, row, code) => {
    expect(refusal(dataOf([...month, row], { form: 'csv' }))).toEqual([`/lines/841 ${code}`])
  })

  test('data of a single day, or of none that is whole, says how few days it rests on', () => {
    const messageOf = (days: number) => {
      try {
        evaluate(dataOf(daysOf(days, 3600, ordinary)))
      } catch (error) {
        return (error as FaultyInput).faults[0]!.message
      }
      return null
    }
    expect(messageOf(1)).toContain('"mean-of-daily-minima" rests on 1 whole days at home; at least 7')
    expect(messageOf(3)).toContain('rests on 3 whole days at home')
  })

  test('an estimator that the data is too coarse for says why it has no figure', () => {
    // Intervals of 45 minutes: no two of them make an hour.
    const [minimum, ...others] = evaluate(dataOf(daysOf(10, 2700, ordinary))).estimators
    expect(minimum).toMatchObject({
      estimator: 'minimum-hour',
      powerW: null,
      days: 0,
      reason: 'The data has too few whole hours or days for it.',
    })
    expect(others.every(({ reason }) => reason === null)).toBe(true)
  })

  test('a wider coverage gives a wider interval about the same figure', () => {
    const [narrow, wide] = [0.5, 0.99].map((coverageProbability) =>
      evaluate(dataOf(month), { coverageProbability }),
    )
    expect(wide!.chosen.powerW.expected).toBe(narrow!.chosen.powerW.expected)
    expect(wide!.chosen.powerW.low).toBeLessThan(narrow!.chosen.powerW.low)
    expect(wide!.chosen.powerW.high).toBeGreaterThan(narrow!.chosen.powerW.high)
  })
})

describe('days away', () => {
  const away = set(month, ([start, , watts], i) =>
    i >= 10 * 24 && i < 14 * 24 ? 60 + ((start / 3600) % 5) : watts,
  )
  const named = [{ from: '2025-01-16', to: '2025-01-19' }]

  test('are found and told, but count until they are named', () => {
    const answer = evaluate(dataOf(away))
    expect(answer.daysAway).toEqual({ named: [], suspected: named, meanW: null })
    expect(codes(answer)).toContain('days-away-suspected')
    expect(answer.chosen.powerW.expected).toBeLessThan(evaluate(dataOf(month)).chosen.powerW.expected)
  })

  test('that are named are left out of every estimator, and their mean is told', () => {
    const answer = evaluate(dataOf(away), { daysAway: named })
    const athome = evaluate(dataOf(month.filter((_, i) => i < 10 * 24 || i >= 14 * 24)))
    expect(answer.estimators).toEqual(athome.estimators)
    expect(answer.chosen.days).toBe(31)
    expect(answer.daysAway.meanW).toBeCloseTo(62, 0)
    expect(answer.daysAway.suspected).toEqual([])
  })

  test('can’t be all days', () => {
    expect(refusal(dataOf(month), { daysAway: [{ from: '2025-01-01', to: '2025-12-31' }] })).toEqual([
      '/daysAway no-days-left',
    ])
  })

  test('are two in a row at least: one quiet day is no absence', () => {
    const quiet = (days: number) =>
      set(month, ([start, , watts], i) =>
        i >= 240 && i < 240 + 24 * days ? 60 + ((start / 3600) % 5) : watts,
      )
    expect(evaluate(dataOf(quiet(1))).daysAway.suspected).toEqual([])
    expect(evaluate(dataOf(quiet(2))).daysAway.suspected).toEqual([{ from: '2025-01-16', to: '2025-01-17' }])
  })

  test('are not seen in ordinary weeks', () => {
    expect(evaluate(dataOf(month)).daysAway.suspected).toEqual([])
  })
})

describe('zero readings', () => {
  test('for an hour or longer are told as a suspected outage and left out', () => {
    const cut = set(month, ([, , watts], i) => (i === 50 || i === 51 ? 0 : watts))
    const answer = evaluate(dataOf(cut))
    expect(answer.outages).toEqual([{ from: '2025-01-08T02:00:00Z', to: '2025-01-08T04:00:00Z' }])
    expect(answer.estimators[0]!.powerW).toBeGreaterThan(99)
    expect(codes(answer)).toEqual(['outages-suspected'])
  })

  test('that are many are how the meter counts: they stay, and the answer says so', () => {
    const answer = evaluate(dataOf(set(month, ([, , watts], i) => (i % 4 === 0 ? 0 : watts))))
    expect(answer.outages).toEqual([])
    expect(codes(answer)).toContain('many-zero-readings')
  })

  test('coarse steps are told', () => {
    expect(codes(evaluate(dataOf(set(month, ([, , watts]) => Math.round(watts / 50) * 50))))).toEqual([
      'coarse-steps',
    ])
  })
})

describe('generation behind the meter', () => {
  const sunny = set(month, ([, , watts], i) => (i % 24 > 8 && i % 24 < 17 ? watts - 700 : watts))

  test('shows in negative readings; then only the night window counts', () => {
    const answer = evaluate(dataOf(sunny))
    expect(answer.generation).toBe(true)
    expect(answer.chosen.estimator).toBe('night-window-mean')
    expect(answer.chosen.powerW.expected).toBe(
      evaluate(dataOf(month), { estimator: 'night-window-mean' }).chosen.powerW.expected,
    )
    expect(answer.estimators.filter(({ powerW }) => powerW === null).map(({ days }) => days)).toEqual([
      0, 0, 0, 0,
    ])
    expect(answer.chosen.shareOfUse).toBeNull()
    expect(codes(answer)).toEqual(['generation-seen'])
  })

  test('can be named, or come as a channel of what is fed in', () => {
    expect(evaluate(dataOf(month), { generation: true }).generation).toBe(true)
    expect(evaluate(dataOf(month, { exported: true })).generation).toBe(true)
  })

  test('another estimator is refused, and so is a night that generation covers', () => {
    expect(refusal(dataOf(sunny), { estimator: 'percentile-5' })).toEqual([
      '/estimator estimator-hidden-by-generation',
    ])
    const battery = set(month, ([, , watts], i) => (i % 24 === 3 ? -5 : watts))
    expect(refusal(dataOf(battery))).toEqual([' generation-covers-night'])
  })
})

describe('gaps, duplicates and conflicts', () => {
  test('are counted and told', () => {
    const rows = [...month.filter((_, i) => i < 100 || i >= 105), month[3]!, [month[7]![0], 3600, 1] as const]
    const { data, warnings } = evaluate(dataOf(rows))
    expect(data).toMatchObject({
      duplicates: 1,
      conflicts: 1,
      gaps: 2,
      longestGapHours: 5,
      readings: 835 - 1,
    })
    expect(warnings.map(({ code }) => code)).toEqual(['conflicting-readings'])
    expect(warnings[0]!.message).toContain('value 8 ')
  })

  test('many conflicts are refused, each with both places, up to a hundred', () => {
    const twice = [...month, ...set(month, ([, , watts]) => watts + 1)]
    expect(refusal(dataOf(twice))).toEqual(Array.from({ length: 100 }, () => ' conflicting-readings'))
  })
})

describe('what an inventory explains', () => {
  const inventoryPowerW = { expected: 60, low: 45, high: 78 }

  test('share and rest carry the uncertainty of both', () => {
    const { inventory, chosen } = evaluate(dataOf(month), { inventoryPowerW })
    const base = chosen.powerW
    expect(inventory!.restW.expected).toBeCloseTo(base.expected - 60, 3)
    expect(inventory!.explainedShare.expected).toBeCloseTo(60 / base.expected, 5)
    // The base load is known to about 1 W here, so the rest is about as unsure as the inventory.
    expect(inventory!.restW.low).toBeCloseTo(base.expected - 78, 0)
    expect(inventory!.restW.high).toBeCloseTo(base.expected - 45, 0)
    const unsure = evaluate(dataOf(daysOf(8, 3600, (day, hour) => ordinary(day, hour) + 12 * (day % 4))), {
      inventoryPowerW,
    })
    const width = ({ low, high }: { low: number; high: number }) => high - low
    expect(width(unsure.inventory!.restW)).toBeGreaterThan(Math.max(33, width(unsure.chosen.powerW)))
    expect(width(unsure.inventory!.restW)).toBeLessThan(33 + width(unsure.chosen.powerW))
  })

  test('what the rest could be names what cycles as no standby', () => {
    const { couldBe } = evaluate(dataOf(month), { inventoryPowerW }).inventory!
    const cycling = couldBe.filter(({ isStandby }) => !isStandby).map(({ code }) => code)
    expect(cycling).toEqual(expect.arrayContaining(['refrigeration', 'circulation-pumps', 'ventilation']))
  })

  test('an inventory that draws more than the home at its quietest is told', () => {
    const answer = evaluate(dataOf(month), { inventoryPowerW: { expected: 300, low: 250, high: 350 } })
    expect(codes(answer)).toContain('inventory-above-base-load')
    expect(answer.inventory!.restW.high).toBeLessThan(0)
  })

  test('a base load of zero is explained a thousandfold in place of a division by it', () => {
    const zeros = set(month, ([, , watts], i) => (i % 4 === 0 ? 0 : watts))
    const { inventory, chosen } = evaluate(dataOf(zeros), { inventoryPowerW })
    expect(chosen.powerW.expected).toBe(0)
    expect(inventory!.explainedShare).toEqual({ expected: 1000, low: 1000, high: 1000 })
    expect(inventory!.restW.expected).toBe(-60)
  })

  test('a device without hours in a low-power mode draws nothing of it', () => {
    const reading = { kind: 'power', watts: 40 } as const
    const mode = (hoursPerWeek: number) => ({
      category: 'television',
      modes: [{ mode: 'standby' as const, hoursPerWeek, reading }],
    })
    const powerOf = (...hours: number[]) =>
      evaluate(dataOf(month), { inventory: { devices: hours.map(mode) } }).inventory!
    expect(powerOf(0, 10).powerW).toEqual(powerOf(10).powerW)
    expect(powerOf(0, 10).devices).toBe(2)
  })

  test('the inventory’s own coverage probability counts where no other is asked for', () => {
    const inventory = { coverageProbability: 0.7, devices: [{ category: 'television' }] }
    expect(evaluate(dataOf(month), { inventory }).coverageProbability).toBe(0.7)
    expect(evaluate(dataOf(month), { inventory, coverageProbability: 0.8 }).coverageProbability).toBe(0.8)
  })

  test('devices count with their power in their low-power modes, not with an average over the year', () => {
    const reading = {
      kind: 'power',
      watts: 40,
      accuracy: { percentOfReading: 0, counts: 0, resolution: 0.01 },
    } as const
    const devices = [
      { category: 'television', modes: [{ mode: 'standby' as const, hoursPerWeek: 42, reading }] },
    ]
    const { inventory } = evaluate(dataOf(month), { inventory: { devices } })
    expect(inventory!.powerW).toEqual({ expected: 40, low: 40, high: 40 })
    expect(inventory!.devices).toBe(1)
    const fridge = seed.categories.find(({ keepPowered }) => keepPowered?.reason === 'refrigeration')!
    const cold = evaluate(dataOf(month), { inventory: { devices: [{ category: fridge.code }] } })
    expect(cold.inventory!.couldBe.map(({ code }) => code)).not.toContain('refrigeration')
    expect(cold.inventory!.sampleData).toBe(true)
  })
})

test('the readings of the local day decide: MONDAY is the first day of the answer', () => {
  expect(evaluate(dataOf(month)).data).toMatchObject({
    from: new Date(MONDAY * 1000).toISOString().replace('.000', ''),
    days: 35,
    completeDays: 35,
    clockChanges: [],
  })
})
