import type { Prisma } from './generated/client.ts'
import type { SqlConnection } from './sqlConnection.ts'

/** An open database, embedded or served: what Prisma talks through, and a plain session for the migrations. */
export interface Database {
  readonly kind: 'embedded' | 'postgresql'
  readonly adapter: NonNullable<Prisma.PrismaClientOptions['adapter']>
  /** Lends one session for the length of the work. */
  withConnection<T>(work: (connection: SqlConnection) => Promise<T>): Promise<T>
  close(): Promise<void>
}
