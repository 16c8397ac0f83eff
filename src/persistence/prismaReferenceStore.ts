import type { Revision, RevisionNote } from '../core/catalogue/revision.ts'
import { inTurn } from '../core/inTurn.ts'
import { type ReferenceData, referenceDataOf } from '../core/reference/referenceData.ts'
import type { ReferenceEntry } from '../core/reference/referenceEntry.ts'
import type { ReferenceStore } from '../stores/referenceStore.ts'
import { REFERENCE_LOCK } from './advisoryLocks.ts'
import { revisionRow } from './appendRevision.ts'
import { auditOfReference } from './auditOfReference.ts'
import { editTransaction } from './editTransaction.ts'
import type { Prisma, PrismaClient } from './generated/client.ts'
import { readRevision, revisionsBetween, isRevisionNumber } from './readRevision.ts'
import { readEntry, writeEntry } from './referenceContent.ts'
import { writeAudit } from './writeAudit.ts'

/** The history of tariffs and emission factors in PostgreSQL, embedded or served. */
export function prismaReferenceStore(prisma: PrismaClient): ReferenceStore {
  // As in the catalogue's store: edits of one process wait here, where they hold no session.
  const oneAtATime = inTurn()
  return {
    latestRevision: () => latest(prisma),
    dataAt: (revision) => dataAt(prisma, revision),
    revisions: async (oldest, newest) => {
      const where = revisionsBetween(oldest, newest)
      const rows = await prisma.referenceRevision.findMany({ where, orderBy: { number: 'desc' } })
      return rows.map(readRevision)
    },
    append: (...edit) => oneAtATime(() => append(prisma, ...edit)),
  }
}

async function latest(prisma: Prisma.TransactionClient): Promise<number> {
  const { _max } = await prisma.referenceRevision.aggregate({ _max: { number: true } })
  return _max.number ?? 0
}

async function dataAt(prisma: PrismaClient, revision: number): Promise<ReferenceData | null> {
  if (!isRevisionNumber(revision)) return null
  if ((await prisma.referenceRevision.findUnique({ where: { number: revision } })) === null) return null
  const rows = await prisma.$queryRaw<{ kind: string; revision: number; content: unknown }[]>`
    SELECT DISTINCT ON (kind, code) kind, code, revision, content FROM public.reference_state
    WHERE revision <= ${revision} ORDER BY kind, code, revision DESC`
  return referenceDataOf(
    revision,
    rows.map(({ kind, content, revision: made }) => ({ entry: readEntry(kind, content), revision: made })),
  )
}

/** The revision, the states and the audit event in one transaction, and no two at a time. */
function append(
  prisma: PrismaClient,
  basedOn: number,
  changed: readonly ReferenceEntry[],
  note: RevisionNote,
): Promise<Revision> {
  const history = { lock: REFERENCE_LOCK, name: 'reference data', latest }
  return editTransaction(prisma, history, basedOn, async (transaction) => {
    const before = await stateBefore(transaction, changed)
    const revision = basedOn + 1
    const made = await transaction.referenceRevision.create({ data: revisionRow(revision, note) })
    await transaction.referenceState.createMany({
      data: changed.map((entry) => ({ ...writeEntry(entry), revision })),
    })
    await writeAudit(transaction, auditOfReference(note, revision, changed, before))
    return readRevision(made)
  })
}

/** The state that a single entry has before the edit, for the audit trail. */
async function stateBefore(
  transaction: Prisma.TransactionClient,
  changed: readonly ReferenceEntry[],
): Promise<ReferenceEntry | null> {
  const [only] = changed
  if (changed.length !== 1 || !only) return null
  const state = await transaction.referenceState.findFirst({
    where: { kind: only.kind, code: only.content.code },
    orderBy: { revision: 'desc' },
  })
  return state && readEntry(state.kind, state.content)
}
