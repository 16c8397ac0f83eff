import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import { prismaCatalogueStore } from '../../src/persistence/prismaCatalogueStore.ts'
import { inTransaction } from '../../src/persistence/sqlConnection.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { aCategory } from '../stores/aCategory.ts'
import { aNote as note } from '../stores/aNote.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'

const postgres = withPostgres()
const content = (code: string, retired = false) => JSON.stringify(aCategory(code, { retired }))

/** Ways to change what is written. Some would touch no row: they are refused all the same. */
const CHANGES = [
  "UPDATE catalogue_revision SET reason = 'another'",
  'UPDATE catalogue_revision SET number = number + 10',
  'UPDATE category_state SET retired = false WHERE revision = 99',
  "UPDATE category_state SET content = content || '{}'",
  'DELETE FROM catalogue_revision',
  'DELETE FROM category_state',
  'TRUNCATE category_state',
  'TRUNCATE catalogue_revision CASCADE',
  `INSERT INTO category_state VALUES ('a', 2, false, '{}')
   ON CONFLICT (code, revision) DO UPDATE SET content = excluded.content`,
  "SET session_replication_role = 'replica'; DELETE FROM category_state",
]

/** Inserts that would change what a revision, once read, has said. */
const LATE_INSERTS = [
  ['a state into an older revision', `INSERT INTO category_state VALUES ('c', 1, false, '${content('c')}')`],
  [
    'a state into the newest revision, after it was made',
    `INSERT INTO category_state VALUES ('c', 2, false, '${content('c')}')`,
  ],
  ['a revision that leaves a gap', "INSERT INTO catalogue_revision VALUES (4, 'edit', 'a', 'b', now())"],
  ['a revision below the newest', "INSERT INTO catalogue_revision VALUES (0, 'edit', 'a', 'b', now())"],
] as const

const UNFIT_STATES = [
  ['content of another category', `('c', 3, false, '${content('d')}')`],
  ['content that says otherwise whether it is retired', `('c', 3, true, '${content('c')}')`],
  ['content without a code', "('c', 3, false, '{\"retired\": false}')"],
] as const

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`the history of the catalogue in the database itself, ${databases.name}`, () => {
    let database: Database
    const run = (sql: string) => database.withConnection((connection) => connection.run(sql))
    const everything = () =>
      database.withConnection(async (connection) => [
        await connection.query('SELECT * FROM catalogue_revision ORDER BY number'),
        await connection.query('SELECT * FROM category_state ORDER BY code, revision'),
      ])
    beforeEach(async () => {
      const client = await freshClient(databases)
      database = client.database
      const store = prismaCatalogueStore(client.prisma)
      await store.append(0, [aCategory('a'), aCategory('b')], note)
      await store.append(1, [aCategory('a', { name: 'Renamed' })], note)
    })
    afterEach(() => database.close())
    afterAll(() => databases.closeAll())

    it.each(CHANGES)('refuses %s', async (sql) => {
      const before = await everything()
      await expect(run(sql)).rejects.toThrow(/is append-only: (UPDATE|DELETE|TRUNCATE) is refused/)
      await run('RESET session_replication_role')
      expect(await everything()).toEqual(before)
      expect(before.map((rows) => rows.length)).toEqual([2, 3])
    })

    it.each(LATE_INSERTS)('refuses %s', async (_, sql) => {
      const before = await everything()
      await expect(run(sql)).rejects.toThrow(/is append-only: revision \d+ (is closed|does not follow 2)/)
      expect(await everything()).toEqual(before)
    })

    it.each(UNFIT_STATES)('refuses %s', async (_, row) => {
      const insert = database.withConnection((connection) =>
        inTransaction(connection, async () => {
          await connection.run("INSERT INTO catalogue_revision VALUES (3, 'edit', 'a', 'b', now())")
          await connection.run(`INSERT INTO category_state VALUES ${row}`)
        }),
      )
      await expect(insert).rejects.toThrow('category_state_agrees_with_content')
    })
  })
