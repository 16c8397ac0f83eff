import { PrismaPg } from '@prisma/adapter-pg'
import { type ClientBase, Pool } from 'pg'
import { DomainError } from '../core/fault.ts'
import type { Database } from './database.ts'
import { errorCode } from './errorCode.ts'
import type { SqlConnection } from './sqlConnection.ts'

const OLDEST_MAJOR_VERSION = 15

/**
 * Opens a pool of sessions to a PostgreSQL server, and asks it for its version, so that a wrong address is known now.
 * @throws DomainError database-unreachable, naming the host but never the password; database-too-old
 */
export async function openPostgres(
  databaseUrl: string,
  { poolSize, answerWithinMs }: { readonly poolSize: number; readonly answerWithinMs: number },
  onProgress: (message: string) => void,
): Promise<Database> {
  const pool = new Pool({
    connectionString: databaseUrl,
    max: poolSize,
    connectionTimeoutMillis: answerWithinMs,
    keepAlive: true,
    application_name: 'standby-draw-estimation',
    onConnect: setTimeZone,
  })
  // Without a listener a lost idle connection would end the process. The pool opens another one for the next query.
  pool.on('error', (error) => {
    if (!pool.ending) onProgress(`A connection to PostgreSQL was lost: ${error.message}`)
  })
  try {
    refuseOldServer(await serverVersion(pool, databaseUrl))
  } catch (error) {
    await pool.end()
    throw error
  }
  return {
    kind: 'postgresql',
    adapter: new PrismaPg(pool),
    withConnection: (work) => withClient(pool, work),
    sessions: () => ({
      busy: pool.totalCount - pool.idleCount,
      idle: pool.idleCount,
      waiting: pool.waitingCount,
    }),
    close: () => pool.end(),
  }
}

/** The Prisma adapters write and read times without their zone, which is right in a session in UTC only. */
const setTimeZone = (client: ClientBase): unknown => client.query("SET TIME ZONE 'UTC'")

async function serverVersion(pool: Pool, databaseUrl: string): Promise<number> {
  try {
    const { rows } = await pool.query<{ version: string }>(
      "SELECT current_setting('server_version_num') AS version",
    )
    return Number(rows[0]!.version)
  } catch (error) {
    const { host, pathname } = new URL(databaseUrl)
    // Where a name has several addresses and none answers, the error has a code and no message.
    const said = (error instanceof Error && error.message) || errorCode(error) || String(error)
    throw new DomainError(
      'database-unreachable',
      `PostgreSQL at ${host}${pathname} does not answer: ${said}. Check DATABASE_URL, and that the server runs and lets this host in.`,
    )
  }
}

/**
 * @param version as server_version_num gives it: the major version times 10,000 and the minor one
 * @throws DomainError database-too-old
 */
export function refuseOldServer(version: number): void {
  const major = Math.floor(version / 10_000)
  if (major >= OLDEST_MAJOR_VERSION) return
  throw new DomainError(
    'database-too-old',
    `The PostgreSQL server has version ${major}; this service needs ${OLDEST_MAJOR_VERSION} or newer.`,
  )
}

async function withClient<T>(pool: Pool, work: (connection: SqlConnection) => Promise<T>): Promise<T> {
  const client = await pool.connect()
  try {
    const result = await work({
      run: async (sql) => {
        await client.query(sql)
      },
      query: async <Row>(sql: string, parameters: readonly unknown[] = []) =>
        (await client.query(sql, [...parameters])).rows as Row[],
    })
    client.release()
    return result
  } catch (error) {
    // A session that may be in any state does not go back into the pool.
    client.release(true)
    throw error
  }
}
