import type { NamedEmissionFactor } from '../core/emissions/emissionFactor.ts'
import { INVENTED } from '../core/invented.ts'
import type { NamedTariff } from '../core/money/tariff.ts'
import { namedEmissionFactorSchema } from './emissionFactor.ts'
import { readNumber } from './readNumber.ts'
import { namedTariffSchema } from './tariff.ts'
import { optionalNumber, readReference, type ReferenceTable } from './readReference.ts'

const TARIFF_COLUMNS = [
  'code',
  'name',
  'kind',
  'currency',
  'pricePerKwh',
  'relativeUncertainty',
  'source',
] as const
const EMISSION_FACTOR_COLUMNS = [
  'code',
  'regionCode',
  'region',
  'kind',
  'year',
  'kgCo2ePerKwh',
  'gridLoss',
  'relativeUncertainty',
  'gases',
  'source',
  'mark',
] as const

/** Reads a tariff file, one flat tariff a row. Only a source of "invented sample" makes it sample data. */
export function parseTariffsCsv(text: string): ReferenceTable<NamedTariff> {
  return readReference<(typeof TARIFF_COLUMNS)[number], NamedTariff>(
    text,
    TARIFF_COLUMNS,
    namedTariffSchema,
    (cells) => ({
      code: cells.code.trim(),
      retired: false,
      name: cells.name,
      tariff: {
        kind: cells.kind.trim(),
        currency: cells.currency.trim(),
        pricePerKwh: readNumber(cells.pricePerKwh),
        ...optionalNumber('relativeUncertainty', cells.relativeUncertainty),
      },
      source: cells.source,
      sampleData: cells.source.trim() === INVENTED,
    }),
  )
}

/** Reads a file of published emission factors, one a row, each with what it counts, its source and its mark. */
export function parseEmissionFactorsCsv(text: string): ReferenceTable<NamedEmissionFactor> {
  type Column = (typeof EMISSION_FACTOR_COLUMNS)[number]
  return readReference<Column, NamedEmissionFactor>(
    text,
    EMISSION_FACTOR_COLUMNS,
    namedEmissionFactorSchema,
    (cells) => ({
      code: cells.code.trim(),
      retired: false,
      regionCode: cells.regionCode.trim(),
      region: cells.region,
      kind: cells.kind.trim(),
      year: readNumber(cells.year),
      factor: {
        kgCo2ePerKwh: readNumber(cells.kgCo2ePerKwh),
        ...optionalNumber('gridLoss', cells.gridLoss),
        ...optionalNumber('relativeUncertainty', cells.relativeUncertainty),
      },
      gases: cells.gases.trim(),
      source: cells.source,
      mark: cells.mark.trim(),
    }),
  )
}
