import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import type { PrismaClient } from '../../src/persistence/generated/client.ts'
import { prismaCatalogueStore } from '../../src/persistence/prismaCatalogueStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { aCategory } from '../stores/aCategory.ts'
import { aNote } from '../stores/aNote.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'

const postgres = withPostgres()

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`the audit trail of edits, ${databases.name}`, () => {
    let database: Database
    let prisma: PrismaClient
    beforeEach(async () => {
      ;({ database, prisma } = await freshClient(databases))
    })
    afterEach(async () => {
      await prisma.$disconnect()
      await database.close()
    })
    afterAll(() => databases.closeAll())

    const events = () => prisma.auditEvent.findMany({ orderBy: { id: 'asc' }, omit: { id: true } })

    it('holds one event for each edit, with who, what, before, after and the request', async () => {
      const store = prismaCatalogueStore(prisma)
      await store.append(0, [aCategory('a')], { ...aNote, action: 'create' })
      await store.append(1, [aCategory('a', { name: 'Renamed' })], aNote)
      const who = { organisation: 'an-organisation', keyId: 'a-key', requestId: 'a-request', at: aNote.at }
      const { reason } = aNote
      expect(await events()).toEqual([
        {
          ...who,
          concerns: 'an-organisation',
          action: 'catalogue.create',
          subjectKind: 'category',
          subjectId: 'a',
          before: null,
          after: { catalogueRevision: 1, reason, category: aCategory('a') },
        },
        {
          ...who,
          concerns: 'an-organisation',
          action: 'catalogue.change',
          subjectKind: 'category',
          subjectId: 'a',
          before: { catalogueRevision: 1, category: aCategory('a') },
          after: { catalogueRevision: 2, reason, category: aCategory('a', { name: 'Renamed' }) },
        },
      ])
    })

    it('names the revision of an edit of several categories, which holds them before and after', async () => {
      const note = { ...aNote, action: 'seed', origin: null } as const
      await prismaCatalogueStore(prisma).append(0, [aCategory('a'), aCategory('b')], note)
      expect(await events()).toMatchObject([
        {
          organisation: null,
          keyId: null,
          requestId: null,
          action: 'catalogue.seed',
          subjectKind: 'catalogue',
          subjectId: '1',
          before: { catalogueRevision: 0 },
          after: { catalogueRevision: 1, reason: 'a test', changedCategories: 2 },
        },
      ])
    })

    it('holds nothing of an edit that was not stored', async () => {
      const store = prismaCatalogueStore(prisma)
      await store.append(0, [aCategory('a')], aNote)
      await expect(store.append(0, [aCategory('b')], aNote)).rejects.toMatchObject({ code: 'stale-revision' })
      await expect(store.append(1, [aCategory('c'), aCategory('c')], aNote)).rejects.toThrow()
      expect(await events()).toHaveLength(1)
    })
  })
