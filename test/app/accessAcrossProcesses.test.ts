import { createHash } from 'node:crypto'
import { setTimeout as wait } from 'node:timers/promises'
import { Client } from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readConfig } from '../../src/config.ts'
import { createLog } from '../../src/log.ts'
import { type Service, startService } from '../../src/startService.ts'
import { withPostgres } from '../helpers/postgres.ts'

const postgres = withPostgres()
const CHOSEN = 'the-operators-own-choice-of-a-key-0123'

interface Started extends Service {
  readonly firstKeys: readonly string[]
  readonly told: readonly string[]
  readonly log: () => string
}

/** A whole service over a PostgreSQL database, with its own pool, memory and clock: what one of several replicas is. */
async function start(databaseUrl: string, environment: Record<string, string> = {}): Promise<Started> {
  const [firstKeys, told]: [string[], string[]] = [[], []]
  let log = ''
  const config = readConfig({ PORT: '0', DATABASE_URL: databaseUrl, ...environment })
  const logger = createLog('trace', { write: (line: string) => (log += line) })
  const service = await startService(
    config,
    logger,
    (message) => told.push(message),
    (key) => firstKeys.push(key),
  )
  return { ...service, firstKeys, told, log: () => log }
}

const as = (key: string) => ({ authorization: `Bearer ${key}`, 'content-type': 'application/json' })
const statusOf = async ({ url }: Service, key: string, path = '/v1/categories?limit=1') =>
  (await fetch(url + path, { headers: as(key) })).status
async function issue({ url }: Service, admin: string): Promise<{ id: string; key: string }> {
  const body = JSON.stringify({ name: 'A program', scopes: ['intake'] })
  const answer = await fetch(`${url}/v1/api-keys`, { method: 'POST', headers: as(admin), body })
  expect(answer.status).toBe(201)
  return (await answer.json()) as { id: string; key: string }
}
const revoke = async ({ url }: Service, admin: string, id: string) =>
  (
    await fetch(`${url}/v1/api-keys/${id}`, {
      method: 'DELETE',
      headers: { authorization: `Bearer ${admin}` },
    })
  ).status

/** Everything that is in a database, as text. */
async function everythingIn(databaseUrl: string): Promise<string> {
  const client = new Client({ connectionString: databaseUrl })
  await client.connect()
  try {
    const tables = await client.query<{ name: string }>(
      "SELECT quote_ident(relname) AS name FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relkind = 'r'",
    )
    const rows: unknown[] = []
    for (const { name } of tables.rows) rows.push((await client.query(`SELECT t::text FROM ${name} t`)).rows)
    return JSON.stringify(rows)
  } finally {
    await client.end()
  }
}

describe('two services on one PostgreSQL', () => {
  let databaseUrl: string
  let [one, other]: Started[] = []
  let admin: string
  beforeAll(async () => {
    databaseUrl = await postgres.freshDatabase()
    const both = await Promise.all([start(databaseUrl), start(databaseUrl)])
    ;[one, other] = both
    admin = both.flatMap(({ firstKeys }) => firstKeys).join()
  }, 120_000)
  afterAll(() => Promise.all([one?.close(), other?.close()]))

  test('that start at once issue one first key, and both take it', async () => {
    expect(admin).toMatch(/^sdk_[a-z2-7_]+$/)
    expect([
      await statusOf(one!, admin, '/v1/api-keys'),
      await statusOf(other!, admin, '/v1/api-keys'),
    ]).toEqual([200, 200])
  })

  test('take a key that either issued, at once', async () => {
    const { key } = await issue(one!, admin)
    expect([await statusOf(other!, key), await statusOf(one!, key)]).toEqual([200, 200])
  })

  test('refuse a key that one revoked: that one at once, the other one a second later at the latest', async () => {
    const { id, key } = await issue(one!, admin)
    expect([await statusOf(one!, key), await statusOf(other!, key)]).toEqual([200, 200])
    expect(await revoke(one!, admin, id)).toBe(200)
    expect(await statusOf(one!, key)).toBe(401)
    // What the other one remembered a moment ago is good for less than a second; however slow it is, it may not be longer.
    await wait(1_000)
    expect(await statusOf(other!, key)).toBe(401)
  })

  test('leave no key in the database, only digests, and none in any log', async () => {
    const { id, key } = await issue(one!, admin)
    await statusOf(other!, key)
    const stored = await everythingIn(databaseUrl)
    expect(stored).toContain(id)
    expect(stored).toContain(createHash('sha256').update(key).digest('hex'))
    const everything = {
      stored,
      logged: one!.log() + other!.log(),
      told: [...one!.told, ...other!.told].join(),
    }
    expect(everything.logged).toContain('request answered')
    for (const [place, text] of Object.entries(everything))
      for (const secret of [key, admin]) expect(text, place).not.toContain(secret.slice(21, 41))
  })
})

describe('BOOTSTRAP_ADMIN_KEY', () => {
  test('is the key of the operator’s admin while it is set, and then no other is issued and printed', async () => {
    const databaseUrl = await postgres.freshDatabase()
    const first = await start(databaseUrl, { BOOTSTRAP_ADMIN_KEY: CHOSEN })
    expect([first.firstKeys, await statusOf(first, CHOSEN, '/v1/audit-events')]).toEqual([[], 200])
    const { key } = await issue(first, CHOSEN)
    await first.close()
    expect(await everythingIn(databaseUrl)).not.toContain(CHOSEN)
    expect(first.log()).not.toContain(CHOSEN)

    const second = await start(databaseUrl)
    expect([second.firstKeys, await statusOf(second, CHOSEN), await statusOf(second, key)]).toEqual([
      [],
      401,
      200,
    ])
    await second.close()
  }, 120_000)
})
