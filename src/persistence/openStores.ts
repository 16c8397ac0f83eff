import { setTimeout as wait } from 'node:timers/promises'
import { DomainError } from '../core/fault.ts'
import type { AuditStore } from '../stores/auditStore.ts'
import type { CatalogueStore } from '../stores/catalogueStore.ts'
import type { InventoryStore } from '../stores/inventoryStore.ts'
import type { KeyStore } from '../stores/keyStore.ts'
import type { ProposalStore } from '../stores/proposalStore.ts'
import type { ReferenceStore } from '../stores/referenceStore.ts'
import type { OverlayStore } from '../stores/overlayStore.ts'
import type { Database } from './database.ts'
import { PrismaClient } from './generated/client.ts'
import { type Listen, listenForRevisions } from './listenForRevisions.ts'
import { migrate } from './migrate.ts'
import { openEmbedded } from './openEmbedded.ts'
import { openPostgres } from './openPostgres.ts'
import { prismaAuditStore } from './prismaAuditStore.ts'
import { prismaCatalogueStore } from './prismaCatalogueStore.ts'
import { prismaInventoryStore } from './prismaInventoryStore.ts'
import { prismaKeyStore } from './prismaKeyStore.ts'
import { prismaProposalStore } from './prismaProposalStore.ts'
import { prismaReferenceStore } from './prismaReferenceStore.ts'
import { prismaOverlayStore } from './prismaOverlayStore.ts'
import { readMigrations } from './readMigrations.ts'
import { tellOutages } from './tellOutages.ts'

export interface StoresOptions {
  /** A PostgreSQL server; where it is given, nothing is embedded and `dataDir` is not touched. */
  readonly databaseUrl?: string | null | undefined
  /** The folder of the embedded database; IN_MEMORY keeps it in memory. */
  readonly dataDir: string
  /** How many sessions this process may have open at a PostgreSQL server; 10 where it is not given. */
  readonly poolSize?: number | undefined
  /** How long the database may take to answer a check, or to let a session in; 5,000 ms where it is not given. */
  readonly answerWithinMs?: number | undefined
  /** Hears in plain words what takes time, and that a connection was lost. */
  readonly onProgress?: ((message: string) => void) | undefined
}

/** Everything that is stored, and the database behind it. */
export interface Stores {
  readonly catalogueStore: CatalogueStore
  readonly referenceStore: ReferenceStore
  readonly overlayStore: OverlayStore
  readonly keyStore: KeyStore
  readonly auditStore: AuditStore
  readonly inventoryStore: InventoryStore
  readonly proposalStore: ProposalStore
  readonly kind: Database['kind']
  /** Hears of edits by other processes; missing where there can be none, since the database is embedded. */
  readonly listen?: Listen
  /** How the sessions with a server are used; missing where the database is embedded. */
  readonly sessions?: Database['sessions']
  /** A cheap question to the database. @throws DomainError database-silent; whatever the database says */
  check(): Promise<void>
  /** Closes the database; further calls do nothing. */
  close(): Promise<void>
}

/**
 * Opens the database, applies the migrations that it lacks, and gives the stores.
 * @throws DomainError database-unreachable, database-too-old, data-folder-in-use, migrations-disagree, migration-files-unfit
 */
export async function openStores(options: StoresOptions): Promise<Stores> {
  const {
    databaseUrl,
    dataDir,
    poolSize = 10,
    answerWithinMs = 5_000,
    onProgress = () => undefined,
  } = options
  const migrations = await readMigrations()
  const database = databaseUrl
    ? await openPostgres(databaseUrl, { poolSize, answerWithinMs }, onProgress)
    : await openEmbedded(dataDir, onProgress)
  try {
    await database.withConnection((connection) => migrate(connection, migrations, onProgress))
  } catch (error) {
    await database.close()
    throw error
  }
  const stores = storesOver(database, answerWithinMs)
  return databaseUrl
    ? { ...stores, listen: listenForRevisions(databaseUrl, answerWithinMs, onProgress) }
    : stores
}

function storesOver(database: Database, answerWithinMs: number): Stores {
  const prisma = new PrismaClient({ adapter: database.adapter })
  let closing: Promise<void> | undefined
  return {
    catalogueStore: tellOutages(prismaCatalogueStore(prisma)),
    referenceStore: tellOutages(prismaReferenceStore(prisma)),
    overlayStore: tellOutages(prismaOverlayStore(prisma)),
    keyStore: tellOutages(prismaKeyStore(prisma)),
    auditStore: tellOutages(prismaAuditStore(prisma)),
    inventoryStore: tellOutages(prismaInventoryStore(prisma)),
    proposalStore: tellOutages(prismaProposalStore(prisma)),
    kind: database.kind,
    sessions: database.sessions,
    check: () => answered(prisma.$queryRaw`SELECT 1`, answerWithinMs),
    close: () => (closing ??= prisma.$disconnect().then(() => database.close())),
  }
}

async function answered(question: PromiseLike<unknown>, withinMs: number): Promise<void> {
  const enough = new AbortController()
  const silence = wait(withinMs, undefined, { signal: enough.signal }).then(() => {
    throw new DomainError('database-silent', `The database did not answer within ${withinMs} ms.`)
  })
  try {
    await Promise.race([question, silence])
  } finally {
    enough.abort()
  }
}
