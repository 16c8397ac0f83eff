import { MIGRATION_LOCK } from './advisoryLocks.ts'
import { type AppliedMigration, nextMigration } from './nextMigration.ts'
import type { Migration } from './readMigrations.ts'
import { inTransaction, type SqlConnection } from './sqlConnection.ts'

const HISTORY_TABLE = `
  CREATE TABLE IF NOT EXISTS public.schema_migration (
    name text PRIMARY KEY,
    checksum text NOT NULL,
    applied_at timestamp(3) with time zone NOT NULL DEFAULT now()
  )`

/**
 * Brings the database up to the newest migration, each in a transaction of its own. The advisory lock is held for a
 * transaction and not for a session, so that it works behind a connection pooler, too, and a process that dies leaves
 * none behind; after each wait for it the history is read anew, so two processes that start at once apply each
 * migration once.
 * @returns the names of those that were applied now
 * @throws DomainError migrations-disagree; whatever the database says of a migration that fails
 */
export async function migrate(
  connection: SqlConnection,
  migrations: readonly Migration[],
  onProgress: (message: string) => void = () => undefined,
): Promise<readonly string[]> {
  const appliedNow: string[] = []
  for (;;) {
    const name = await inTransaction(connection, () => applyNext(connection, migrations))
    if (name === null) return appliedNow
    appliedNow.push(name)
    onProgress(`Applied the migration ${name}`)
  }
}

async function applyNext(
  connection: SqlConnection,
  migrations: readonly Migration[],
): Promise<string | null> {
  await connection.run(`SELECT ${MIGRATION_LOCK}; ${HISTORY_TABLE}`)
  const applied = await connection.query<AppliedMigration>(
    'SELECT name, checksum FROM public.schema_migration ORDER BY name COLLATE "C"',
  )
  const next = nextMigration(migrations, applied)
  if (next === null) return null
  try {
    await connection.run(next.sql)
  } catch (error) {
    throw new Error(`The migration ${next.name} failed and was undone: ${String(error)}`, { cause: error })
  }
  await connection.query('INSERT INTO public.schema_migration (name, checksum) VALUES ($1, $2)', [
    next.name,
    next.checksum,
  ])
  return next.name
}
