import { Decimal } from 'decimal.js'
import { describe, expect, test } from 'vitest'
import { chooseEmissionFactor } from '../../src/core/emissions/chooseEmissionFactor.ts'
import { readSeed } from '../../src/readSeed.ts'
import { drawing, estimateOf } from './support/estimateOf.ts'
import { ROUNDING, unitsOff } from './support/printed.ts'

/*
 * Published factors as they are asked for: by region, year and kind. Figures and marks as in emissionConversions.test.ts;
 * 1 lb = 0.45359237 kg exactly.
 */
const { emissionFactors } = await readSeed()
const ONE_MWH = drawing(1e6 / 8760)
const POUND = 0.45359237
const emitted = (region: string, year: number, kind: 'average' | 'marginal' = 'average') =>
  estimateOf([ONE_MWH], { emissionFactorFor: { region, year, kind } })

describe('average and marginal', () => {
  // V: US EPA, eGRID2022, method page table 1, total output and non-baseload, lb CO2/MWh.
  test.each([
    ['us-akgd', 1052.1, 1224.5],
    ['us-akms', 495.8, 1587.9],
    ['us-aznm', 776.0, 1205.2],
  ])('[V] %s 2022: %d lb/MWh used, %d lb/MWh saved', (region, average, marginal) => {
    const used = emitted(region, 2022).total.emissionsKgCo2ePerYear.expected / POUND
    const saved = emitted(region, 2022, 'marginal').total.emissionsKgCo2ePerYear.expected / POUND
    expect(unitsOff(used, average.toFixed(1))).toBeLessThan(ROUNDING)
    expect(unitsOff(saved, marginal.toFixed(1))).toBeLessThan(ROUNDING)
  })

  test('[V] an answer names which of them it used, the year and the source', () => {
    expect(emitted('us-akgd', 2022, 'marginal').used.emissionFactorSource).toMatch(
      /^us-akgd-2022-non-baseload-co2 \(.*, 2022, marginal\): US EPA eGRID2022, non-baseload/,
    )
  })
})

describe('a year that is missing', () => {
  // V2: DESNZ 2026, 0.12943 CO2 + 0.00067 CH4 + 0.00086 N2O = 0.13096 kg CO2e/kWh.
  test('[V2] the UK in 2030 is answered with 2026, the sum of its three gases, and a warning', () => {
    const { total, used, warnings } = emitted('uk', 2030)
    const sum = new Decimal('0.12943').plus('0.00067').plus('0.00086').times(1000)
    expect(total.emissionsKgCo2ePerYear.expected).toBe(sum.toNumber())
    expect(used.emissionFactorSource).toContain('uk-2026')
    expect(warnings.map(({ code }) => code)).toContain('factor-year-missing')
  })

  test('[V2] the UK in 2024 is answered with 2024 and no warning', () => {
    const { total, warnings } = emitted('uk', 2024)
    expect(total.emissionsKgCo2ePerYear.expected).toBe(207.05)
    expect(warnings.map(({ code }) => code)).not.toContain('factor-year-missing')
  })
})

test('there are factors for the US and subregions, the UK, Australia’s states, several EU countries and the world', () => {
  const regions = ['us', 'us-camx', 'us-rfce', 'us-erct', 'uk', 'fr', 'de', 'at', 'dk', 'ie', 'world']
  const states = ['nsw-act', 'vic', 'qld', 'sa', 'wa-swis', 'tas', 'nt-dkis'].map((state) => `au-${state}`)
  const missing = [...regions, ...states].filter(
    (region) => !chooseEmissionFactor(emissionFactors, { region }),
  )
  expect(missing).toEqual([])
})
