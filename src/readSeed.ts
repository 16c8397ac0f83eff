import { existsSync } from 'node:fs'
import { readdir, readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Category } from './core/catalogue/category.ts'
import { sharedNames } from './core/catalogue/sharedNames.ts'
import type { NamedEmissionFactor } from './core/emissions/emissionFactor.ts'
import type { NamedTariff } from './core/money/tariff.ts'
import { parseCategoriesCsv } from './schemas/categoryCsv.ts'
import type { CsvFault } from './schemas/readLines.ts'
import { parseEmissionFactorsCsv, parseTariffsCsv } from './schemas/referenceCsv.ts'

export interface Seed {
  readonly categories: readonly Category[]
  readonly tariffs: ReadonlyMap<string, NamedTariff>
  readonly emissionFactors: ReadonlyMap<string, NamedEmissionFactor>
}

/**
 * Reads the sample catalogue, the sample tariffs and the published emission factors that the service is shipped with.
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
  const factors = parseEmissionFactorsCsv(await read('emission-factors.csv'))
  const problems = [
    ...groups.flatMap(({ name, faults }) => inWords(name, faults)),
    ...inWords('tariffs.csv', tariffs.faults),
    ...inWords('emission-factors.csv', factors.faults),
    ...sharedNames(categories).map(
      ({ name, codes }) => `categories: "${name}" names ${codes.join(' and ')}; name one.`,
    ),
  ]
  if (problems.length > 0) throw new Error(`The seed files have faults:\n${problems.join('\n')}`)
  return { categories, tariffs: tariffs.entries, emissionFactors: factors.entries }
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
