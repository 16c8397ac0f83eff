import { z } from 'zod'
import type { Fault } from '../core/fault.ts'
import type { NamedTariff } from '../core/money/tariff.ts'
import { contentFrom } from '../core/reference/referenceDraft.ts'
import { parsedJson } from './parsedJson.ts'
import { readShape } from './readShape.ts'
import { namedTariffSchema } from './tariff.ts'

const fileSchema = z.array(namedTariffSchema.omit({ retired: true, sampleData: true })).max(10_000)

/**
 * Reads a JSON file of tariffs of any kind, which a row of a table can't hold. Only a source of "invented sample" makes
 * one sample data.
 * @param known tariffs that were read before; the answer holds them, too
 */
export function parseTariffsJson(
  text: string,
  known: ReadonlyMap<string, NamedTariff>,
): { readonly entries: ReadonlyMap<string, NamedTariff>; readonly faults: readonly Fault[] } {
  const { value, faults } = readShape(fileSchema, parsedJson(text))
  const entries = new Map(known)
  const repeated: Fault[] = []
  value?.forEach((entry, index) => {
    if (entries.has(entry.code))
      repeated.push({
        pointer: `/${index}/code`,
        code: 'code-repeated',
        message: `The code "${entry.code}" is used already.`,
      })
    else entries.set(entry.code, contentFrom('tariff', entry, false))
  })
  return { entries, faults: [...faults, ...repeated] }
}
