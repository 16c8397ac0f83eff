import { expect, test } from 'vitest'
import type { FactorKind, NamedEmissionFactor } from '../../../src/core/emissions/emissionFactor.ts'
import { planSavings } from '../../../src/core/savings/planSavings.ts'
import type { SavingsRequest } from '../../../src/core/savings/savingsRequest.ts'
import { testSettings } from '../../helpers/testSettings.ts'
import { catalogue, television } from './household.ts'

const factor = (code: string, regionCode: string, kind: FactorKind, year: number, kgCo2ePerKwh: number) =>
  ({
    code,
    regionCode,
    region: regionCode,
    kind,
    year,
    factor: { kgCo2ePerKwh },
    gases: 'CO2e',
    source: 'invented for the tests',
    mark: 'M',
    retired: false,
  }) satisfies NamedEmissionFactor
const emissionFactors = new Map(
  [
    factor('hills', 'hills', 'average', 2023, 0.4),
    factor('hills-marginal', 'hills', 'marginal', 2022, 0.6),
    factor('coast', 'coast', 'average', 2023, 0.3),
  ].map((one) => [one.code, one]),
)
const settings = { ...testSettings, emissionFactors, defaultEmissionFactorCode: 'coast' }

function usedBy(request: Partial<SavingsRequest>) {
  const measures = [{ code: 'habit', persistence: 1 }]
  const plan = planSavings(
    { devices: [television], ...request, plan: { measures, ...request.plan } },
    catalogue,
    settings,
  )
  // 26 kWh a year.
  const perKwh = plan.measures[0]!.figures.savedEmissionsKgCo2ePerYear.expected / 26
  const codes = plan.warnings.map(({ code }) => code).filter((code) => code.includes('factor'))
  return [plan.savingsFactor.kind, Number(perKwh.toFixed(6)), ...codes]
}

test('the marginal factor that is given counts, whatever the household’s own', () => {
  const marginalFactor = { kgCo2ePerKwh: 0.9, gridLoss: 0.1 }
  expect(usedBy({ plan: { marginalFactor } })).toEqual(['marginal', 1])
  expect(usedBy({ plan: { marginalFactorCode: 'hills-marginal' } })).toEqual(['marginal', 0.6])
})

test('else the published marginal factor of the same grid, and it says where that is of another year', () => {
  expect(usedBy({ emissionFactorCode: 'hills' })).toEqual(['marginal', 0.6, 'factor-year-missing'])
  expect(usedBy({ emissionFactorFor: { region: 'hills', kind: 'marginal' } })).toEqual(['marginal', 0.6])
})

test('else the household’s own, with a warning', () => {
  expect(usedBy({})).toEqual(['average', 0.3, 'no-marginal-factor'])
  expect(usedBy({ emissionFactor: { kgCo2ePerKwh: 0.2 } })).toEqual([null, 0.2, 'no-marginal-factor'])
})

test('an uncertain factor widens the interval of the emissions alone', () => {
  const marginalFactor = { kgCo2ePerKwh: 1, relativeUncertainty: 0.2 }
  const measures = [{ code: 'habit', persistence: 1 }]
  const { figures } = planSavings(
    { devices: [television], plan: { measures, marginalFactor } },
    catalogue,
    settings,
  ).measures[0]!
  const { expected, low, high } = figures.savedEmissionsKgCo2ePerYear
  expect(expected).toBe(26)
  // Rectangular on +-20 %: 5th and 95th percentile at -18 % and +18 %.
  expect(Math.abs(low - 26 * 0.82)).toBeLessThan(0.15)
  expect(Math.abs(high - 26 * 1.18)).toBeLessThan(0.15)
  expect(figures.savedKwhPerYear.low).toBe(figures.savedKwhPerYear.high)
})
