import { describe, expect, test } from 'vitest'
import { catalogueOf } from '../../../src/core/catalogue/catalogue.ts'
import type { EstimateSettings } from '../../../src/core/estimate/settings.ts'
import { compareTariffs, type TariffComparisonRequest } from '../../../src/core/estimate/tariffComparison.ts'
import type { NamedTariff, Tariff } from '../../../src/core/money/tariff.ts'
import { testCategories } from '../../helpers/testCatalogue.ts'
import { testSettings } from '../../helpers/testSettings.ts'

const flat = (pricePerKwh: number): Tariff => ({ kind: 'flat', currency: 'EUR', pricePerKwh })
const named = (code: string, more: Partial<NamedTariff> = {}): NamedTariff => ({
  code,
  name: `The tariff ${code}`,
  retired: false,
  tariff: flat(0.2),
  source: 'a price sheet of the tests',
  sampleData: false,
  ...more,
})
const settings: EstimateSettings = {
  ...testSettings,
  tariffs: new Map(
    [named('cheap'), named('old', { retired: true }), named('made-up', { sampleData: true })].map((one) => [
      one.code,
      one,
    ]),
  ),
}
/** A router has a published draw, so that nothing but a tariff can be sample data. */
const compare = (tariffs: TariffComparisonRequest['tariffs'], more: Partial<TariffComparisonRequest> = {}) =>
  compareTariffs(
    { devices: [{ category: 'router' }], ...more, tariffs },
    catalogueOf(1, testCategories),
    settings,
  )

describe('tariffs that are compared', () => {
  test('are each held against the first, for the same energy', () => {
    const { tariffs, energyKwhPerYear } = compare([flat(0.3), flat(0.2), flat(0.4)])
    const [first, cheaper, dearer] = tariffs.map(({ differencePerYear }) => differencePerYear.expected)
    expect(first).toBe(0)
    expect(cheaper).toBeCloseTo(-0.1 * energyKwhPerYear.expected, 4)
    expect(dearer).toBeCloseTo(0.1 * energyKwhPerYear.expected, 4)
    expect(tariffs[0]!.differencePerYear.amounts).toEqual({ expected: '0.00', low: '0.00', high: '0.00' })
  })

  test('say which is kept under a code, and which the request gave itself', () => {
    const [kept, given] = compare(['cheap', flat(0.3)]).tariffs
    expect(kept).toMatchObject({
      tariffCode: 'cheap',
      name: 'The tariff cheap',
      source: 'a price sheet of the tests',
    })
    expect(given).toMatchObject({ tariffCode: null, name: null, source: 'given in the request' })
  })

  test('are sample data where one of them or the draw of a device is', () => {
    expect(compare(['cheap', flat(0.3)]).sampleData).toBe(false)
    expect(compare(['cheap', 'made-up']).sampleData).toBe(true)
    expect(compare(['cheap'], { devices: [{ category: 'television' }] }).sampleData).toBe(true)
  })

  test('have the whole bill of a year where the use of the household is known, and none where it is not', () => {
    expect(compare([flat(0.3)], { annualUseKwh: 3000 }).tariffs[0]!.annualBill).toBe('900.00')
    expect(compare([flat(0.3)]).tariffs[0]!.annualBill).toBeNull()
  })

  test('warn of one that is retired, by its code, and of none that is in use', () => {
    const [old, cheap] = compare(['old', 'cheap']).tariffs
    expect(old!.warnings.map(({ code }) => code)).toEqual(['tariff-retired'])
    expect(old!.warnings[0]!.message).toContain('old')
    expect(cheap!.warnings).toEqual([])
  })
})
