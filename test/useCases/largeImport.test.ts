import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import type { PrismaClient } from '../../src/persistence/generated/client.ts'
import { prismaCatalogueStore } from '../../src/persistence/prismaCatalogueStore.ts'
import { formatCategoriesCsv } from '../../src/schemas/categoryCsv.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { ADMIN_KEY, type TestApp, testApp } from '../helpers/testApp.ts'
import { testCategories } from '../helpers/testCatalogue.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'

const postgres = withPostgres()
const MANY = 10_000
const file = formatCategoriesCsv(
  Array.from({ length: MANY }, (_, index) => ({
    ...testCategories[0]!,
    code: `lamp-${index}`,
    name: `Invented lamp ${index}`,
    aliases: [],
  })),
)

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`an import of ${MANY} categories, ${databases.name}`, () => {
    let database: Database
    let prisma: PrismaClient
    let service: TestApp
    beforeEach(async () => {
      ;({ database, prisma } = await freshClient(databases))
      service = await testApp({ catalogueStore: prismaCatalogueStore(prisma) })
    })
    afterEach(async () => {
      await service.close()
      await prisma.$disconnect()
      await database.close()
    })
    afterAll(() => databases.closeAll())

    const send = () =>
      service.send
        .post('/v1/catalogue/imports')
        .query({ reason: 'a test' })
        .set({ authorization: `Bearer ${ADMIN_KEY}`, 'content-type': 'text/csv', 'if-match': '"r1.json2"' })
        .send(file)

    test('is one revision and one audit event, and the log tells how far it has come', async () => {
      const answer = await send()
      expect(answer.status).toBe(201)
      expect(answer.body).toMatchObject({
        counts: { added: MANY },
        revision: { number: 2, action: 'import' },
      })
      expect(await prisma.categoryState.count({ where: { revision: 2 } })).toBe(MANY)
      expect(await prisma.auditEvent.count({ where: { action: 'catalogue.import' } })).toBe(1)
      expect(service.deps.catalogueMemory.current().categories.size).toBe(MANY + testCategories.length)
      const told = [...service.log().matchAll(/"done":(\d+),"total":10000/g)].map(([, done]) => Number(done))
      expect(told.length).toBeGreaterThan(1)
      expect(told.at(-1)).toBe(MANY)
    }, 120_000)

    test('that fails at its last row leaves nothing behind', async () => {
      await database.withConnection((connection) =>
        connection.run(`
          CREATE FUNCTION refuse_one() RETURNS trigger LANGUAGE plpgsql AS $$
          BEGIN
            IF NEW.code = 'lamp-9999' THEN RAISE EXCEPTION 'refused for the test'; END IF;
            RETURN NEW;
          END $$;
          CREATE TRIGGER refuse_one BEFORE INSERT ON category_state FOR EACH ROW EXECUTE FUNCTION refuse_one()`),
      )
      expect((await send()).status).toBe(500)
      expect(await prisma.catalogueRevision.count()).toBe(1)
      expect(await prisma.categoryState.count()).toBe(testCategories.length)
      expect(await prisma.auditEvent.count({ where: { action: 'catalogue.import' } })).toBe(0)
      expect(service.deps.catalogueMemory.current().revision).toBe(1)
    }, 120_000)
  })
