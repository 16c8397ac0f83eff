import { describe, expect, test } from 'vitest'
import { billingPeriods } from '../../src/core/money/billingPeriods.ts'
import { billOf } from '../../src/core/money/billOf.ts'
import { marginalCost } from '../../src/core/money/marginalCost.ts'
import { amountOf, Money } from '../../src/core/money/money.ts'
import type { BlockTariff, TwoPartTariff } from '../../src/core/money/tariff.ts'

/** The bill for one month's energy, as it is printed. */
function printedBill(tariff: BlockTariff | TwoPartTariff, month: number, kwh: number) {
  const { lines, taxes, total } = billOf(tariff, billingPeriods(tariff, null)[month - 1]!, new Money(kwh))
  return {
    lines: [...lines, ...taxes].map(({ amount }) => amountOf(amount, tariff.currency)),
    total: amountOf(total, tariff.currency),
  }
}

/*
 * Worked bills of a municipal utility, City of Seymour, cityofseymour.org bill comparison (V): falling blocks of energy,
 * a flat cost of power on top, a customer charge, 1 % tax, each line rounded half up. Summer has a block more.
 */
const SEYMOUR = {
  kind: 'two-part',
  currency: 'USD',
  components: [
    {
      name: 'energy',
      kind: 'block',
      per: 'month',
      blocks: [
        { upToKwh: 250, pricePerKwh: 0.064 },
        { upToKwh: 700, pricePerKwh: 0.049 },
        { pricePerKwh: 0.0446 },
      ],
      // The months of summer are not stated with the bills; these are for the test.
      seasons: [
        {
          from: '06-01',
          to: '09-30',
          blocks: [
            { upToKwh: 250, pricePerKwh: 0.064 },
            { upToKwh: 700, pricePerKwh: 0.049 },
            { upToKwh: 1250, pricePerKwh: 0.0475 },
            { pricePerKwh: 0.0446 },
          ],
        },
      ],
    },
    { name: 'power cost', kind: 'flat', pricePerKwh: 0.085 },
  ],
  fixedCharges: [{ name: 'customer charge', amount: 7.5, per: 'month' }],
  taxes: [{ name: 'tax', percent: 1 }],
  rounding: 'half-up',
} as const satisfies TwoPartTariff

describe('City of Seymour, worked bills', () => {
  test('[V] winter, 1,200 kWh: every line and 171.55', () => {
    expect(printedBill(SEYMOUR, 1, 1200)).toEqual({
      lines: ['16.00', '22.05', '22.30', '102.00', '7.50', '1.70'],
      total: '171.55',
    })
  })

  test('[V] summer, 2,000 kWh: every line and 277.88', () => {
    expect(printedBill(SEYMOUR, 7, 2000)).toEqual({
      lines: ['16.00', '22.05', '26.13', '33.45', '170.00', '7.50', '2.75'],
      total: '277.88',
    })
  })

  test('[C] without rounding the summer bill is 275.125 and 1 %, 277.87625', () => {
    const exact = { ...SEYMOUR, rounding: 'none' } as const
    const { total } = billOf(exact, billingPeriods(exact, null)[6]!, new Money(2000))
    expect(total.toString()).toBe('277.87625')
  })

  test('control: halves rounded to even give another line than is printed', () => {
    expect(printedBill({ ...SEYMOUR, rounding: 'half-even' }, 7, 2000).lines[2]).toBe('26.12')
  })

  test('[C] the margin of one more kWh in winter is (0.0446 + 0.085) x 1.01 = 0.130896', () => {
    const winterOnly = {
      ...SEYMOUR,
      components: [{ ...SEYMOUR.components[0], seasons: [] }, SEYMOUR.components[1]],
    }
    expect(marginalCost(winterOnly, 12 * 1200, null)(1).toNumber()).toBe(0.130896)
  })
})

/* Rising blocks: 3 cents for the first 200 kWh, 5 to 500, 8 above (rates V, regulationbodyofknowledge.org; bills C). */
const RISING: BlockTariff = {
  kind: 'block',
  currency: 'USD',
  per: 'month',
  blocks: [{ upToKwh: 200, pricePerKwh: 0.03 }, { upToKwh: 500, pricePerKwh: 0.05 }, { pricePerKwh: 0.08 }],
}

describe('rising blocks', () => {
  test.each([
    [100, '3.00'],
    [200, '6.00'],
    [350, '13.50'],
    [500, '21.00'],
    [700, '37.00'],
  ])('[V, C] %d kWh cost %s', (kwh, bill) => {
    expect(printedBill(RISING, 1, kwh).total).toBe(bill)
  })
})

/* Two blocks in summer: up to 800 kWh 6.380 cents, above 9.024 cents, June to September (V, svec.coop). */
const SEASONAL: BlockTariff = {
  kind: 'block',
  currency: 'USD',
  per: 'month',
  blocks: [{ pricePerKwh: 0.0638 }],
  seasons: [
    { from: '06-01', to: '09-30', blocks: [{ upToKwh: 800, pricePerKwh: 0.0638 }, { pricePerKwh: 0.09024 }] },
  ],
}

describe('seasonal blocks', () => {
  // C: 800 x 0.0638 + 200 x 0.09024 = 69.088; 1,000 x 0.0638 = 63.80. One price out of season is an assumption of the test.
  test.each([
    [5, '63.80'],
    [6, '69.09'],
    [9, '69.09'],
    [10, '63.80'],
  ])('[V, C] 1,000 kWh in month %d cost %s', (month, bill) => {
    expect(printedBill(SEASONAL, month, 1000).total).toBe(bill)
  })
})

/* Minimum charge: the larger of the energy charge and 0.15 a day; 0.0382 to 300 kWh, 0.0673 above (V, docs.oracle.com, rates). */
const MINIMUM: BlockTariff = {
  kind: 'block',
  currency: 'USD',
  per: 'month',
  blocks: [{ upToKwh: 300, pricePerKwh: 0.0382 }, { pricePerKwh: 0.0673 }],
  minimumCharge: { amount: 0.15, per: 'day' },
}

describe('minimum charge', () => {
  // C: April has 30 days, 4.50; 100 kWh are 3.82, 200 kWh 7.64, 400 kWh 11.46 + 6.73.
  test.each([
    [0, '4.50'],
    [100, '4.50'],
    [200, '7.64'],
    [400, '18.19'],
  ])('[V, C] %d kWh in April cost %s', (kwh, bill) => {
    expect(printedBill(MINIMUM, 4, kwh).total).toBe(bill)
  })
})
