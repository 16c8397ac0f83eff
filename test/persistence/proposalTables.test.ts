import { afterAll, afterEach, describe, expect, it } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import { migrate } from '../../src/persistence/migrate.ts'
import { prismaKeyStore } from '../../src/persistence/prismaKeyStore.ts'
import { prismaProposalStore } from '../../src/persistence/prismaProposalStore.ts'
import { readMigrations } from '../../src/persistence/readMigrations.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { anOrganisation } from '../stores/aKey.ts'
import { anEvent } from '../stores/anInventory.ts'
import { aRejection } from '../stores/proposalStoreContract.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'

const postgres = withPostgres()

/** Ways to change what is written. Some would touch no row: they are refused all the same. */
const CHANGES = [
  "UPDATE proposal_rejection SET reason = 'another'",
  'UPDATE proposal_rejection SET n = 9 WHERE false',
  'DELETE FROM proposal_rejection',
  'TRUNCATE proposal_rejection',
  "SET session_replication_role = 'replica'; DELETE FROM proposal_rejection",
]
const CONTENT = JSON.stringify({
  reference: 'H-1',
  visits: [
    {
      date: '2026-01-15',
      devices: [{ category: 'TV', modes: [{ mode: 'standby', reading: { kind: 'power', watts: 1 } }] }],
    },
  ],
})

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`rejections and readings in the database itself, ${databases.name}`, () => {
    let database: Database
    const run = (sql: string) => database.withConnection((connection) => connection.run(sql))
    const query = (sql: string) => database.withConnection((connection) => connection.query(sql))
    afterEach(() => database.close())
    afterAll(() => databases.closeAll())

    it.each(CHANGES)('refuses %s', async (sql) => {
      const client = await freshClient(databases)
      database = client.database
      await prismaKeyStore(client.prisma).addOrganisation(anOrganisation('one'), null)
      await prismaProposalStore(client.prisma).reject(aRejection(), anEvent('television'))
      await expect(run(sql)).rejects.toThrow(/is append-only: (UPDATE|DELETE|TRUNCATE) is refused/)
      await run('RESET session_replication_role')
      expect(await query('SELECT reason FROM proposal_rejection')).toEqual([{ reason: aRejection().reason }])
    })

    it('finds the readings of inventories that were stored before there was a table for them', async () => {
      database = await databases.fresh()
      const migrations = await readMigrations()
      const earlier = migrations.filter(({ name }) => name < '0007')
      await database.withConnection((connection) => migrate(connection, earlier))
      await run(`INSERT INTO organisation VALUES ('one', 'One', now());
        INSERT INTO inventory (organisation, id, reference, version, created_at, updated_at, visits, last_visit, content)
        VALUES ('one', 'home', 'H-1', 1, now(), now(), 1, '2026-01-15', '${CONTENT}')`)
      await database.withConnection((connection) => migrate(connection, migrations))
      expect(await query('SELECT inventory, category, mode, place FROM device_reading')).toEqual([
        { inventory: 'home', category: 'TV', mode: 'standby', place: 0 },
      ])
    })
  })
