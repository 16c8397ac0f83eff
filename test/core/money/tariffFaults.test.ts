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
  ])('with %s is refused at its place', (_, tariff, faults) => {
    expect(faultsOf(tariff)).toEqual(faults)
  })
})

test('what is no list of tariffs has no fault of the trade: its shape says so already', () => {
  for (const raw of [null, [], {}, { tariffs: 'x' }, { tariffs: [null, 3, {}] }])
    expect(checkTariffChoices(raw, new Map())).toEqual([])
})
