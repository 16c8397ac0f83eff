import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import type { PrismaClient } from '../../src/persistence/generated/client.ts'
import { prismaAuditStore } from '../../src/persistence/prismaAuditStore.ts'
import { prismaReferenceStore } from '../../src/persistence/prismaReferenceStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { aNote as note } from '../stores/aNote.ts'
import { aFactor, aTariff } from '../stores/aReference.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'

const postgres = withPostgres()
const content = (code: string, retired = false) => JSON.stringify(aTariff(code, { retired }).content)

/** Ways to change what is written. Some would touch no row: they are refused all the same. */
const CHANGES = [
  "UPDATE reference_revision SET reason = 'another'",
  'UPDATE reference_state SET retired = false WHERE revision = 99',
  'DELETE FROM reference_revision',
  'DELETE FROM reference_state',
  'TRUNCATE reference_state',
  'TRUNCATE reference_revision CASCADE',
  "SET session_replication_role = 'replica'; DELETE FROM reference_state",
]

/** Inserts that would change what a revision, once read, has said. */
const LATE_INSERTS = [
  [
    'a state into an older revision',
    `INSERT INTO reference_state VALUES ('tariff', 'c', 1, false, '${content('c')}')`,
  ],
  [
    'a state into the newest revision, after it was made',
    `INSERT INTO reference_state VALUES ('tariff', 'c', 2, false, '${content('c')}')`,
  ],
  [
    'a revision that leaves a gap',
    "INSERT INTO reference_revision VALUES (4, 'edit', 'a', null, 'b', now())",
  ],
] as const

const UNFIT_STATES = [
  ['content of another code', `('tariff', 'c', 3, false, '${content('d')}')`],
  ['content that says otherwise whether it is retired', `('tariff', 'c', 3, true, '${content('c')}')`],
  ['a kind that there is none of', `('limit', 'c', 3, false, '${content('c')}')`],
] as const

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`the history of tariffs and emission factors in the database itself, ${databases.name}`, () => {
    let database: Database
    let prisma: PrismaClient
    const run = (sql: string) => database.withConnection((connection) => connection.run(sql))
    const everything = () =>
      database.withConnection(async (connection) => [
        await connection.query('SELECT * FROM reference_revision ORDER BY number'),
        await connection.query('SELECT kind, code, revision, retired, content::text FROM reference_state'),
      ])
    beforeEach(async () => {
      ;({ database, prisma } = await freshClient(databases))
      const store = prismaReferenceStore(prisma)
      await store.append(0, [aTariff('a'), aFactor('b')], { ...note, action: 'seed', origin: null })
      await store.append(1, [aTariff('a', { name: 'Renamed' })], note)
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
      const before = await everything()
      const insert = run(
        `BEGIN; INSERT INTO reference_revision VALUES (3, 'change', 'a', null, 'b', now());
         INSERT INTO reference_state VALUES ${row}; COMMIT`,
      )
      await expect(insert).rejects.toThrow(/violates check constraint/)
      await run('ROLLBACK')
      expect(await everything()).toEqual(before)
    })

    it('leaves an audit event of each edit in its transaction: who, what, before and after', async () => {
      const events = await prismaAuditStore(prisma).list({}, { limit: 9, keep: 'first' })
      const { reason } = note
      expect(events).toMatchObject([
        {
          organisation: 'an-organisation',
          keyId: 'a-key',
          requestId: 'a-request',
          at: note.at,
          action: 'reference.change',
          subjectKind: 'tariff',
          subjectId: 'a',
          before: { referenceRevision: 1, content: aTariff('a').content },
          after: { referenceRevision: 2, reason, content: { ...aTariff('a').content, name: 'Renamed' } },
        },
        {
          organisation: null,
          action: 'reference.seed',
          subjectKind: 'reference-data',
          subjectId: '1',
          before: { referenceRevision: 0 },
          after: { referenceRevision: 1, changedEntries: 2 },
        },
      ])
    })

    it('holds no audit event of an edit that was not stored', async () => {
      const store = prismaReferenceStore(prisma)
      await expect(store.append(1, [aTariff('c')], note)).rejects.toMatchObject({ code: 'stale-revision' })
      await expect(store.append(2, [aTariff('c'), aTariff('c')], note)).rejects.toThrow()
      expect(await prismaAuditStore(prisma).count({})).toBe(2)
    })
  })
