import type { Category } from '../core/catalogue/category.ts'
import { authorOf, type Revision, type RevisionNote } from '../core/catalogue/revision.ts'
import { DomainError } from '../core/fault.ts'
import { CATALOGUE_LOCK } from './advisoryLocks.ts'
import { auditOfEdit } from './auditOfEdit.ts'
import { readContent, writeContent } from './categoryContent.ts'
import { Prisma, type PrismaClient } from './generated/client.ts'
import { readRevision } from './readRevision.ts'
import { writeAudit } from './writeAudit.ts'

const ROWS_AT_ONCE = 1_000
const TRANSACTION = {
  // Prisma's own limits, 2 s and 5 s, are too short for an import of a whole catalogue and for those who wait behind it.
  maxWait: 60_000,
  timeout: 300_000,
  // What is read after the wait for the lock must be what the holder before left; a stricter level would show older rows.
  isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted,
}

/** CatalogueStore.append: the revision, the states and the audit event in one transaction, and no two at a time. */
export async function appendRevision(
  prisma: PrismaClient,
  basedOn: number,
  changed: readonly Category[],
  note: RevisionNote,
  onProgress: (done: number, total: number) => void = () => undefined,
): Promise<Revision> {
  const states = changed.map((category) => ({
    code: category.code,
    retired: category.retired,
    content: writeContent(category),
  }))
  return prisma.$transaction(async (transaction) => {
    await transaction.$executeRaw`SELECT ${Prisma.raw(CATALOGUE_LOCK)}`
    refuseStale(basedOn, await latestRevision(transaction))
    const before = await statesOf(transaction, changed)
    const number = basedOn + 1
    const { action, reason, at } = note
    const { organisation: author, keyId } = authorOf(note)
    const made = await transaction.catalogueRevision.create({
      data: { number, action, author, keyId, reason, at },
    })
    for (let from = 0; from < states.length; from += ROWS_AT_ONCE) {
      const rows = states.slice(from, from + ROWS_AT_ONCE)
      await transaction.categoryState.createMany({
        data: rows.map((state) => ({ ...state, revision: number })),
      })
      onProgress(from + rows.length, states.length)
    }
    await writeAudit(transaction, auditOfEdit(note, number, changed, before))
    return readRevision(made)
  }, TRANSACTION)
}

export async function latestRevision(prisma: Prisma.TransactionClient): Promise<number> {
  const { _max } = await prisma.catalogueRevision.aggregate({ _max: { number: true } })
  return _max.number ?? 0
}

/** The state that a single category has before the edit, for the audit trail; of an edit of several none are needed. */
async function statesOf(
  transaction: Prisma.TransactionClient,
  changed: readonly Category[],
): Promise<Category[]> {
  const [only] = changed
  if (changed.length !== 1 || !only) return []
  const state = await transaction.categoryState.findFirst({
    where: { code: only.code },
    orderBy: { revision: 'desc' },
  })
  return state === null ? [] : [readContent(state.content, only.code)]
}

function refuseStale(basedOn: number, newest: number): void {
  if (basedOn === newest) return
  throw new DomainError(
    'stale-revision',
    `The edit is based on catalogue revision ${basedOn}, but the newest is ${newest}. Look at what changed and edit again.`,
    { basedOn, newest },
  )
}
