import { randomBytes } from 'node:crypto'
import type { FastifyInstance } from 'fastify'
import request from 'supertest'
import { type AppOptions, buildApp } from '../../src/app.ts'
import { quizLanguagesOf, readConfig, settingsOf } from '../../src/config.ts'
import type { Category } from '../../src/core/catalogue/category.ts'
import type { EstimateSettings } from '../../src/core/estimate/settings.ts'
import { digests } from '../../src/persistence/digests.ts'
import { createLog } from '../../src/log.ts'
import { openCatalogueMemory } from '../../src/useCases/catalogueMemory.ts'
import type { QuizLanguages } from '../../src/core/quiz/quizLanguage.ts'
import type { CatalogueStore } from '../../src/stores/catalogueStore.ts'
import type { InventoryStore } from '../../src/stores/inventoryStore.ts'
import type { KeyStore } from '../../src/stores/keyStore.ts'
import type { ReferenceStore } from '../../src/stores/referenceStore.ts'
import { bootstrapAdminKey } from '../../src/useCases/bootstrapAdminKey.ts'
import type { Deps } from '../../src/useCases/deps.ts'
import { openKeyMemory } from '../../src/useCases/keyMemory.ts'
import { openReferenceMemory } from '../../src/useCases/referenceMemory.ts'
import { seedReference } from '../../src/useCases/seedReference.ts'
import type { ProposalStore } from '../../src/stores/proposalStore.ts'
import type { OverlayStore } from '../../src/stores/overlayStore.ts'
import { openOverlayMemory } from '../../src/useCases/overlayMemory.ts'
import { seedCatalogue } from '../../src/useCases/seedCatalogue.ts'
import { type MemoryAuditStore, memoryAuditStore } from '../stores/memoryAuditStore.ts'
import { memoryCatalogueStore } from '../stores/memoryCatalogueStore.ts'
import { type MemoryInventoryStore, memoryInventoryStore } from '../stores/memoryInventoryStore.ts'
import { memoryKeyStore } from '../stores/memoryKeyStore.ts'
import { memoryOverlayStore } from '../stores/memoryOverlayStore.ts'
import { memoryProposalStore } from '../stores/memoryProposalStore.ts'
import { memoryReferenceStore } from '../stores/memoryReferenceStore.ts'
import { cautions } from './cautions.ts'
import { limits } from './limits.ts'
import { measures } from './measures.ts'
import { meterPresets } from './meterPresets.ts'
import { shippedLanguages } from './shippedLanguages.ts'
import { testCategories } from './testCatalogue.ts'

export interface TestApp {
  readonly app: FastifyInstance
  readonly deps: Deps
  /** Where it listens, on this machine alone. */
  readonly url: string
  /** Everything that was logged, as it was written. */
  readonly log: () => string
  /** A supertest request to the app. */
  readonly send: ReturnType<typeof request>
  readonly close: () => Promise<void>
}

const testSettings = settingsOf(readConfig({}), {
  meterPresets,
  limits,
  measures,
  cautions,
  tariffs: new Map([
    [
      'sample-flat-eur',
      {
        code: 'sample-flat-eur',
        name: 'Invented price',
        retired: false,
        tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: 0.3 },
        source: 'invented sample',
        sampleData: true,
      },
    ],
  ]),
  emissionFactors: new Map([
    [
      'world-2023',
      {
        code: 'world-2023',
        retired: false,
        regionCode: 'world',
        region: 'Nowhere',
        kind: 'average',
        year: 2023,
        factor: { kgCo2ePerKwh: 0.5 },
        gases: 'CO2e',
        source: 'invented for the tests',
        mark: 'M',
      },
    ],
  ]),
})

/** The key of the operator's admin in every test app. */
export const ADMIN_KEY = 'the-admin-key-of-every-test-app-0123456789'

/** The whole app over a store in memory, with every REST answer checked against its schema. */
export async function testApp(
  options: Partial<Omit<AppOptions, 'log'>> & {
    readonly categories?: readonly Category[]
    readonly catalogueStore?: CatalogueStore
    /** With the tariffs and emission factors that an empty store is filled with. */
    readonly settings?: EstimateSettings
    readonly referenceStore?: ReferenceStore
    readonly quizLanguages?: QuizLanguages
    readonly clock?: () => Date
    readonly auditStore?: MemoryAuditStore
    readonly keyStore?: KeyStore
    readonly inventoryStore?: InventoryStore
    /** Where the inventory store is not given: what it and the proposals stand on. */
    readonly inventories?: MemoryInventoryStore
    readonly overlayStore?: OverlayStore
    readonly proposalStore?: ProposalStore
    readonly onEstimate?: Deps['onEstimate']
  } = {},
): Promise<TestApp> {
  const {
    categories = testCategories,
    catalogueStore = memoryCatalogueStore(),
    referenceStore = memoryReferenceStore(),
    settings = testSettings,
    quizLanguages = quizLanguagesOf(readConfig({}), shippedLanguages),
    clock = () => new Date('2026-01-31T12:00:00Z'),
    auditStore = memoryAuditStore(),
    keyStore = memoryKeyStore(auditStore.write),
    inventories = memoryInventoryStore(auditStore.write),
    inventoryStore = inventories,
    overlayStore = memoryOverlayStore(auditStore.write),
    proposalStore = memoryProposalStore(auditStore.write, inventories.everything),
    onEstimate,
    ...appOptions
  } = options
  const catalogueMemory = await openCatalogueMemory(catalogueStore)
  const referenceMemory = await openReferenceMemory(referenceStore)
  const { tariffs, emissionFactors, ...operatorSettings } = settings
  const deps: Deps = {
    catalogueStore,
    catalogueMemory,
    overlayStore,
    overlayMemory: await openOverlayMemory(overlayStore),
    referenceStore,
    referenceMemory,
    settings: operatorSettings,
    quizLanguages,
    clock,
    onEstimate,
    keyStore,
    keyMemory: openKeyMemory(keyStore, clock, (error) => {
      throw error
    }),
    auditStore,
    inventoryStore,
    proposalStore,
    random: randomBytes,
    digests,
  }
  await bootstrapAdminKey(deps, ADMIN_KEY)
  await seedReference(deps, { tariffs, emissionFactors })
  if (categories.length > 0) await seedCatalogue(deps, categories)
  let log = ''
  const app = await buildApp(deps, {
    version: '0.0.0-test',
    production: true,
    log: createLog('trace', { write: (line: string) => (log += line) }),
    bodyLimitBytes: 1_048_576,
    anonymousEstimates: true,
    checkStore: async () => undefined,
    checkAnswers: true,
    ...appOptions,
  })
  const url = await app.listen({ host: '127.0.0.1', port: 0 })
  return { app, deps, url, log: () => log, send: request(url), close: () => app.close() }
}
