import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import { prismaOverlayStore } from '../../src/persistence/prismaOverlayStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { aCategory } from '../stores/aCategory.ts'
import { anOverlayEdit } from '../stores/overlayStoreContract.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'

const postgres = withPostgres()
const content = (code: string) => JSON.stringify(aCategory(code))
const row = (number: number, code: string, stored: string, action = 'lay') =>
  `INSERT INTO overlay_revision VALUES ('ours', ${number}, '${action}', 'a-key', 'a reason', now(), '${code}', ${stored})`

/** Ways to change what is written. Some would touch no row: they are refused all the same. */
const CHANGES = [
  "UPDATE overlay_revision SET reason = 'another'",
  "UPDATE overlay_revision SET organisation = 'theirs' WHERE number = 99",
  'DELETE FROM overlay_revision',
  'TRUNCATE overlay_revision',
  `${row(2, 'a', `'${content('a')}'`)} ON CONFLICT (organisation, number) DO UPDATE SET content = excluded.content`,
  "SET session_replication_role = 'replica'; DELETE FROM overlay_revision",
]

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`the history of overlays in the database itself, ${databases.name}`, () => {
    let database: Database
    const run = (sql: string) => database.withConnection((connection) => connection.run(sql))
    const everything = () =>
      database.withConnection((connection) =>
        connection.query('SELECT * FROM overlay_revision ORDER BY organisation, number'),
      )
    beforeEach(async () => {
      const client = await freshClient(databases)
      database = client.database
      await run(
        "INSERT INTO organisation VALUES ('ours', 'Ours', now()), ('theirs', 'Theirs', now()), ('third', 'Third', now())",
      )
      const store = prismaOverlayStore(client.prisma)
      await store.append(0, anOverlayEdit('ours', 'a'))
      await store.append(0, anOverlayEdit('theirs', 'a'))
    })
    afterEach(() => database.close())
    afterAll(() => databases.closeAll())

    it.each(CHANGES)('refuses %s', async (sql) => {
      const before = await everything()
      await expect(run(sql)).rejects.toThrow(/is append-only: (UPDATE|DELETE|TRUNCATE) is refused/)
      await run('RESET session_replication_role')
      expect(await everything()).toEqual(before)
      expect(before).toHaveLength(2)
    })

    it.each([
      ['one that leaves a gap', row(3, 'b', `'${content('b')}'`)],
      ['one that is there already', row(1, 'b', `'${content('b')}'`)],
    ])('refuses a revision of an organisation that does not follow its newest: %s', async (_, sql) => {
      await expect(run(sql)).rejects.toThrow(/is append-only: revision \d+ does not follow 1/)
      expect(await everything()).toHaveLength(2)
    })

    it.each([
      ['content of another category', row(2, 'c', `'${content('d')}'`)],
      ['a removal that leaves content', row(2, 'a', `'${content('a')}'`, 'remove')],
      ['content that is missing though nothing was removed', row(2, 'a', 'NULL')],
    ])('refuses %s', async (_, sql) => {
      await expect(run(sql)).rejects.toThrow(/overlay_revision_(agrees|removes)/)
    })

    it('lets an organisation that has an overlay not be removed', async () => {
      await expect(run("DELETE FROM organisation WHERE code = 'ours'")).rejects.toThrow('foreign key')
      await run("DELETE FROM organisation WHERE code = 'third'")
    })
  })
