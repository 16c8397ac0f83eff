import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Logger } from 'pino'
import { buildApp } from './app.ts'
import { type Config, settingsOf } from './config.ts'
import type { EstimateSettings } from './core/estimate/settings.ts'
import { openStores, type Stores } from './persistence/openStores.ts'
import { projectFolder } from './persistence/projectFolder.ts'
import { readSeed } from './readSeed.ts'
import { openCatalogueMemory } from './useCases/catalogueMemory.ts'
import type { Deps } from './useCases/deps.ts'
import { seedCatalogue } from './useCases/seedCatalogue.ts'
import { watchCatalogue } from './persistence/watchCatalogue.ts'

/** How soon an edit made by another process of the same service is seen here. */
const CATALOGUE_WATCH_MS = 1_000

export interface Service {
  /** Where the service listens, such as http://127.0.0.1:4000. */
  readonly url: string
  /** Lets running requests end, and closes the database. */
  close(): Promise<void>
}

/**
 * Starts the whole service: database, catalogue, edges. `onProgress` hears in plain words what takes time.
 * @throws ConfigError; DomainError where the database or its migrations refuse; the system's own error where the port is taken
 */
export async function startService(
  config: Config,
  log: Logger,
  onProgress: (message: string) => void,
): Promise<Service> {
  const seed = await readSeed()
  const settings = settingsOf(config, seed)
  const stores = await openStores({ databaseUrl: config.DATABASE_URL, dataDir: config.DATA_DIR, onProgress })
  try {
    return await serve(config, log, onProgress, stores, settings, seed)
  } catch (error) {
    await stores.close()
    throw error
  }
}

async function serve(
  config: Config,
  log: Logger,
  onProgress: (message: string) => void,
  stores: Stores,
  settings: EstimateSettings,
  seed: Awaited<ReturnType<typeof readSeed>>,
): Promise<Service> {
  const { catalogueStore } = stores
  const catalogueMemory = await openCatalogueMemory(catalogueStore)
  const deps: Deps = { catalogueStore, catalogueMemory, settings, clock: () => new Date() }
  const seeded = await seedCatalogue(deps, seed.categories)
  if (seeded > 0) onProgress(`Loaded the sample catalogue: ${seeded} categories, all figures invented`)
  const app = await buildApp(deps, {
    version: await version(),
    production: config.NODE_ENV !== 'development',
    log,
    bodyLimitBytes: config.BODY_LIMIT_BYTES,
    anonymousEstimates: config.ANONYMOUS_ESTIMATES,
    checkStore: () => stores.check(),
  })
  const url = await app.listen({ host: config.HOST, port: config.PORT })
  const stopWatching = watchCatalogue(catalogueMemory, CATALOGUE_WATCH_MS, (error) =>
    log.warn({ err: error }, 'could not look for a newer catalogue'),
  )
  return {
    url,
    close: async () => {
      await app.close()
      await stopWatching()
      await stores.close()
    },
  }
}

async function version(): Promise<string> {
  const text = await readFile(join(projectFolder(import.meta.url), 'package.json'), 'utf8')
  return (JSON.parse(text) as { version: string }).version
}
