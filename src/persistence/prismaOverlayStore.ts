import { auditOfOverlay } from '../core/catalogue/auditOfOverlay.ts'
import { type Overlay, overlayOf } from '../core/catalogue/overlay.ts'
import type {
  OverlayEdit,
  OverlayRevision,
  OverlayRevisionChange,
} from '../core/catalogue/overlayRevision.ts'
import { DomainError } from '../core/fault.ts'
import type { OverlayStore } from '../stores/overlayStore.ts'
import { overlayLock } from './advisoryLocks.ts'
import { readContent, writeContent } from './categoryContent.ts'
import { Prisma, type PrismaClient } from './generated/client.ts'
import { readOverlayRevision } from './readOverlayRevision.ts'
import { writeAudit } from './writeAudit.ts'

const LARGEST_INTEGER = 2_147_483_647
const TRANSACTION = {
  maxWait: 60_000,
  timeout: 60_000,
  // What is read after the wait for the lock must be what the holder before left.
  isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted,
}

/** The organisations' overlays in PostgreSQL, embedded or served. */
export function prismaOverlayStore(prisma: PrismaClient): OverlayStore {
  return {
    latestRevisions: () => latestRevisions(prisma),
    overlayAt: (organisation, revision) => overlayAt(prisma, organisation, revision),
    revisions: async (organisation, oldest, newest) => {
      const number = { gte: Math.max(oldest, 1), lte: Math.min(newest, LARGEST_INTEGER) }
      const where = { organisation, number }
      const rows = await prisma.overlayRevision.findMany({ where, orderBy: { number: 'desc' } })
      return rows.map(readOverlayRevision)
    },
    revision: (organisation, number) => revisionOf(prisma, organisation, number),
    append: (basedOn, edit) => prisma.$transaction((inside) => append(inside, basedOn, edit), TRANSACTION),
  }
}

const isNumber = (revision: number) =>
  Number.isInteger(revision) && revision >= 1 && revision <= LARGEST_INTEGER

/** Goes from one organisation to the next in the primary key, since all of its entries would be more with every edit. */
async function latestRevisions(prisma: PrismaClient): Promise<Map<string, number>> {
  const rows = await prisma.$queryRaw<{ organisation: string; number: number }[]>`
    WITH RECURSIVE newest AS (
      (SELECT organisation, number FROM public.overlay_revision ORDER BY organisation DESC, number DESC LIMIT 1)
      UNION ALL
      SELECT next.organisation, next.number FROM newest CROSS JOIN LATERAL (
        SELECT organisation, number FROM public.overlay_revision
        WHERE organisation < newest.organisation ORDER BY organisation DESC, number DESC LIMIT 1
      ) next
    )
    SELECT organisation, number FROM newest`
  return new Map(rows.map(({ organisation, number }) => [organisation, number]))
}

async function overlayAt(
  prisma: PrismaClient,
  organisation: string,
  revision: number,
): Promise<Overlay | null> {
  if (!isNumber(revision)) return null
  const where = { organisation_number: { organisation, number: revision } }
  if ((await prisma.overlayRevision.findUnique({ where })) === null) return null
  // History does not change, so what the two questions see belongs together.
  const rows = await prisma.$queryRaw<{ code: string; number: number; content: unknown }[]>`
    SELECT DISTINCT ON (code) code, number, content FROM public.overlay_revision
    WHERE organisation = ${organisation} AND number <= ${revision} ORDER BY code, number DESC`
  return overlayOf(
    organisation,
    revision,
    rows.map(({ code, number, content }) => ({
      code,
      category: categoryOf(content, code),
      revision: number,
    })),
  )
}

const categoryOf = (content: unknown, code: string) => (content === null ? null : readContent(content, code))

async function revisionOf(
  prisma: PrismaClient,
  organisation: string,
  number: number,
): Promise<OverlayRevisionChange | null> {
  if (!isNumber(number)) return null
  const made = await prisma.overlayRevision.findUnique({
    where: { organisation_number: { organisation, number } },
  })
  if (made === null) return null
  const before = await stateBefore(prisma, organisation, made.code, number)
  return { ...readOverlayRevision(made), before, after: categoryOf(made.content, made.code) }
}

async function stateBefore(
  prisma: Prisma.TransactionClient,
  organisation: string,
  code: string,
  number: number,
) {
  const state = await prisma.overlayRevision.findFirst({
    where: { organisation, code, number: { lt: number } },
    orderBy: { number: 'desc' },
  })
  return categoryOf(state?.content ?? null, code)
}

async function append(
  inside: Prisma.TransactionClient,
  basedOn: number,
  edit: OverlayEdit,
): Promise<OverlayRevision> {
  const { organisation, keyId } = edit.origin.caller
  await inside.$executeRaw`SELECT ${overlayLock(organisation)}`
  const { _max } = await inside.overlayRevision.aggregate({
    where: { organisation },
    _max: { number: true },
  })
  refuseStale(basedOn, _max.number ?? 0)
  const { action, code, category, reason, at } = edit
  const number = basedOn + 1
  const before = await stateBefore(inside, organisation, code, number)
  const content = category === null ? Prisma.DbNull : writeContent(category)
  const made = await inside.overlayRevision.create({
    data: { organisation, number, action, keyId, reason, at, code, content },
  })
  await writeAudit(inside, auditOfOverlay(edit, number, before))
  return readOverlayRevision(made)
}

function refuseStale(basedOn: number, newest: number): void {
  if (basedOn === newest) return
  throw new DomainError(
    'stale-overlay',
    `The edit is based on revision ${basedOn} of your organisation's figures, but the newest is ${newest}. Look at what changed and edit again.`,
    { basedOn, newest },
  )
}
