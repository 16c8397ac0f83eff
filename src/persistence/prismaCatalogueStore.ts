import { type Catalogue, catalogueOf } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'
import { DomainError } from '../core/fault.ts'
import type { CatalogueStore, Revision, RevisionNote } from '../stores/catalogueStore.ts'
import { CATALOGUE_LOCK } from './advisoryLocks.ts'
import { readContent, writeContent } from './categoryContent.ts'
import { Prisma, type PrismaClient } from './generated/client.ts'

const LARGEST_INTEGER = 2_147_483_647
const ROWS_AT_ONCE = 1_000
const TRANSACTION = {
  // Prisma's own limits, 2 s and 5 s, are too short for an import of a whole catalogue and for those who wait behind it.
  maxWait: 60_000,
  timeout: 300_000,
  // What is read after the wait for the lock must be what the holder before left; a stricter level would show older rows.
  isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted,
}

/** The catalogue's history in PostgreSQL, embedded or served. */
export function prismaCatalogueStore(prisma: PrismaClient): CatalogueStore {
  const inTurn = oneAtATime()
  return {
    latestRevision: () => latestRevision(prisma),
    catalogueAt: (revision) => catalogueAt(prisma, revision),
    append: (basedOn, changed, note) => inTurn(() => append(prisma, basedOn, changed, note)),
  }
}

/** Edits of one process wait here and not in the database, where each would hold a session that others need. */
function oneAtATime(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve()
  return (work) => {
    const mine = last.then(work)
    // The next in turn starts whether or not this one fails; who asked for this one hears of it.
    last = mine.catch((error: unknown) => error)
    return mine
  }
}

async function latestRevision(prisma: Prisma.TransactionClient): Promise<number> {
  const { _max } = await prisma.catalogueRevision.aggregate({ _max: { number: true } })
  return _max.number ?? 0
}

async function catalogueAt(prisma: PrismaClient, revision: number): Promise<Catalogue | null> {
  if (!Number.isInteger(revision) || revision < 1 || revision > LARGEST_INTEGER) return null
  if ((await prisma.catalogueRevision.findUnique({ where: { number: revision } })) === null) return null
  // History does not change, so what the two questions see belongs together.
  const states = await prisma.$queryRaw<{ code: string; content: unknown }[]>`
    SELECT DISTINCT ON (code) code, content FROM public.category_state
    WHERE revision <= ${revision} ORDER BY code, revision DESC`
  return catalogueOf(
    revision,
    states.map(({ code, content }) => readContent(content, code)),
  )
}

async function append(
  prisma: PrismaClient,
  basedOn: number,
  changed: readonly Category[],
  note: RevisionNote,
): Promise<Revision> {
  const states = changed.map((category) => ({
    code: category.code,
    retired: category.retired,
    content: writeContent(category),
  }))
  return prisma.$transaction(async (transaction) => {
    await transaction.$executeRaw`SELECT ${Prisma.raw(CATALOGUE_LOCK)}`
    refuseStale(basedOn, await latestRevision(transaction))
    const { number, author, reason, at } = await transaction.catalogueRevision.create({
      data: {
        number: basedOn + 1,
        action: note.action ?? 'edit',
        author: note.author,
        reason: note.reason,
        at: note.at,
      },
    })
    for (let from = 0; from < states.length; from += ROWS_AT_ONCE)
      await transaction.categoryState.createMany({
        data: states.slice(from, from + ROWS_AT_ONCE).map((state) => ({ ...state, revision: number })),
      })
    return { number, author, reason, at }
  }, TRANSACTION)
}

function refuseStale(basedOn: number, newest: number): void {
  if (basedOn === newest) return
  throw new DomainError(
    'stale-revision',
    `The edit is based on catalogue revision ${basedOn}, but the newest is ${newest}. Look at what changed and edit again.`,
    { basedOn, newest },
  )
}
