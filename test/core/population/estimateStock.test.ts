import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import { estimateStock } from '../../../src/core/population/estimateStock.ts'
import type { Stock, StockItem } from '../../../src/core/population/stock.ts'
import { twoPieceLognormal } from '../../../src/core/quantity/twoPieceLognormal.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { type SimulatedItem, simulateStock } from './simulateStock.ts'

const catalogue = catalogueOf(3, testCategories)
const settings = testSettings
const estimate = (stock: Omit<Stock, 'method'>) =>
  estimateStock(
    {
      method: 'stock',
      price: { currency: 'EUR', pricePerKwh: 0.3 },
      emissionFactor: { kgCo2ePerKwh: 0.25, gridLoss: 0.05 },
      weeksPerYear: 52,
      ...stock,
    },
    catalogue,
    settings,
  )

/** Invented. Hours of a whole week, so that the power over the year is the draw. */
const own = (item: Omit<SimulatedItem, 'ownership'> & Pick<StockItem, 'ownership'>, i = 0): StockItem => ({
  name: `Invented device ${i}`,
  hoursPerWeek: 168,
  ...item,
})
const ladder = (...homes: readonly number[]) =>
  homes.map((count) => ({ name: `${count} homes`, homes: count }))
const exactly = (watts: number) => ({ low: watts, typical: watts, high: watts })

describe('the expected figures', () => {
  test('are homes x ownership x count x draw x hours, by hand', () => {
    const { ladder: rungs } = estimate({
      items: [{ name: 'Invented', drawW: exactly(5), hoursPerWeek: 100, ownership: 0.4, countPerOwner: 1.5 }],
      ladder: ladder(1, 1000),
      cutShare: 0.3,
    })
    // 0.4 x 1.5 x 5 W x 100 h x 52 = 15.6 kWh/yr a home
    expect(rungs.map(({ energyKwhPerYear }) => energyKwhPerYear.expected)).toEqual([15.6, 15600])
    const [, thousand] = rungs
    expect(thousand!.powerW.expected).toBe(1785.71)
    expect(thousand!.costPerYear.expected).toBe(4680)
    expect(thousand!.emissionsKgCo2ePerYear.expected).toBe(4105.26)
    expect(thousand!.emissionsTonnesCo2ePerYear.expected).toBe(4.10526)
    expect(thousand!.cut!.energyKwhPerYear.expected).toBe(4680)
    expect(thousand!.cut!.costPerYear.expected).toBe(1404)
  })

  test('use the mean of a triangular ownership and of the typical draw', () => {
    const drawW = { low: 0.5, typical: 2, high: 9 }
    const { ladder: rungs } = estimate({
      items: [
        own({
          drawW,
          ownership: { low: 0.3, typical: 0.5, high: 0.8 },
          countPerOwner: 1,
          meanDrawUncertainty: 0.3,
        }),
      ],
      ladder: ladder(1, 40, 3000, 10_000_000_000),
    })
    for (const { homes, powerW } of rungs)
      expect(powerW.expected / homes).toBeCloseTo((1.6 / 3) * twoPieceLognormal(drawW).mean, 4)
  })

  test('are the same per home from one home to ten thousand million, without overflow', () => {
    const { ladder: rungs } = estimate({
      items: [{ category: 'television', ownership: { low: 0.8, typical: 0.9, high: 1 } }],
      ladder: ladder(1, 7, 61, 100_000, 83_000_000, 10_000_000_000),
    })
    const perHome = rungs.map((rung) => rung.perHome.energyKwhPerYear.expected)
    for (const one of perHome) expect(one / perHome[0]!).toBeCloseTo(1, 5)
    const last = rungs.at(-1)!
    expect(last.energyGwhPerYear.expected / perHome[0]!).toBeCloseTo(10_000, 0)
    expect(last.powerMw.expected).toBeCloseTo(last.powerW.expected / 1e6, 2)
    expect(last.energyKwhPerYear.low).toBeGreaterThan(0)
    expect(last.energyKwhPerYear.high).toBeLessThan(Infinity)
  })
})

describe('the intervals', () => {
  const items: readonly SimulatedItem[] = [
    {
      drawW: { low: 0.5, typical: 2, high: 9 },
      ownership: { low: 0.3, typical: 0.5, high: 0.8 },
      countPerOwner: 1.4,
      meanDrawUncertainty: 0.3,
    },
    {
      drawW: { low: 4, typical: 8, high: 12 },
      ownership: { low: 0.85, typical: 0.9, high: 0.95 },
      countPerOwner: 1,
      meanDrawUncertainty: 0.2,
    },
    {
      drawW: { low: 1, typical: 6, high: 40 },
      ownership: { low: 0.01, typical: 0.03, high: 0.05 },
      countPerOwner: 1,
      meanDrawUncertainty: 0.5,
    },
  ]
  const cases = [
    ['all three', items],
    ['a common one with several in a home', items.slice(0, 1)],
    ['a rare one', items.slice(2)],
  ] as const

  test.each(
    cases.flatMap(([name, some]) => [1, 2, 7, 30, 80, 400].map((homes) => [name, homes, some] as const)),
  )('of %s in %d homes end within 0.1 standard deviations of a home-by-home simulation', (_, homes, some) => {
    const draws = Math.max(5_000, Math.min(40_000, Math.floor(4_000_000 / homes)))
    const totals = simulateStock(some, homes, draws, 11)
    const mean = totals.reduce((sum, total) => sum + total, 0) / draws
    const deviation = Math.sqrt(totals.reduce((sum, total) => sum + (total - mean) ** 2, 0) / draws)
    const [rung] = estimate({ items: some.map(own), ladder: ladder(homes), coverageProbability: 0.9 }).ladder
    // What the simulation's own quantiles scatter by, three times over, comes on top.
    const scatter = (3 * Math.sqrt((0.05 * 0.95) / draws)) / 0.1
    expect(Math.abs(rung!.powerW.expected - mean) / deviation).toBeLessThan(4 / Math.sqrt(draws))
    expect(Math.abs(rung!.powerW.low - totals[Math.floor(0.05 * draws)]!) / deviation).toBeLessThan(
      0.1 + scatter,
    )
    expect(Math.abs(rung!.powerW.high - totals[Math.floor(0.95 * draws)]!) / deviation).toBeLessThan(
      0.1 + scatter,
    )
  })

  const width = ({ low, high, expected }: { low: number; high: number; expected: number }) =>
    (high - low) / expected

  test('shrink with the square root of the number of homes where nothing is shared', () => {
    const { ladder: rungs } = estimate({
      items: [
        own({
          drawW: { low: 1, typical: 3, high: 9 },
          ownership: 0.6,
          countPerOwner: 1,
          meanDrawUncertainty: 0,
        }),
      ],
      ladder: ladder(1_000, 100_000, 10_000_000),
    })
    const widths = rungs.map(({ powerW }) => width(powerW))
    expect(widths[0]! / widths[1]!).toBeCloseTo(10, 1)
    expect(widths[1]! / widths[2]!).toBeCloseTo(10, 1)
    expect(rungs.map(({ sharedVarianceShare }) => sharedVarianceShare)).toEqual([0, 0, 0])
  })

  test('do not shrink below what all homes share: the mean draw', () => {
    const { ladder: rungs } = estimate({
      items: [
        own({
          drawW: { low: 1, typical: 3, high: 9 },
          ownership: 0.6,
          countPerOwner: 1,
          meanDrawUncertainty: 0.5,
        }),
      ],
      ladder: ladder(1, 100_000, 10_000_000_000),
    })
    // Rectangular on 1 +- 0.5: its 90 % interval is 0.9 wide.
    expect(width(rungs[1]!.powerW)).toBeCloseTo(0.9, 2)
    expect(width(rungs[2]!.powerW)).toBeCloseTo(0.9, 4)
    expect(rungs[2]!.sharedVarianceShare).toBeCloseTo(1, 5)
    expect(rungs[0]!.sharedVarianceShare).toBeLessThan(0.1)
  })

  test('do not shrink below what all homes share: the ownership', () => {
    const { ladder: rungs } = estimate({
      items: [
        own({
          drawW: exactly(4),
          ownership: { low: 0.4, typical: 0.5, high: 0.6 },
          countPerOwner: 1,
          meanDrawUncertainty: 0,
        }),
      ],
      ladder: ladder(10_000_000_000),
    })
    // Triangular on 0.4 .. 0.6: the 5 % quantile is 0.4 + sqrt(0.05 x 0.2 x 0.1).
    const low = (0.4 + Math.sqrt(0.05 * 0.2 * 0.1)) / 0.5
    expect(rungs[0]!.perHome.powerW.low / rungs[0]!.perHome.powerW.expected).toBeCloseTo(low, 4)
  })

  test('of one home do not show that the ownership is uncertain: it has the device or not', () => {
    const at = (ownership: StockItem['ownership']) =>
      estimate({
        items: [
          own({
            drawW: { low: 1, typical: 3, high: 9 },
            ownership,
            countPerOwner: 1,
            meanDrawUncertainty: 0.2,
          }),
        ],
        ladder: ladder(1),
      }).ladder[0]!.powerW
    expect(at({ low: 0.4, typical: 0.6, high: 0.8 })).toEqual(at(0.6))
  })

  test('of cost and emissions take the uncertain price and factor in, shared by all homes', () => {
    const sure = {
      items: [own({ drawW: exactly(4), ownership: 1, countPerOwner: 2, meanDrawUncertainty: 0 })],
      ladder: ladder(1, 1_000_000),
    }
    const { ladder: rungs } = estimate({
      ...sure,
      price: { currency: 'EUR', pricePerKwh: 0.3, relativeUncertainty: 0.2 },
      emissionFactor: { kgCo2ePerKwh: 0.25, relativeUncertainty: 0.1 },
    })
    for (const rung of rungs) {
      expect(width(rung.energyKwhPerYear)).toBe(0)
      expect(width(rung.costPerYear)).toBeCloseTo(0.36, 5)
      expect(width(rung.emissionsKgCo2ePerYear)).toBeCloseTo(0.18, 5)
    }
  })

  test('are zero wide and zero high where nobody has the device', () => {
    const [rung] = estimate({
      items: [own({ drawW: exactly(4), ownership: 0, countPerOwner: 1, meanDrawUncertainty: 0.5 })],
      ladder: ladder(50),
    }).ladder
    expect(rung!.powerW).toEqual({ expected: 0, low: 0, high: 0 })
    expect(rung!.sharedVarianceShare).toBe(0)
  })

  test('hold where nearly every home has the same exact draw', () => {
    const [rung] = estimate({
      items: [own({ drawW: exactly(4), ownership: 0.998, countPerOwner: 1, meanDrawUncertainty: 0 })],
      ladder: ladder(15),
    }).ladder
    expect(rung!.powerW.high).toBeLessThanOrEqual(61)
    expect(rung!.powerW.low).toBeGreaterThan(55)
  })
})

describe('what the answer says', () => {
  test('is the same to the last digit for the same request', () => {
    const stock = { items: [{ category: 'router', ownership: 0.9 }], ladder: ladder(1, 50, 5_000) }
    expect(JSON.stringify(estimate(stock))).toBe(JSON.stringify(estimate(stock)))
  })

  test('names who set the uncertainty of each mean draw: the request, or the assumption by provenance', () => {
    const { items } = estimate({
      items: [
        { category: 'television', ownership: 0.9 },
        { category: 'router', ownership: 0.9 },
        { category: 'router', ownership: 0.9, meanDrawUncertainty: 0.07 },
        { name: 'Invented', drawW: exactly(1), hoursPerWeek: 168, ownership: 0.1 },
      ],
      ladder: ladder(10),
    })
    expect(items.map((item) => [item.meanDrawUncertaintyFrom, item.meanDrawUncertainty])).toEqual([
      ['sample', 0.5],
      ['published', 0.2],
      ['request', 0.07],
      ['given-draw', 0.2],
    ])
  })

  test('tells what must stay powered, and when a cut is more than the rest', () => {
    const found = estimate({
      items: [
        { category: 'freezer', ownership: 0.8 },
        { category: 'television', ownership: 0.4 },
      ],
      ladder: ladder(10),
      cutShare: 0.5,
    })
    expect(found.switchableShare).toBeCloseTo(1 / 3, 5)
    expect(found.warnings.map(({ code }) => code)).toEqual([
      'sample-data',
      'keep-powered-in-stock',
      'cut-above-switchable',
    ])
    expect(found.items.map(({ keepPowered }) => keepPowered)).toEqual(['refrigeration', null])
    expect(found.cautions.map(({ code }) => code)).toEqual(['a-warning-for-all'])
  })

  test('states its assumptions, marks the service’s own, and gives the formulas', () => {
    const { assumptions, formulas } = estimate({
      items: [{ category: 'TV', ownership: 1 }],
      ladder: ladder(1),
    })
    expect(assumptions.join(' ')).toContain('the service’s own assumption, no source')
    expect(formulas.join(' ')).toContain('H (H - 1)')
  })

  test('uses named modes with their hours in place of all', () => {
    const [all, one] = [undefined, [{ mode: 'standby' as const, hoursPerWeek: 70 }]].map(
      (modes) =>
        estimate({ items: [{ category: 'television', ownership: 1, modes }], ladder: ladder(1) }).ladder[0]!
          .energyKwhPerYear,
    )
    expect(one!.expected / all!.expected).toBeCloseTo(0.5, 5)
  })
})
