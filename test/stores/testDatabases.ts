import type { Database } from '../../src/persistence/database.ts'
import { PrismaClient } from '../../src/persistence/generated/client.ts'
import { migrate } from '../../src/persistence/migrate.ts'
import { IN_MEMORY, openEmbedded } from '../../src/persistence/openEmbedded.ts'
import { openPostgres } from '../../src/persistence/openPostgres.ts'
import { readMigrations } from '../../src/persistence/readMigrations.ts'
import type { TestPostgres } from '../helpers/postgres.ts'

/** Gives databases that nothing is in yet, not even a table. */
export interface TestDatabases {
  readonly name: string
  /** An empty database. It ends with `close` of the test's own `Database`, and at the latest with `closeAll`. */
  fresh(): Promise<Database>
  closeAll(): Promise<void>
}

/** The embedded database takes seconds to make: one is made, and emptied for every test. So there is one at a time. */
export function embeddedDatabases(): TestDatabases {
  let made: Promise<Database> | undefined
  return {
    name: 'embedded',
    fresh: async () => {
      const database = await (made ??= openEmbedded(IN_MEMORY, () => undefined))
      await database.withConnection((connection) =>
        connection.run('DROP SCHEMA public CASCADE; CREATE SCHEMA public'),
      )
      return { ...database, close: async () => undefined }
    },
    closeAll: async () => (await made)?.close(),
  }
}

export function servedDatabases(postgres: TestPostgres): TestDatabases {
  return {
    name: 'PostgreSQL',
    fresh: async () =>
      openPostgres(await postgres.freshDatabase(), { poolSize: 5, answerWithinMs: 10_000 }, failOnLoss),
    closeAll: async () => undefined,
  }
}

/** An empty database with all tables, and the client that the stores use. */
export async function freshClient(
  databases: TestDatabases,
): Promise<{ prisma: PrismaClient; database: Database }> {
  const database = await databases.fresh()
  const migrations = await readMigrations()
  await database.withConnection((connection) => migrate(connection, migrations))
  return { prisma: new PrismaClient({ adapter: database.adapter }), database }
}

export const failOnLoss = (message: string) => {
  throw new Error(`Not expected in a test: ${message}`)
}
