import { describe, expect, test } from 'vitest'
import { checkTariffChoices } from '../../../src/core/money/checkTariffChoices.ts'
import type { Tariff } from '../../../src/core/money/tariff.ts'
import { tariffFaults } from '../../../src/core/money/tariffFaults.ts'
import { DAY_AND_NIGHT, FALLING, RISING, TWO_PART } from './tariffs.ts'

const faultsOf = (tariff: Tariff) =>
  tariffFaults(tariff).map(({ path, code }) => `/${path.join('/')} ${code}`)
const season = (from: string, to: string) => ({ from, to, blocks: [{ pricePerKwh: 1 }] })

describe('a tariff', () => {
  test.each([RISING, FALLING, DAY_AND_NIGHT, TWO_PART] as const)(
    'of kind $kind that is right has no fault',
    (tariff) => {
      expect(faultsOf(tariff)).toEqual([])
    },
  )

  test.each<[string, Tariff, string[]]>([
    [
      'blocks that fall back',
      {
        ...RISING,
        blocks: [{ upToKwh: 200, pricePerKwh: 1 }, { upToKwh: 200, pricePerKwh: 1 }, { pricePerKwh: 1 }],
      },
      ['/blocks/1/upToKwh blocks-out-of-order'],
    ],
    [
      'a last block that ends, and one before it that does not',
      { ...RISING, blocks: [{ pricePerKwh: 1 }, { upToKwh: 9, pricePerKwh: 1 }] },
      ['/blocks/0/upToKwh required', '/blocks/1/upToKwh last-block-ends'],
    ],
    [
      'seasons that share a day',
      { ...RISING, seasons: [season('11-01', '02-01'), season('02-01', '03-01')] },
      ['/seasons seasons-overlap'],
    ],
    [
      'seasons of blocks by the year',
      { ...RISING, per: 'year', seasons: [season('01-01', '02-01')] },
      ['/seasons seasons-by-year'],
    ],
    [
      'a day that no year has',
      { ...RISING, seasons: [season('02-30', '03-31')] },
      ['/seasons/0/from no-such-date'],
    ],
    [
      'blocks by the year beside blocks by the month',
      {
        kind: 'two-part',
        currency: 'EUR',
        components: [
          { ...RISING, name: 'a' },
          { ...RISING, per: 'year', name: 'b' },
        ],
      },
      ['/components mixed-periods'],
    ],
    [
      'two lines of one name',
      { ...RISING, fixedCharges: [{ name: 'energy', amount: 1, per: 'day' }] },
      ['/fixedCharges/0/name name-twice'],
    ],
    [
      'a tax on a line that there is not',
      { ...RISING, taxes: [{ name: 't', percent: 1, on: ['x'] }] },
      ['/taxes/0/on/0 unknown-line'],
    ],
    ['a date that there is not', { ...RISING, validFrom: '2025-02-29' }, ['/validFrom no-such-date']],
    [
      'a holiday that there is not',
      { ...DAY_AND_NIGHT, holidays: ['2025-13-01'] },
      ['/holidays/0 no-such-date'],
    ],
    [
      'a clock of no place',
      { ...DAY_AND_NIGHT, timeZone: 'Europe/Nowhere' },
      ['/timeZone unknown-time-zone'],
    ],
    [
      'holidays of another year than the one that is counted',
      { ...DAY_AND_NIGHT, referenceYear: 2024 },
      ['/holidays holidays-outside-year'],
    ],
    [
      'hours that end when they begin, or over midnight',
      {
        ...DAY_AND_NIGHT,
        bands: [
          {
            name: 'night',
            pricePerKwh: 0.2,
            hours: [
              { from: '06:00', to: '06:00' },
              { from: '22:00', to: '06:00' },
            ],
          },
        ],
      },
      ['/bands/0/hours/0/to hours-out-of-order', '/bands/0/hours/1/to hours-out-of-order'],
    ],
    [
      'a last day before its first',
      { ...RISING, validFrom: '2025-06-01', validTo: '2025-05-31' },
      ['/validTo dates-out-of-order'],
    ],
  ])('with %s is refused at its place', (_, tariff, faults) => {
    expect(faultsOf(tariff)).toEqual(faults)
  })
})

test('a tariff may hold on a single day, and its holidays go with its own year', () => {
  expect(faultsOf({ ...RISING, validFrom: '2025-06-01', validTo: '2025-06-01' })).toEqual([])
  expect(faultsOf({ ...DAY_AND_NIGHT, referenceYear: 2024, holidays: ['2024-12-25', '2025-12-25'] })).toEqual(
    [],
  )
})

describe('tariffs to compare', () => {
  const kept = new Map(
    (['EUR', 'USD'] as const).map((currency) => [
      currency.toLowerCase(),
      {
        code: currency.toLowerCase(),
        name: currency,
        retired: false,
        tariff: { kind: 'flat', currency, pricePerKwh: 0.3 } as const,
        source: 'invented sample',
        sampleData: true,
      },
    ]),
  )
  const found = (...tariffs: unknown[]) =>
    checkTariffChoices({ tariffs }, kept).map(({ pointer, code }) => `${pointer} ${code}`)

  test('are known by their codes; one that is not is told those that are', () => {
    expect(found('eur')).toEqual([])
    expect(checkTariffChoices({ tariffs: ['eur', 'yen'] }, kept)).toEqual([
      {
        pointer: '/tariffs/1',
        code: 'unknown-code',
        message: 'There is no tariff "yen". Known are: eur, usd.',
      },
    ])
  })

  test('are in the currency of the first, whether they are kept or given', () => {
    const inline = (currency: unknown) => ({ kind: 'flat', currency, pricePerKwh: 0.2 })
    expect(found('eur', inline('EUR'))).toEqual([])
    expect(found('eur', inline('USD'), 'usd')).toEqual([
      '/tariffs/1 mixed-currencies',
      '/tariffs/2 mixed-currencies',
    ])
    expect(found(inline(7), 'unheard-of', 'usd', inline('EUR'))).toEqual([
      '/tariffs/1 unknown-code',
      '/tariffs/3 mixed-currencies',
    ])
  })

  test('pay for nothing that is fed into the grid and charge no demand, by kind or by field', () => {
    expect(found({ kind: 'feed-in', currency: 'EUR', demandCharge: 3 })).toEqual([
      '/tariffs/0/kind not-priced',
      '/tariffs/0/demandCharge not-priced',
    ])
    expect(found({ kind: 5, currency: 'EUR' })).toEqual([])
  })
})

test('what is no list of tariffs has no fault of the trade: its shape says so already', () => {
  for (const raw of [null, [], {}, { tariffs: 'x' }, { tariffs: [null, 3, {}] }])
    expect(checkTariffChoices(raw, new Map())).toEqual([])
})
