import { describe, expect, test } from 'vitest'
import { annualBill } from '../../../src/core/money/annualBill.ts'
import { Money } from '../../../src/core/money/money.ts'
import { basisInWords } from '../../../src/core/money/priceBasis.ts'
import { priceWarnings } from '../../../src/core/money/priceWarnings.ts'
import type { Tariff } from '../../../src/core/money/tariff.ts'
import { DAY_AND_NIGHT, RISING } from './tariffs.ts'

const FLAT = { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 } as const satisfies Tariff

describe('how standby was priced, in words', () => {
  test('names the year that was counted with its days and hours, a leap year among them', () => {
    expect(basisInWords('one-price', DAY_AND_NIGHT)).toContain(
      'Counted on 2025, a year of 365 days (8760 h).',
    )
    for (const [year, days] of [
      [2024, '366 days (8784 h)'],
      [2000, '366 days (8784 h)'],
      [2100, '365 days (8760 h)'],
    ] as const)
      expect(basisInWords('margin', { ...RISING, referenceYear: year })).toContain(
        `Counted on ${year}, a year of ${days}.`,
      )
  })

  test('names no year where none was counted', () => {
    expect(basisInWords('one-price', FLAT)).not.toContain('Counted on')
  })
})

describe('a price of a kWh that depends on a use that is not known', () => {
  const unknown = {
    perKwh: new Money(0.175),
    relativeUncertainty: 0.4,
    curve: null,
    basis: 'use-unknown',
  } as const

  test('is warned of with its bounds, and with what to do', () => {
    const [warning] = priceWarnings(RISING, unknown)
    expect(warning!.code).toBe('annual-use-unknown')
    expect(warning!.message).toContain(
      'any from 0.1050 to 0.2450 USD counts as equally likely. Give annualUseKwh',
    )
  })

  test('leaves a minimum charge out, and says so', () => {
    const [warning] = priceWarnings({ ...RISING, minimumCharge: { amount: 1, per: 'day' } }, unknown)
    expect(warning!.message).toContain('equally likely. The minimum charge is left out. Give annualUseKwh')
  })

  test('is the only one that is warned of', () => {
    for (const basis of ['one-price', 'margin'] as const)
      expect(priceWarnings(RISING, { ...unknown, basis })).toEqual([])
  })
})

test('a bill by the year counts a price by time over all hours of the year', () => {
  const tariff: Tariff = {
    kind: 'two-part',
    currency: 'EUR',
    components: [
      {
        name: 'energy',
        kind: 'block',
        per: 'year',
        blocks: [{ upToKwh: 1000, pricePerKwh: 0.1 }, { pricePerKwh: 0.2 }],
      },
      {
        name: 'network',
        kind: 'time-of-use',
        timeZone: 'UTC',
        bands: [{ name: 'winter', pricePerKwh: 0.3, seasons: [{ from: '01-01', to: '03-14' }] }],
        otherwisePricePerKwh: 0.1,
      },
    ],
  }
  // 73 of 365 days at 0.3, the others at 0.1: 0.14 on average.
  expect(annualBill(tariff, 3000, null).toNumber()).toBeCloseTo(1000 * 0.1 + 2000 * 0.2 + 3000 * 0.14, 9)
})
