import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Database } from '../../src/persistence/database.ts'
import { migrate } from '../../src/persistence/migrate.ts'
import { openPostgres } from '../../src/persistence/openPostgres.ts'
import { readMigrations } from '../../src/persistence/readMigrations.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { embeddedDatabases, failOnLoss, servedDatabases } from '../stores/testDatabases.ts'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'migrations-'))
})
afterEach(() => rm(folder, { recursive: true }))

const write = (name: string, sql: string) => writeFile(join(folder, name), sql)
const postgres = withPostgres()

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`migrations, ${databases.name}`, () => {
    let database: Database
    beforeEach(async () => {
      database = await databases.fresh()
      await write('0001_first.sql', 'CREATE TABLE first (id integer); INSERT INTO first VALUES (1), (2);')
      await write('0002_second.sql', 'ALTER TABLE first ADD COLUMN more text;')
    })
    afterEach(() => database.close())
    afterAll(() => databases.closeAll())

    const migrateAll = async () => {
      const migrations = await readMigrations(folder)
      return database.withConnection((connection) => migrate(connection, migrations))
    }
    const query = (sql: string) => database.withConnection((connection) => connection.query(sql))

    it('are applied in the order of their names, and noted with their SHA-256', async () => {
      expect(await migrateAll()).toEqual(['0001_first.sql', '0002_second.sql'])
      expect(await query('SELECT id, more FROM first ORDER BY id')).toEqual([
        { id: 1, more: null },
        { id: 2, more: null },
      ])
      expect(await query('SELECT name, checksum FROM schema_migration ORDER BY name')).toEqual([
        // printf '…' | sha256sum
        {
          name: '0001_first.sql',
          checksum: 'b74680b3cfcbf5a53beef0b443f09f6b727534df7fd952d0159d2d4f934c79ec',
        },
        {
          name: '0002_second.sql',
          checksum: '1852dbb4b908dc7ee519c80065dca1858010c38aa3819931cd77ef1f7c3cb705',
        },
      ])
    })

    it('are applied once: the second start finds nothing to do', async () => {
      await migrateAll()
      const noted = await query('SELECT * FROM schema_migration ORDER BY name')
      expect(await migrateAll()).toEqual([])
      expect(await query('SELECT * FROM schema_migration ORDER BY name')).toEqual(noted)
      expect(await query('SELECT count(*)::int AS rows FROM first')).toEqual([{ rows: 2 }])
    })

    it('that were added since are applied by the next start', async () => {
      await migrateAll()
      await write('0003_third.sql', 'CREATE TABLE third (id integer);')
      expect(await migrateAll()).toEqual(['0003_third.sql'])
      expect(await query('SELECT * FROM third')).toEqual([])
    })

    it('with a line end of Windows count as the same file', async () => {
      await write('0001_first.sql', 'CREATE TABLE first (id integer);\nINSERT INTO first VALUES (1);\n')
      await migrateAll()
      await write('0001_first.sql', 'CREATE TABLE first (id integer);\r\nINSERT INTO first VALUES (1);\r\n')
      expect(await migrateAll()).toEqual([])
    })

    it('refuse to go on where one was changed after it was applied, and say which and what to do', async () => {
      await migrateAll()
      await write('0001_first.sql', 'CREATE TABLE first (id bigint);')
      await write('0003_third.sql', 'CREATE TABLE third (id integer);')
      await expect(migrateAll()).rejects.toMatchObject({
        code: 'migrations-disagree',
        message: expect.stringMatching(
          /Migration 0001_first\.sql was changed .* Put the file back as it was/,
        ),
      })
      expect(await query("SELECT to_regclass('third') AS third")).toEqual([{ third: null }])
    })

    it('refuse to go on where an applied one has no file, and say which and what to do', async () => {
      await migrateAll()
      await rm(join(folder, '0002_second.sql'))
      await expect(migrateAll()).rejects.toMatchObject({
        code: 'migrations-disagree',
        message: expect.stringMatching(/Migration 0002_second\.sql is missing: .* put the file back/),
      })
    })

    it('refuse to go on where a new one comes before an applied one, and say which and what to do', async () => {
      await rm(join(folder, '0001_first.sql'))
      await write('0002_second.sql', 'CREATE TABLE second (id integer);')
      await migrateAll()
      await write('0001_first.sql', 'CREATE TABLE first (id integer);')
      await expect(migrateAll()).rejects.toMatchObject({
        code: 'migrations-disagree',
        message: expect.stringMatching(/Migration 0001_first\.sql is out of order: .* number after the last/),
      })
      expect(await query("SELECT to_regclass('first') AS first")).toEqual([{ first: null }])
    })

    it('name everything that disagrees at once', async () => {
      await rm(join(folder, '0001_first.sql'))
      await write('0002_second.sql', 'CREATE TABLE second (id integer);')
      await write('0004_fourth.sql', 'CREATE TABLE fourth (id integer);')
      await migrateAll()
      await write('0001_first.sql', 'SELECT 1;')
      await write('0002_second.sql', 'SELECT 2;')
      await rm(join(folder, '0004_fourth.sql'))
      await expect(migrateAll()).rejects.toMatchObject({
        details: {
          problems: [
            expect.stringContaining('0002_second.sql was changed'),
            expect.stringContaining('0004_fourth.sql is missing'),
            expect.stringContaining('0001_first.sql is out of order'),
          ],
        },
      })
    })

    it('that fail are named and undone as a whole, and those before them stay', async () => {
      await write('0003_third.sql', 'CREATE TABLE third (id integer); INSERT INTO third VALUES (1 / 0);')
      await expect(migrateAll()).rejects.toThrow(
        /The migration 0003_third\.sql failed and was undone: .*division by zero/,
      )
      expect(await query("SELECT to_regclass('third') AS third")).toEqual([{ third: null }])
      expect(await query('SELECT name FROM schema_migration ORDER BY name')).toEqual([
        { name: '0001_first.sql' },
        { name: '0002_second.sql' },
      ])
      await write('0003_third.sql', 'CREATE TABLE third (id integer);')
      expect(await migrateAll()).toEqual(['0003_third.sql'])
    })
  })

describe('migrations by several processes at once', () => {
  it('are each applied by one of them, and all of them go on with the newest', async () => {
    for (const number of [1, 2, 3, 4, 5])
      await write(`000${number}_step.sql`, `CREATE TABLE step_${number} (id integer); SELECT pg_sleep(0.02);`)
    const databaseUrl = await postgres.freshDatabase()
    const migrations = await readMigrations(folder)
    const applied = await Promise.all(
      [1, 2, 3, 4].map(async () => {
        const database = await openPostgres(databaseUrl, { poolSize: 1, answerWithinMs: 10_000 }, failOnLoss)
        try {
          return await database.withConnection((connection) => migrate(connection, migrations))
        } finally {
          await database.close()
        }
      }),
    )
    expect(applied.flat().sort()).toEqual(migrations.map(({ name }) => name))
  })
})

describe('the folder of the migrations', () => {
  it('of the project is found from a module, wherever that is compiled to', async () => {
    expect((await readMigrations()).map(({ name }) => name)).toContain('0001_catalogue.sql')
  })

  it.each([
    ['1_first.sql', /Rename the migration 1_first\.sql/],
    ['0001-first.sql', /Rename the migration 0001-first\.sql/],
    ['0001_First.sql', /Rename the migration 0001_First\.sql/],
  ])('is refused with a file named %s', async (name, message) => {
    await write(name, 'SELECT 1;')
    await expect(readMigrations(folder)).rejects.toThrow(message)
  })

  it('is refused with two files of one number', async () => {
    await write('0001_a.sql', 'SELECT 1;')
    await write('0001_b.sql', 'SELECT 1;')
    await expect(readMigrations(folder)).rejects.toThrow('0001_a.sql and 0001_b.sql have the same number')
  })

  it('is refused where it is empty', async () => {
    await expect(readMigrations(folder)).rejects.toMatchObject({ code: 'migration-files-unfit' })
  })
})
