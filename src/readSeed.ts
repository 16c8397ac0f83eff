import { existsSync } from 'node:fs'
import { readdir, readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Category } from './core/catalogue/category.ts'
import { sharedNames } from './core/catalogue/sharedNames.ts'
import type { CautionList } from './core/cautions/caution.ts'
import type { NamedEmissionFactor } from './core/emissions/emissionFactor.ts'
import type { Limit } from './core/limits/limit.ts'
import type { NamedTariff } from './core/money/tariff.ts'
import type { QuizLanguage } from './core/quiz/quizLanguage.ts'
import type { MeterPresets } from './core/readings/meterPreset.ts'
import type { Measure } from './core/savings/measure.ts'
import { parseCategoriesCsv } from './schemas/categoryCsv.ts'
import { parseCautionsCsv } from './schemas/cautionCsv.ts'
import { parseLimitsCsv } from './schemas/limitCsv.ts'
import { parseMeasuresCsv } from './schemas/measureCsv.ts'
import { parseMeterPresetsCsv } from './schemas/meterPresetCsv.ts'
import type { CsvFault } from './schemas/readLines.ts'
import { parseEmissionFactorsCsv, parseTariffsCsv } from './schemas/referenceCsv.ts'
import { parseQuizLanguage } from './schemas/quizLanguage.ts'
import { parseTariffsJson } from './schemas/tariffsJson.ts'

export interface Seed {
  readonly categories: readonly Category[]
  readonly tariffs: ReadonlyMap<string, NamedTariff>
  readonly emissionFactors: ReadonlyMap<string, NamedEmissionFactor>
  readonly meterPresets: MeterPresets
  readonly limits: ReadonlyMap<string, Limit>
  readonly measures: ReadonlyMap<string, Measure>
  readonly cautions: CautionList
  /** Words of the quiz, by language tag. */
  readonly languages: ReadonlyMap<string, QuizLanguage>
}

/**
 * Reads the sample catalogue, the sample tariffs, the published emission factors and the classes of meter that
 * the service is shipped with.
 * @param folder where the files are; by default the project's own seed/, found from source and from dist/ alike
 * @throws Error that lists every fault in the files, by file, line and column
 */
export async function readSeed(folder = join(projectFolder(), 'seed')): Promise<Seed> {
  const read = (name: string) => readFile(join(folder, name), 'utf8')
  const files = (await readdir(join(folder, 'categories'))).filter((name) => name.endsWith('.csv')).sort()
  const groups = await Promise.all(
    files.map(async (name) => ({
      name: `categories/${name}`,
      ...parseCategoriesCsv(await read(`categories/${name}`)),
    })),
  )
  const categories = groups.flatMap((group) => group.categories)
  const tariffs = parseTariffsCsv(await read('tariffs.csv'))
  const moreTariffs = parseTariffsJson(await read('tariffs.json'), tariffs.entries)
  const factors = parseEmissionFactorsCsv(await read('emission-factors.csv'))
  const { presets, faults: meterFaults } = parseMeterPresetsCsv(await read('meter-presets.csv'))
  const limits = parseLimitsCsv(await read('limits.csv'))
  const measures = parseMeasuresCsv(await read('measures.csv'))
  const { cautions, faults: cautionFaults } = parseCautionsCsv(await read('cautions.csv'))
  const languages = await readLanguages(join(folder, 'languages'))
  const problems = [
    ...groups.flatMap(({ name, faults }) => inWords(name, faults)),
    ...inWords('tariffs.csv', tariffs.faults),
    ...moreTariffs.faults.map(({ pointer, message }) => `tariffs.json, ${pointer}: ${message}`),
    ...inWords('emission-factors.csv', factors.faults),
    ...inWords('meter-presets.csv', meterFaults),
    ...inWords('limits.csv', limits.faults),
    ...inWords('measures.csv', measures.faults),
    ...inWords('cautions.csv', cautionFaults),
    ...languages.problems,
    ...sharedNames(categories).map(
      ({ name, codes }) => `categories: "${name}" names ${codes.join(' and ')}; name one.`,
    ),
  ]
  if (!presets || problems.length > 0) throw new Error(`The seed files have faults:\n${problems.join('\n')}`)
  return {
    categories,
    tariffs: moreTariffs.entries,
    emissionFactors: factors.entries,
    meterPresets: presets,
    limits: limits.entries,
    measures: measures.entries,
    cautions,
    languages: languages.known,
  }
}

/** Every file of the folder is a language of the quiz, so that one more file is one more language. */
async function readLanguages(folder: string) {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort()
  const files = await Promise.all(
    names.map(async (name) => ({
      name: `languages/${name}`,
      ...parseQuizLanguage(await readFile(join(folder, name), 'utf8'), name.slice(0, -'.json'.length)),
    })),
  )
  return {
    known: new Map(
      files.flatMap(({ language }) => (language ? [[language.language, language] as const] : [])),
    ),
    problems: files.flatMap(({ name, faults }) =>
      faults.map(({ pointer, message }) => `${name}${pointer && `, ${pointer}`}: ${message}`),
    ),
  }
}

/** The folder that holds package.json, above this file, be it source or compiled. */
function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'package.json'))) {
    const above = dirname(folder)
    if (above === folder)
      throw new Error('The seed files cannot be found: no folder above this file holds package.json.')
    folder = above
  }
  return folder
}

const inWords = (file: string, faults: readonly CsvFault[]) =>
  faults.map(({ line, column, message }) => `${file}, line ${line}${column ? `, ${column}` : ''}: ${message}`)
