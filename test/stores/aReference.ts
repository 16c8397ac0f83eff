import type { NamedEmissionFactor } from '../../src/core/emissions/emissionFactor.ts'
import type { NamedTariff } from '../../src/core/money/tariff.ts'
import type { EntryOf } from '../../src/core/reference/referenceEntry.ts'

/** An invented tariff for the tests of the stores. */
export const aTariff = (code: string, changes: Partial<NamedTariff> = {}): EntryOf<'tariff'> => ({
  kind: 'tariff',
  content: {
    code,
    name: `Invented ${code}`,
    retired: false,
    tariff: {
      kind: 'block',
      per: 'month',
      currency: 'EUR',
      blocks: [{ upToKwh: 100, pricePerKwh: 0.1 }, { pricePerKwh: 0.3 }],
      fixedCharges: [{ name: 'Grundgebühr', amount: 12.5, per: 'month' }],
    },
    source: 'invented sample',
    sampleData: true,
    ...changes,
  },
})

/** An invented emission factor for the same. */
export const aFactor = (
  code: string,
  changes: Partial<NamedEmissionFactor> = {},
): EntryOf<'emission-factor'> => ({
  kind: 'emission-factor',
  content: {
    code,
    retired: false,
    regionCode: code,
    region: `Invented grid ${code}`,
    kind: 'average',
    year: 2024,
    factor: { kgCo2ePerKwh: 0.3 },
    gases: 'CO2e',
    source: 'invented for the tests',
    mark: 'M',
    ...changes,
  },
})
