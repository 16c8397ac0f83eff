import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { annualBill } from '../../../src/core/money/annualBill.ts'
import { billingPeriods } from '../../../src/core/money/billingPeriods.ts'
import { billOf } from '../../../src/core/money/billOf.ts'
import { marginalCost } from '../../../src/core/money/marginalCost.ts'
import { amountOf, Money } from '../../../src/core/money/money.ts'
import { priceRange } from '../../../src/core/money/priceRange.ts'
import type { BlockTariff, Tariff } from '../../../src/core/money/tariff.ts'
import { DAY_AND_NIGHT, FALLING, RISING, TWO_PART } from './tariffs.ts'

const monthOf = (tariff: Tariff, month: number) => billingPeriods(tariff, null)[month - 1]!
/** What thirty digits leave of a third of a day. */
const NOISE = 1e-20
const cents = fc.integer({ min: 0, max: 100 }).map((n) => n / 100)

/** Any blocks, with minimum, taxes, fixed charges and rounding. */
const tariffs: fc.Arbitrary<Tariff> = fc
  .record({
    steps: fc.array(fc.tuple(fc.integer({ min: 1, max: 300 }), cents), { maxLength: 4 }),
    last: cents,
    per: fc.constantFrom('day', 'month', 'year'),
    season: fc.option(cents),
    minimum: fc.option(cents),
    tax: fc.option(fc.integer({ min: 0, max: 30 })),
    rounding: fc.constantFrom('none', 'half-up', 'half-even'),
  })
  .map(({ steps, last, per, season, minimum, tax, rounding }): BlockTariff => {
    let end = 0
    const blocks = [
      ...steps.map(([width, pricePerKwh]) => ({ upToKwh: (end += width), pricePerKwh })),
      { pricePerKwh: last },
    ]
    return {
      kind: 'block',
      currency: 'EUR',
      per,
      blocks,
      rounding,
      ...(season !== null &&
        per !== 'year' && { seasons: [{ from: '11-10', to: '02-20', blocks: [{ pricePerKwh: season }] }] }),
      ...(minimum !== null && { minimumCharge: { amount: minimum, per: 'day' } }),
      ...(tax !== null && { taxes: [{ name: 'tax', percent: tax }] }),
      fixedCharges: [{ name: 'meter', amount: 3.33, per: 'month' }],
    }
  })

describe('a bill', () => {
  test('never falls when more is used', () => {
    fc.assert(
      fc.property(
        tariffs,
        fc.double({ min: 0, max: 20_000, noNaN: true }),
        fc.double({ min: 0, max: 5_000, noNaN: true }),
        (tariff, kwh, more) => {
          expect(annualBill(tariff, kwh + more, null).gte(annualBill(tariff, kwh, null))).toBe(true)
        },
      ),
      { numRuns: 200 },
    )
  })

  test('with no use is the fixed charges and the minimum, with their taxes', () => {
    const tariff: Tariff = {
      ...RISING,
      minimumCharge: { amount: 0.2, per: 'day' },
      fixedCharges: [{ name: 'meter', amount: 5, per: 'month' }],
      taxes: [{ name: 'tax', percent: 10 }],
    }
    expect(annualBill(tariff, 0, null).toString()).toBe(String((365 * 0.2 + 60) * 1.1))
    expect(annualBill(RISING, 0, null).toString()).toBe('0')
  })

  test('has no jump at the edge of a block', () => {
    const at = (kwh: number) => billOf(RISING, monthOf(RISING, 1), new Money(kwh)).total
    expect(at(200).toString()).toBe('20')
    expect(at(200.001).minus(at(200)).toString()).toBe('0.00015')
    expect(at(200).minus(at(199.999)).toString()).toBe('0.0001')
  })

  test('charges a tax on the lines that it names alone, and never on another tax', () => {
    const tariff: Tariff = {
      ...TWO_PART,
      taxes: [
        { name: 'levy', percent: 50, on: ['power cost'] },
        { name: 'vat', percent: 10 },
      ],
    }
    const { lines, taxes } = billOf(tariff, monthOf(tariff, 1), new Money(100))
    const [energy, power, network, meter] = lines.map(({ amount }) => amount)
    expect([energy, power, meter].map(String)).toEqual(['10', '5', '1'])
    expect(taxes[0]!.amount.toString()).toBe('2.5')
    expect(taxes[1]!.amount.toString()).toBe(network!.plus(16).div(10).toString())
  })

  test('of half a month in a season has blocks in proportion to its days', () => {
    const tariff: Tariff = {
      ...RISING,
      seasons: [{ from: '04-16', to: '04-30', blocks: [{ pricePerKwh: 1 }] }],
    }
    // April: 15 days and 150 kWh at blocks of half the size, 100 at 0.1 and 50 at 0.15; 15 days at 1.
    expect(billOf(tariff, monthOf(tariff, 4), new Money(300)).total.toString()).toBe('167.5')
  })

  test.each([
    [2025, 28],
    [2024, 29],
  ])('of February %d counts %d days of blocks by the day', (referenceYear, days) => {
    const tariff: Tariff = {
      ...RISING,
      per: 'day',
      blocks: [{ upToKwh: 1, pricePerKwh: 0.1 }, { pricePerKwh: 1 }],
      referenceYear,
    }
    expect(billOf(tariff, monthOf(tariff, 2), new Money(days)).total.toString()).toBe(String(days / 10))
    expect(
      billOf(tariff, monthOf(tariff, 2), new Money(days + 1))
        .total.minus(days / 10)
        .toString(),
    ).toBe('1')
  })

  test('goes by the months where the household’s use by month is known', () => {
    const all = annualBill(RISING, 3000, [1, ...Array.from({ length: 11 }, () => 0)])
    // All of it in January: 20 + 45 + 2,500 x 0.25.
    expect(all.toString()).toBe('690')
  })
})

describe('amounts', () => {
  test.each([
    ['0.125', 'EUR', '0.12'],
    ['0.135', 'EUR', '0.14'],
    ['1.5', 'JPY', '2'],
    ['2.5', 'JPY', '2'],
    ['0.0015', 'KWD', '0.002'],
    ['0.0025', 'KWD', '0.002'],
    ['-0.001', 'EUR', '0.00'],
    ['1e15', 'USD', '1000000000000000.00'],
  ])('%s %s is shown as %s', (value, currency, shown) => {
    expect(amountOf(new Money(value), currency)).toBe(shown)
  })
})

describe('standby at the margin', () => {
  const uses = fc.double({ min: 0, max: 20_000, noNaN: true })
  const loads = fc.double({ min: 0, max: 3_000, noNaN: true })

  test('is the bill with it less the bill without it', () => {
    fc.assert(
      fc.property(tariffs, uses, loads, (rounded, use, standby) => {
        const tariff = { ...rounded, rounding: 'none' } as const
        const with_ = annualBill(tariff, use + standby, null)
        const difference = with_.minus(annualBill(tariff, use, null))
        const margin = marginalCost(tariff, use + standby, null)(standby)
        expect(margin.minus(difference).abs().lt(1e-9)).toBe(true)
      }),
      { numRuns: 200 },
    )
  })

  test('grows with the energy, and adds up: the margin of two parts, one after the other, is that of both', () => {
    fc.assert(
      fc.property(tariffs, uses, loads, loads, (tariff, use, first, second) => {
        const all = first + second
        const whole = marginalCost(tariff, use + all, null)
        const last = whole(first)
        const rest = marginalCost(tariff, use + second, null)(second)
        expect(whole(all).minus(last).minus(rest).abs().lt(1e-6)).toBe(true)
        expect(whole(all).plus(NOISE).gte(last)).toBe(true)
      }),
      { numRuns: 200 },
    )
  })

  test('of nothing is nothing', () => {
    fc.assert(
      fc.property(tariffs, uses, (tariff, use) => {
        expect(marginalCost(tariff, use, null)(0).isZero()).toBe(true)
      }),
    )
  })

  test('lies between the cheapest and the dearest block where there is no minimum', () => {
    fc.assert(
      fc.property(tariffs, uses, fc.double({ min: 1, max: 3_000, noNaN: true }), (given, use, standby) => {
        const tariff = { ...given, minimumCharge: undefined } as Tariff
        const { least, most } = priceRange(tariff)
        const price = marginalCost(tariff, use, null)(standby).div(standby)
        expect(price.gte(least.minus(1e-9)) && price.lte(most.plus(1e-9))).toBe(true)
      }),
    )
  })

  test('is dearer than the average price on rising blocks, and cheaper on falling ones', () => {
    const average = (tariff: Tariff) => annualBill(tariff, 12 * 600, null).div(12 * 600)
    const margin = (tariff: Tariff) => marginalCost(tariff, 12 * 600, null)(120).div(120)
    expect(margin(RISING).toNumber()).toBe(0.25)
    expect(average(RISING).lt(0.16)).toBe(true)
    expect(margin(FALLING).toNumber()).toBe(0.2)
    expect(average(FALLING).gt(0.21)).toBe(true)
  })

  test('below the minimum charge costs nothing', () => {
    const tariff: Tariff = { ...FALLING, minimumCharge: { amount: 100, per: 'month' } }
    expect(marginalCost(tariff, 1200, null)(300).isZero()).toBe(true)
  })

  test('of more than the household uses is priced from the first block on', () => {
    expect(marginalCost(FALLING, 0, null)(120).toNumber()).toBe(36)
  })
})

test('the price of a time-of-use tariff is the same at any margin', () => {
  const price = marginalCost(DAY_AND_NIGHT, 0, null)(1)
  const other = marginalCost(DAY_AND_NIGHT, 9000, null)(500).div(500)
  expect(price.minus(other).abs().lt(1e-12)).toBe(true)
  // Months count by their days here and by their hours there; March has one hour less, October one more.
  expect(priceRange(DAY_AND_NIGHT).least.minus(price).abs().lt(1e-5)).toBe(true)
})
