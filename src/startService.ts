import { randomBytes } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Logger } from 'pino'
import { buildApp } from './app.ts'
import { type Config, quizLanguagesOf, settingsOf } from './config.ts'
import type { QuizLanguages } from './core/quiz/quizLanguage.ts'
import { openMetrics } from './edges/rest/metrics.ts'
import { digests } from './persistence/digests.ts'
import { openStores, type Stores } from './persistence/openStores.ts'
import { projectFolder } from './persistence/projectFolder.ts'
import { readSeed } from './readSeed.ts'
import { bootstrapAdminKey } from './useCases/bootstrapAdminKey.ts'
import { openCatalogueMemory } from './useCases/catalogueMemory.ts'
import type { Deps } from './useCases/deps.ts'
import { openOverlayMemory } from './useCases/overlayMemory.ts'
import { openKeyMemory } from './useCases/keyMemory.ts'
import { openReferenceMemory } from './useCases/referenceMemory.ts'
import { seedCatalogue } from './useCases/seedCatalogue.ts'
import { seedReference } from './useCases/seedReference.ts'
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
 * Starts the whole service: database, catalogue, edges. `onProgress` hears in plain words what takes time,
 * and `onFirstKey` the operator's first admin key, where this start issued it.
 * @throws ConfigError; DomainError where the database or its migrations refuse; the system's own error where the port is taken
 */
export async function startService(
  config: Config,
  log: Logger,
  onProgress: (message: string) => void,
  onFirstKey: (key: string) => void = () => undefined,
): Promise<Service> {
  const seed = await readSeed()
  const quizLanguages = quizLanguagesOf(config, seed.languages)
  const stores = await openStores({ databaseUrl: config.DATABASE_URL, dataDir: config.DATA_DIR, onProgress })
  try {
    return await serve(config, log, { onProgress, onFirstKey }, stores, quizLanguages, seed)
  } catch (error) {
    await stores.close()
    throw error
  }
}

interface Listeners {
  readonly onProgress: (message: string) => void
  readonly onFirstKey: (key: string) => void
}

async function serve(
  config: Config,
  log: Logger,
  { onProgress, onFirstKey }: Listeners,
  stores: Stores,
  quizLanguages: QuizLanguages,
  seed: Awaited<ReturnType<typeof readSeed>>,
): Promise<Service> {
  const {
    catalogueStore,
    overlayStore,
    referenceStore,
    keyStore,
    auditStore,
    inventoryStore,
    proposalStore,
  } = stores
  const catalogueMemory = await openCatalogueMemory(catalogueStore)
  const referenceMemory = await openReferenceMemory(referenceStore)
  const overlayMemory = await openOverlayMemory(overlayStore)
  const clock = () => new Date()
  const loaded = await seedReference({ referenceStore, referenceMemory, clock }, seed)
  if (loaded > 0)
    onProgress(
      `Loaded ${seed.tariffs.size} invented tariffs and ${seed.emissionFactors.size} published emission factors`,
    )
  const { revision: referenceRevision, entries } = referenceMemory.current()
  const settings = settingsOf(config, {
    ...seed,
    tariffs: entries.tariff,
    emissionFactors: entries['emission-factor'],
    referenceRevision,
  })
  const keyMemory = openKeyMemory(keyStore, clock, (error) =>
    log.warn({ err: error }, 'could not store when a key was last used'),
  )
  const metrics =
    config.METRICS === 'off'
      ? undefined
      : openMetrics({
          catalogueRevision: () => catalogueMemory.current().revision,
          referenceRevision: () => referenceMemory.current().revision,
          databaseSessions: stores.sessions,
        })
  const deps: Deps = {
    catalogueStore,
    catalogueMemory,
    referenceStore,
    referenceMemory,
    overlayStore,
    overlayMemory,
    settings,
    quizLanguages,
    clock,
    onEstimate: metrics?.countEstimate,
    keyStore,
    keyMemory,
    auditStore,
    inventoryStore,
    proposalStore,
    random: randomBytes,
    digests,
  }
  const firstKey = await bootstrapAdminKey(deps, config.BOOTSTRAP_ADMIN_KEY)
  if (firstKey !== null) onFirstKey(firstKey)
  const seeded = await seedCatalogue(deps, seed.categories)
  if (seeded > 0) onProgress(`Loaded the sample catalogue: ${seeded} categories, all figures invented`)
  const app = await buildApp(deps, {
    version: await version(),
    production: config.NODE_ENV !== 'development',
    log,
    bodyLimitBytes: config.BODY_LIMIT_BYTES,
    corsOrigins: config.CORS_ORIGINS,
    rateLimits: {
      perKey: config.RATE_LIMIT_PER_MINUTE,
      perNetwork: config.RATE_LIMIT_ANONYMOUS_PER_MINUTE,
    },
    metrics: metrics && { counted: metrics, isOpen: config.METRICS === 'open' },
    docs: config.DOCS,
    trustedProxies: config.TRUSTED_PROXIES,
    importLimitBytes: config.IMPORT_LIMIT_BYTES,
    anonymousEstimates: config.ANONYMOUS_ESTIMATES,
    baseLoadLimitBytes: config.BASE_LOAD_LIMIT_BYTES,
    checkStore: () => stores.check(),
  })
  const url = await app.listen({ host: config.HOST, port: config.PORT })
  const refresh = async () => {
    await Promise.all([catalogueMemory.refresh(), referenceMemory.refresh(), overlayMemory.refresh()])
  }
  const stopWatching = watchCatalogue(
    { refresh },
    {
      everyMs: CATALOGUE_WATCH_MS,
      listen: stores.listen,
      onError: (error) => log.warn({ err: error }, 'could not look for edits by other processes'),
    },
  )
  return {
    url,
    close: async () => {
      await app.close()
      await stopWatching()
      await keyMemory.settled()
      await stores.close()
    },
  }
}

async function version(): Promise<string> {
  const text = await readFile(join(projectFolder(import.meta.url), 'package.json'), 'utf8')
  return (JSON.parse(text) as { version: string }).version
}
