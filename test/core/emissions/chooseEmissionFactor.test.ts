import { describe, expect, test } from 'vitest'
import { chooseEmissionFactor } from '../../../src/core/emissions/chooseEmissionFactor.ts'
import type { NamedEmissionFactor } from '../../../src/core/emissions/emissionFactor.ts'
import { factorsOfYear } from '../../../src/core/emissions/factorsOfYear.ts'

const factor = (
  code: string,
  year: number,
  other: Partial<NamedEmissionFactor> = {},
): NamedEmissionFactor => ({
  code,
  retired: false,
  regionCode: 'here',
  region: 'Here',
  kind: 'average',
  year,
  factor: { kgCo2ePerKwh: 0.3 },
  gases: 'CO2e',
  source: 'invented for the tests',
  mark: 'M',
  ...other,
})
const FACTORS = [
  factor('here-2020', 2020),
  factor('here-2022-co2', 2022, { gases: 'CO2' }),
  factor('here-2024-co2', 2024, { gases: 'CO2' }),
  factor('here-2024', 2024),
  factor('here-2022-marginal', 2022, { kind: 'marginal' }),
  factor('there-2021', 2021, { regionCode: 'there' }),
]
const known = new Map(FACTORS.map((one) => [one.code, one]))
const chosen = (choice: Parameters<typeof chooseEmissionFactor>[1]) => {
  const found = chooseEmissionFactor(known, choice)
  return found && [found.entry.code, ...found.warnings.map(({ code }) => code)]
}

describe('a factor by region and year', () => {
  test('is that of the year, and of two the one that counts all gases', () => {
    expect(chosen({ region: 'here', year: 2024 })).toEqual(['here-2024'])
    expect(chosen({ region: 'here', year: 2020 })).toEqual(['here-2020'])
  })

  test('that counts CO2 alone says so', () => {
    expect(chosen({ region: 'here', year: 2022 })).toEqual(['here-2022-co2', 'factor-co2-alone'])
  })

  test('without a year is the newest', () => {
    expect(chosen({ region: 'here' })).toEqual(['here-2024'])
  })

  test.each([
    [1999, 'here-2020'],
    [2030, 'here-2024'],
  ])('of %d, which has none, is that of the nearest year, with a warning', (year, code) => {
    expect(chosen({ region: 'here', year })).toEqual([code, 'factor-year-missing'])
  })

  test('of a year between two that are as near is the newer', () => {
    expect(chosen({ region: 'here', year: 2023 })).toEqual(['here-2024', 'factor-year-missing'])
    expect(chosen({ region: 'here', year: 2021 })?.[0]).toBe('here-2022-co2')
  })

  test('never lets average and marginal stand in for each other', () => {
    expect(chosen({ region: 'here', year: 2024, kind: 'marginal' })).toEqual([
      'here-2022-marginal',
      'factor-year-missing',
    ])
    expect(chosen({ region: 'there', kind: 'marginal' })).toBeNull()
    expect(chosen({ region: 'nowhere' })).toBeNull()
  })
})

test('a list of a year has of each region and kind that year or the nearest, and names each that is missing', () => {
  const { factors, warnings } = factorsOfYear(FACTORS, 2022)
  expect(factors.map(({ code }) => code)).toEqual(['here-2022-co2', 'here-2022-marginal', 'there-2021'])
  expect(warnings.map(({ message }) => message)).toEqual([
    'There is no average emission factor of there for 2022; that of 2021, the nearest year, is used.',
  ])
})
