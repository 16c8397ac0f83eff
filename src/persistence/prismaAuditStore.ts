import type { AuditEvent } from '../core/access/auditEvent.ts'
import type { AuditFilter, AuditStore } from '../stores/auditStore.ts'
import type { Window } from '../stores/window.ts'
import type { Prisma, PrismaClient } from './generated/client.ts'

/** Below the largest bigint. */
const IDS = /^[1-9][0-9]{0,17}$/

/** The audit trail in PostgreSQL, embedded or served. */
export function prismaAuditStore(prisma: PrismaClient): AuditStore {
  return {
    find: async (id) => {
      if (!IDS.test(id)) return null
      const row = await prisma.auditEvent.findUnique({ where: { id: BigInt(id) } })
      return row && eventOf(row)
    },
    list: async (filter, window) => {
      const { limit, keep } = window
      const rows = await prisma.auditEvent.findMany({
        where: { AND: [whereOf(filter), idsOf(window)] },
        orderBy: { id: keep === 'first' ? 'desc' : 'asc' },
        take: limit,
      })
      return (keep === 'first' ? rows : rows.reverse()).map(eventOf)
    },
    count: (filter) => prisma.auditEvent.count({ where: whereOf(filter) }),
  }
}

const eventOf = ({ id, ...row }: Prisma.AuditEventGetPayload<object>): AuditEvent => ({
  id: String(id),
  ...row,
})

function whereOf({ organisation, action, subjectKind, subjectId, from, to }: AuditFilter) {
  return {
    ...(organisation !== undefined && { concerns: organisation }),
    ...(action !== undefined && { action }),
    ...(subjectKind !== undefined && { subjectKind }),
    ...(subjectId !== undefined && { subjectId }),
    at: { ...(from && { gte: from }), ...(to && { lt: to }) },
  } satisfies Prisma.AuditEventWhereInput
}

const idsOf = ({ after, before }: Window<string>) => ({
  id: {
    ...(after !== undefined && { lt: BigInt(after) }),
    ...(before !== undefined && { gt: BigInt(before) }),
  },
})
