import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import type { PrismaClient } from '../../src/persistence/generated/client.ts'
import { prismaKeyStore } from '../../src/persistence/prismaKeyStore.ts'
import { writeAudit } from '../../src/persistence/writeAudit.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { aKey, anOrganisation } from '../stores/aKey.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'

const postgres = withPostgres()

/** Ways to change what was done. Some would touch no row: they are refused all the same. */
const CHANGES_OF_THE_TRAIL = [
  "UPDATE audit_event SET action = 'nothing'",
  'UPDATE audit_event SET at = now() WHERE false',
  'DELETE FROM audit_event',
  'TRUNCATE audit_event',
  "SET session_replication_role = 'replica'; DELETE FROM audit_event",
]

/** Ways to make another key of one, or to let one live on. */
const CHANGES_OF_KEYS = [
  "UPDATE api_key SET scopes = '{admin}' WHERE id = 'ends'",
  "UPDATE api_key SET organisation = 'other' WHERE id = 'ends'",
  "UPDATE api_key SET name = 'Another' WHERE id = 'ends'",
  String.raw`UPDATE api_key SET digest = decode(repeat('00', 32), 'hex') WHERE id = 'ends'`,
  "UPDATE api_key SET origins = '{https://evil.example}', kind = 'publishable' WHERE id = 'ends'",
  "UPDATE api_key SET expires_at = expires_at + interval '1 ms' WHERE id = 'ends'",
  "UPDATE api_key SET expires_at = NULL WHERE id = 'ends'",
  "UPDATE api_key SET revoked_at = NULL WHERE id = 'revoked'",
  "UPDATE api_key SET revoked_at = revoked_at + interval '1 h' WHERE id = 'revoked'",
  "SET session_replication_role = 'replica'; UPDATE api_key SET revoked_at = NULL WHERE id = 'revoked'",
]

const REMOVALS_OF_KEYS = ["DELETE FROM api_key WHERE id = 'ends'", 'TRUNCATE api_key CASCADE']

const UNFIT_KEYS = [
  ['without a scope', "'secret', '{}', '{}'", 'api_key_scopes_check'],
  ['of an unknown kind', "'other', '{admin}', '{}'", 'api_key_kind_check'],
  [
    'that is publishable and has no origin',
    "'publishable', '{estimate}', '{}'",
    'origins_of_publishable_keys',
  ],
  [
    'that is secret and has an origin',
    "'secret', '{admin}', '{https://x.example}'",
    'origins_of_publishable_keys',
  ],
] as const

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`keys and the audit trail in the database itself, ${databases.name}`, () => {
    let database: Database
    let prisma: PrismaClient
    const run = (sql: string) => database.withConnection((connection) => connection.run(sql))
    const everything = () =>
      database.withConnection(async (connection) => [
        await connection.query('SELECT * FROM api_key ORDER BY id'),
        await connection.query('SELECT * FROM audit_event ORDER BY id'),
      ])
    beforeEach(async () => {
      const client = await freshClient(databases)
      database = client.database
      prisma = client.prisma
      const store = prismaKeyStore(prisma)
      await store.addOrganisation(anOrganisation('operator'), null)
      await store.addOrganisation(anOrganisation('other'), null)
      await store.issue(aKey('ends', { expiresAt: new Date('2100-01-01') }), null)
      await store.issue(aKey('revoked', { revokedAt: new Date('2024-03-01') }), null)
    })
    afterEach(() => database.close())
    afterAll(() => databases.closeAll())

    const refuses = async (sql: string, reason: RegExp) => {
      const before = await everything()
      await expect(run(sql)).rejects.toThrow(reason)
      await run('RESET session_replication_role')
      expect(await everything()).toEqual(before)
      expect(before.map((rows) => rows.length)).toEqual([2, 4])
    }

    it.each(CHANGES_OF_THE_TRAIL)('refuses %s', (sql) =>
      refuses(sql, /audit_event is append-only: (UPDATE|DELETE|TRUNCATE) is refused/),
    )
    it.each(CHANGES_OF_KEYS)('refuses %s', (sql) => refuses(sql, /can only end sooner/))
    it.each(REMOVALS_OF_KEYS)('refuses %s', (sql) =>
      refuses(sql, /api_key keeps every key: (DELETE|TRUNCATE) is refused/),
    )
    it('lets nobody choose the place of an event', () =>
      refuses(
        `INSERT INTO audit_event (id, at, action, subject_kind, subject_id) VALUES (1000, now(), 'a', 'b', 'c')`,
        /cannot insert a non-DEFAULT value/,
      ))
    it('keeps an organisation that has keys', () =>
      refuses("DELETE FROM organisation WHERE code = 'operator'", /violates .*foreign key/))

    it.each(UNFIT_KEYS)('refuses a key %s', (_, kindScopesOrigins, constraint) =>
      refuses(
        `INSERT INTO api_key (id, organisation, name, kind, scopes, origins, digest, bootstrap, issued_at)
         VALUES ('unfit', 'operator', 'x', ${kindScopesOrigins}, decode(repeat('00', 32), 'hex'), false, now())`,
        new RegExp(constraint),
      ),
    )

    it('stores an event with the change that it speaks of, or neither', async () => {
      const before = await everything()
      const undone = prisma.$transaction(async (inside) => {
        const [at, subject] = [new Date('2024-03-01'), { subjectKind: 'api-key', subjectId: 'ends' }]
        await inside.apiKey.update({ where: { id: 'ends' }, data: { revokedAt: at } })
        await writeAudit(inside, { at, origin: null, action: 'a', ...subject, before: null, after: null })
        throw new Error('undone')
      })
      await expect(undone).rejects.toThrow('undone')
      expect(await everything()).toEqual(before)
    })
  })
