import { type Catalogue, type CategoryState, catalogueOf } from '../core/catalogue/catalogue.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import { inTurn } from '../core/inTurn.ts'
import type { CatalogueStore, CategoryBeforeAfter } from '../stores/catalogueStore.ts'
import type { Window } from '../stores/window.ts'
import { appendRevision, latestRevision } from './appendRevision.ts'
import { readContent } from './categoryContent.ts'
import { Prisma, type PrismaClient } from './generated/client.ts'
import { isRevisionNumber, readRevision, revisionsBetween } from './readRevision.ts'

/** The catalogue's history in PostgreSQL, embedded or served. */
export function prismaCatalogueStore(prisma: PrismaClient): CatalogueStore {
  // Edits of one process wait here and not in the database, where each would hold a session that others need.
  const oneAtATime = inTurn()
  return {
    latestRevision: () => latestRevision(prisma),
    catalogueAt: (revision) => catalogueAt(prisma, revision),
    statesBetween: (after, upTo) => statesBetween(prisma, after, upTo),
    revisions: (oldest, newest) => revisions(prisma, oldest, newest),
    changesIn: (revision, window) => changesIn(prisma, revision, window),
    countChangesIn: async (revision) =>
      isRevisionNumber(revision) ? prisma.categoryState.count({ where: { revision } }) : 0,
    append: (...edit) => oneAtATime(() => appendRevision(prisma, ...edit)),
  }
}

async function catalogueAt(prisma: PrismaClient, revision: number): Promise<Catalogue | null> {
  if (!isRevisionNumber(revision)) return null
  if ((await prisma.catalogueRevision.findUnique({ where: { number: revision } })) === null) return null
  // History does not change, so what the two questions see belongs together.
  const states = await statesBetween(prisma, 0, revision)
  return catalogueOf(
    revision,
    states.map(({ category }) => category),
    new Map(states.map(({ category, revision: made }) => [category.code, made])),
  )
}

async function statesBetween(prisma: PrismaClient, after: number, upTo: number): Promise<CategoryState[]> {
  const rows = await prisma.$queryRaw<{ code: string; revision: number; content: unknown }[]>`
    SELECT DISTINCT ON (code) code, revision, content FROM public.category_state
    WHERE revision > ${after} AND revision <= ${upTo} ORDER BY code, revision DESC`
  return rows.map(({ code, revision, content }) => ({ category: readContent(content, code), revision }))
}

async function revisions(prisma: PrismaClient, oldest: number, newest: number): Promise<Revision[]> {
  const where = revisionsBetween(oldest, newest)
  const rows = await prisma.catalogueRevision.findMany({ where, orderBy: { number: 'desc' } })
  return rows.map(readRevision)
}

interface StoredChange {
  readonly code: string
  readonly before: unknown
  readonly after: unknown
}

async function changesIn(
  prisma: PrismaClient,
  revision: number,
  { after = '', before, limit, keep }: Window<string>,
): Promise<CategoryBeforeAfter[]> {
  if (!isRevisionNumber(revision)) return []
  const direction = Prisma.raw(keep === 'first' ? 'ASC' : 'DESC')
  const rows = await prisma.$queryRaw<StoredChange[]>`
    SELECT made.code, made.content AS after, past.content AS before
    FROM public.category_state made
    LEFT JOIN LATERAL (
      SELECT content FROM public.category_state older
      WHERE older.code = made.code AND older.revision < made.revision ORDER BY older.revision DESC LIMIT 1
    ) past ON true
    WHERE made.revision = ${revision} AND made.code COLLATE "C" > ${after}
      AND (${before === undefined} OR made.code COLLATE "C" < ${before ?? ''})
    ORDER BY made.code COLLATE "C" ${direction} LIMIT ${limit}`
  const changes = rows.map((row) => ({
    before: row.before === null ? null : readContent(row.before, row.code),
    after: readContent(row.after, row.code),
  }))
  return keep === 'first' ? changes : changes.reverse()
}
