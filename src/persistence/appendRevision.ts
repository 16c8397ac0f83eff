import type { Category } from '../core/catalogue/category.ts'
import { authorOf, type Revision, type RevisionNote } from '../core/catalogue/revision.ts'
import { CATALOGUE_LOCK } from './advisoryLocks.ts'
import { auditOfEdit } from './auditOfEdit.ts'
import { readContent, writeContent } from './categoryContent.ts'
import { editTransaction } from './editTransaction.ts'
import type { Prisma, PrismaClient } from './generated/client.ts'
import { readRevision } from './readRevision.ts'
import { writeAudit } from './writeAudit.ts'

const ROWS_AT_ONCE = 1_000

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
  const history = { lock: CATALOGUE_LOCK, name: 'catalogue', latest: latestRevision }
  return editTransaction(prisma, history, basedOn, async (transaction) => {
    const before = await statesOf(transaction, changed)
    const number = basedOn + 1
    const made = await transaction.catalogueRevision.create({ data: revisionRow(number, note) })
    for (let from = 0; from < states.length; from += ROWS_AT_ONCE) {
      const rows = states.slice(from, from + ROWS_AT_ONCE)
      await transaction.categoryState.createMany({
        data: rows.map((state) => ({ ...state, revision: number })),
      })
      onProgress(from + rows.length, states.length)
    }
    await writeAudit(transaction, auditOfEdit(note, number, changed, before))
    return readRevision(made)
  })
}

/** The row of a revision, of whichever history. */
export function revisionRow(number: number, note: RevisionNote) {
  const { action, reason, at } = note
  const { organisation: author, keyId } = authorOf(note)
  return { number, action, author, keyId, reason, at }
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
