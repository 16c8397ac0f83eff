import type { Prisma } from './generated/client.ts'
import type { SqlConnection } from './sqlConnection.ts'

/** Sessions with a database server, and requests that wait for one. */
export interface DatabaseSessions {
  readonly busy: number
  readonly idle: number
  readonly waiting: number
}

/** An open database, embedded or served: what Prisma talks through, and a plain session for the migrations. */
export interface Database {
  readonly kind: 'embedded' | 'postgresql'
  readonly adapter: NonNullable<Prisma.PrismaClientOptions['adapter']>
  /** Lends one session for the length of the work. */
  withConnection<T>(work: (connection: SqlConnection) => Promise<T>): Promise<T>
  /** How the sessions with a server are used; missing where the database is embedded. */
  readonly sessions?: (() => DatabaseSessions) | undefined
  close(): Promise<void>
}
