import { z } from 'zod'
import { GASES_COUNTED, SOURCE_MARKS, type NamedEmissionFactor } from '../core/emissions/emissionFactor.ts'
import type { NamedTariff } from '../core/money/tariff.ts'
import { INVENTED } from './categoryColumns.ts'
import { LIMITS, localId, shortText } from './common.ts'
import { emissionFactorSchema, tariffSchema } from './household.ts'
import { readNumber } from './readNumber.ts'
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
  'region',
  'year',
  'kgCo2ePerKwh',
  'gridLoss',
  'relativeUncertainty',
  'gases',
  'source',
  'mark',
] as const

const source = z.string().trim().min(1).max(500)
const namedTariff = z.strictObject({
  code: localId,
  name: shortText,
  tariff: tariffSchema,
  source,
  sampleData: z.boolean(),
})
const namedEmissionFactor = z.strictObject({
  code: localId,
  region: shortText,
  year: z.int().min(LIMITS.yearFrom).max(LIMITS.yearTo),
  factor: emissionFactorSchema,
  gases: z.enum(GASES_COUNTED),
  source,
  mark: z.enum(SOURCE_MARKS),
})

/** Reads a tariff file, one flat tariff a row. Only a source of "invented sample" makes it sample data. */
export function parseTariffsCsv(text: string): ReferenceTable<NamedTariff> {
  return readReference<(typeof TARIFF_COLUMNS)[number], NamedTariff>(
    text,
    TARIFF_COLUMNS,
    namedTariff,
    (cells) => ({
      code: cells.code.trim(),
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
    namedEmissionFactor,
    (cells) => ({
      code: cells.code.trim(),
      region: cells.region,
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
