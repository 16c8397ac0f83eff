import { DomainError } from '../core/fault.ts'
import { Prisma, type PrismaClient } from './generated/client.ts'

const TRANSACTION = {
  // Prisma's own limits, 2 s and 5 s, are too short for an import of a whole catalogue and for those who wait behind it.
  maxWait: 60_000,
  timeout: 300_000,
  // What is read after the wait for the lock must be what the holder before left; a stricter level would show older rows.
  isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted,
}

export interface RevisedHistory {
  /** Of advisoryLocks.ts. */
  readonly lock: string
  /** For messages. */
  readonly name: string
  readonly latest: (client: Prisma.TransactionClient) => Promise<number>
}

/**
 * Does the work in one transaction, where no two are under way in one history, on top of the revision it is based on.
 * @throws DomainError stale-revision where that is not the newest
 */
export const editTransaction = <T>(
  prisma: PrismaClient,
  { lock, name, latest }: RevisedHistory,
  basedOn: number,
  work: (transaction: Prisma.TransactionClient) => Promise<T>,
): Promise<T> =>
  prisma.$transaction(async (transaction) => {
    await transaction.$executeRaw`SELECT ${Prisma.raw(lock)}`
    const newest = await latest(transaction)
    if (basedOn !== newest)
      throw new DomainError(
        'stale-revision',
        `The edit is based on ${name} revision ${basedOn}, but the newest is ${newest}. Look at what changed and edit again.`,
        { basedOn, newest },
      )
    return work(transaction)
  }, TRANSACTION)
