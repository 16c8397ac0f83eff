import { describe, expect, test } from 'vitest'
import { emissionsOf } from '../../src/core/emissions/emissionsOf.ts'
import { drawing, estimateOf } from './support/estimateOf.ts'
import { ROUNDING, relativeError, unitsOff } from './support/printed.ts'

/*
 * Published emission factors through the core: what a megawatt-hour a year emits, in the unit that the source prints.
 * 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959). test/seed/referenceData.test.ts checks that
 * the shipped factors are converted exactly; here they are carried through an estimate and compared with what is printed.
 */
const POUND = 0.45359237
/** A mean power of one megawatt-hour a year. */
const ONE_MWH = drawing(1e6 / 8760)
const kilogramsOf = (emissionFactorCode: string) =>
  estimateOf([ONE_MWH], { emissionFactorCode }).total.emissionsKgCo2ePerYear.expected

/** Emissions of an exact energy, kg. */
function emitted(kwh: number, kgCo2ePerKwh: number, gridLoss?: number): number {
  const energy = { expected: kwh, low: kwh, high: kwh }
  const factor = { kgCo2ePerKwh, ...(gridLoss !== undefined && { gridLoss }) }
  return emissionsOf(energy, [{ coefficient: kwh, factors: [] }], 0.9, factor).expected
}

describe('eGRID (US EPA), lb/MWh as printed', () => {
  test.each([
    ['V2', 'us-2022-co2', '823.1', 'eGRID2022, US average'],
    ['V2', 'us-2023-co2', '767.209', 'eGRID2023 rev. 2, US average, CO2'],
    ['V2', 'us-2023', '770.884', 'eGRID2023 rev. 2, US average, CO2e'],
    ['V2', 'us-camx-2023-co2', '428.464', 'eGRID2023, CAMX, CO2'],
    ['V2', 'us-camx-2023', '429.983', 'eGRID2023, CAMX, CO2e'],
    ['V2', 'us-rfce-2023', '599.170', 'eGRID2023, RFCE, CO2e'],
    ['V2', 'us-prms-2023', '1548.53', 'eGRID2023, PRMS, CO2e'],
    ['V', 'us-akgd-2022-co2', '1052.1', 'eGRID2022, AKGD, method page table 1'],
    ['V', 'us-akgd-2022-non-baseload-co2', '1224.5', 'eGRID2022, AKGD non-baseload, method page table 1'],
    ['V', 'us-akms-2022-co2', '495.8', 'eGRID2022, AKMS, method page table 1'],
    ['V', 'us-akms-2022-non-baseload-co2', '1587.9', 'eGRID2022, AKMS non-baseload, method page table 1'],
    ['V', 'us-aznm-2022-co2', '776.0', 'eGRID2022, AZNM, method page table 1'],
    ['V', 'us-aznm-2022-non-baseload-co2', '1205.2', 'eGRID2022, AZNM non-baseload, method page table 1'],
  ])('[%s] 1 MWh at %s emits %s lb', (_, code, pounds) => {
    // Results carry six significant digits, so that a figure printed with as many may be one off.
    expect(unitsOff(kilogramsOf(code) / POUND, pounds)).toBeLessThan(2)
    expect(relativeError(kilogramsOf(code) / POUND, Number(pounds))).toBeLessThan(5e-6)
  })

  test('[V2, M] CO2, CH4 and N2O by their warming potential add up to CO2e within their rounding', () => {
    // GWP-100 of AR5: CH4 28 (V2), N2O 265 (M); 0.057 and 0.008 lb/MWh of the same row (V2), printed to 0.001 lb/MWh.
    const parts = [767.209, 28 * 0.057, 265 * 0.008].map((pounds) => emitted(1000, (pounds * POUND) / 1000))
    const sum = parts.reduce((all, part) => all + part, 0)
    const rounding = 0.0005 * (28 + 265) * POUND
    expect(Math.abs(sum - kilogramsOf('us-2023'))).toBeLessThan(rounding)
  })

  test('[V, M] the marginal factor of 1,559 lb/MWh is 7.07e-4 t/kWh', () => {
    expect(unitsOff(emitted(1, (1559 * POUND) / 1000) / 1000, '7.07e-4')).toBeLessThan(ROUNDING)
  })

  test('control: pounds taken for kilograms fail the check', () => {
    expect(unitsOff(emitted(1000, 0.767209), '348.00')).toBeGreaterThan(10_000)
  })
})

describe('other grids', () => {
  test.each([
    ['V2', 'uk-2024', '207.05', 'DESNZ 2024'],
    ['C', 'uk-delivered-2024', '225.35', 'DESNZ 2024, generation 207.05 and losses 18.30'],
    ['V2', 'uk-2025', '177', 'DESNZ 2025'],
    ['V2', 'uk-2026', '130.96', 'DESNZ 2026'],
    ['V2', 'au-vic-2024', '770', 'NGA Factors Aug 2024, table 1'],
    ['V', 'fr-2023', '56', 'Ember through Our World in Data, 2023, life cycle'],
    ['V', 'de-2023', '381', 'Ember through Our World in Data, 2023, life cycle'],
    ['V', 'world-2023', '481', 'Ember 2023, statista.com 943137'],
    ['V', 'world-2022', '436', 'Ember 2022, financialexpress.com 3049395'],
  ])('[%s] 1 MWh at %s emits %s kg', (_, code, kilograms) => {
    expect(unitsOff(kilogramsOf(code), kilograms)).toBeLessThan(ROUNDING)
  })

  test('[V2] UK 2026: CO2, CH4 and N2O add up to the factor', () => {
    const parts = [0.12943, 0.00067, 0.00086].map((factor) => emitted(1000, factor))
    expect(
      unitsOff(
        parts.reduce((sum, part) => sum + part, 0),
        '130.96',
      ),
    ).toBeLessThan(ROUNDING)
    expect(unitsOff(kilogramsOf('uk-2026'), '130.96')).toBeLessThan(ROUNDING)
  })

  // V2: DESNZ 2024 prints 0.20705 kg/kWh generated and 0.01830 kg/kWh for what is lost on the way. The loss behind it is
  // their ratio, 0.01830/0.22535 = 8.12 % of generation (C): emissions = energy x factor/(1 - loss), not x (1 + loss).
  test('[V2, C] UK 2024: generation and losses add up when the loss is taken off generation', () => {
    const loss = 0.0183 / (0.20705 + 0.0183)
    expect(unitsOff(emitted(1000, 0.20705, loss), '225.35')).toBeLessThan(ROUNDING)
  })

  test('control: adding the loss on top of what arrives fails the check', () => {
    const loss = 0.0183 / (0.20705 + 0.0183)
    expect(unitsOff(emitted(1000, 0.20705 * (1 + loss)), '225.35')).toBeGreaterThan(100)
  })
})

describe('EU totals', () => {
  // V: (EC) 1275/2008, recital 4: 47 TWh and 19 Mt CO2 in the EU in 2005. C: 19/47 = 0.404 kg/kWh.
  test('[V, C] 47 TWh at 0.404 kg/kWh emit 19 Mt', () => {
    expect(unitsOff(emitted(47e9, 0.404) / 1e9, '19')).toBeLessThan(ROUNDING)
  })

  // V2: SELINA and REMODECE, poletopolecampaign.org: 169 kWh a home and year; 43 TWh and 19 Mt CO2 (0.442 kg/kWh, C).
  test('[V2, C] 43 TWh at 0.442 kg/kWh emit 19 Mt, and at 0.404 do not say 19 Mt to a tenth', () => {
    expect(unitsOff(emitted(43e9, 0.442) / 1e9, '19.0')).toBeLessThan(ROUNDING)
    expect(unitsOff(emitted(43e9, 0.404) / 1e9, '19.0')).toBeGreaterThan(10)
  })
})
