import type { Mode } from '../core/catalogue/category.ts'
import type { Rejection } from '../core/proposals/rejection.ts'
import type { RealPowerReading, StoredReading } from '../core/proposals/storedReading.ts'
import { without } from '../core/without.ts'
import type { ProposalStore } from '../stores/proposalStore.ts'
import type { Prisma, PrismaClient } from './generated/client.ts'
import { writeAudit } from './writeAudit.ts'

/** A page of readings; one may be a series of some ten thousand samples. */
const PAGE = 500

/**
 * Readings and rejections in PostgreSQL, embedded or served. device_reading grows with the readings of all visits, one row each
 * (without a series some 150 bytes), and follows the inventories by a trigger: see prisma/migrations/0007_proposals.sql. A category
 * is read along its index; the names alone are found by going through that index once.
 */
export function prismaProposalStore(prisma: PrismaClient): ProposalStore {
  return {
    categoryNames: async () => {
      const rows = await prisma.$queryRaw<{ readonly category: string }[]>`
        SELECT DISTINCT category FROM public.device_reading ORDER BY category`
      return rows.map(({ category }) => category)
    },
    readings: (categoryName) => pages(prisma, categoryName),
    rejections: async (category) => {
      const rows = await prisma.proposalRejection.findMany({ where: { category }, orderBy: { id: 'asc' } })
      return rows.map(rejectionOf)
    },
    reject: (rejection, event) =>
      prisma.$transaction(async (inside) => {
        const { author, ...rest } = rejection
        await inside.proposalRejection.create({
          data: { ...rest, author: author.organisation, keyId: author.keyId! },
        })
        await writeAudit(inside, event)
      }),
  }
}

async function* pages(prisma: PrismaClient, category: string): AsyncGenerator<StoredReading[]> {
  let after = 0n
  for (;;) {
    const rows = await prisma.deviceReading.findMany({
      where: { category, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: PAGE,
    })
    const last = rows.at(-1)
    if (last === undefined) return
    yield rows.map(readingOf)
    if (rows.length < PAGE) return
    after = last.id
  }
}

/** Mode and reading are not looked at: only this service writes them, after their rules were checked. */
const readingOf = (row: Prisma.DeviceReadingGetPayload<object>): StoredReading => ({
  ...without(row, 'id'),
  visit: row.visit.toISOString().slice(0, 10),
  mode: row.mode as Mode,
  reading: row.reading as unknown as RealPowerReading,
})

const rejectionOf = (row: Prisma.ProposalRejectionGetPayload<object>): Rejection => ({
  ...without(row, 'id', 'keyId'),
  mode: row.mode as Mode,
  author: { organisation: row.author, keyId: row.keyId },
})
