import { RESULT_KEPT_HOURS } from '../core/access/onceKey.ts'
import { DomainError } from '../core/fault.ts'
import type { Once, OnceResult } from '../stores/once.ts'
import { Prisma, type PrismaClient } from './generated/client.ts'

type Transaction = Prisma.TransactionClient
// What is read after a wait for a lock must be what the holder before left.
export const READ_COMMITTED = { isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted }
const HOUR_MS = 3_600_000

/** Who asks, and which inventory the result speaks of. */
export interface OnceOf {
  readonly organisation: string
  readonly inventory: string
}

export type RunOnce = <T extends object>(
  of: OnceOf,
  once: Once | null,
  work: (inside: Transaction) => Promise<T>,
) => Promise<OnceResult<T>>

/**
 * Does a piece of work in one transaction, at most once for each key; see stores/once.ts. What the work gives is kept as JSON,
 * so it must be the same after JSON has written and read it.
 */
export function openRunOnce(prisma: PrismaClient): RunOnce {
  // Transactions of an embedded database wait for each other, so the lock in the database would never be seen held.
  const underWay = new Set<string>()
  return async (of, once, work) => {
    if (once === null) return { result: await prisma.$transaction(work, READ_COMMITTED), replayed: false }
    const name = `${of.organisation} ${once.key}`
    if (underWay.has(name)) throw busy()
    underWay.add(name)
    try {
      return await prisma.$transaction((inside) => workOnce(inside, of, once, work), READ_COMMITTED)
    } finally {
      underWay.delete(name)
    }
  }
}

async function workOnce<T extends object>(
  inside: Transaction,
  { organisation, inventory }: OnceOf,
  { key, digest, at }: Once,
  work: (inside: Transaction) => Promise<T>,
): Promise<OnceResult<T>> {
  const [lock] = await inside.$queryRaw<{ free: boolean }[]>`
    SELECT pg_try_advisory_xact_lock(hashtextextended(${`${organisation} ${key}`}, 0)) AS free`
  if (!lock?.free) throw busy()
  const forgotten = new Date(at.getTime() - RESULT_KEPT_HOURS * HOUR_MS)
  await inside.keptResult.deleteMany({ where: { organisation, keptAt: { lte: forgotten } } })
  const kept = await inside.keptResult.findUnique({ where: { organisation_key: { organisation, key } } })
  if (kept !== null) {
    if (Buffer.compare(kept.digest, digest) !== 0) throw reused()
    return { result: kept.result as T, replayed: true }
  }
  const result = await work(inside)
  await inside.keptResult.create({
    data: {
      organisation,
      key,
      digest: Uint8Array.from(digest),
      inventory,
      result: result as Prisma.InputJsonObject,
      keptAt: at,
    },
  })
  return { result, replayed: false }
}

const busy = () =>
  new DomainError(
    'idempotency-key-busy',
    'A request with this Idempotency-Key is under way. Wait for its answer, or send it again in a moment: it will be given the same answer.',
  )

const reused = () =>
  new DomainError(
    'idempotency-key-reused',
    'This Idempotency-Key came with another request before. Use a new key for a new request.',
  )
