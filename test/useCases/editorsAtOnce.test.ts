import { afterAll, describe, expect, test } from 'vitest'
import type { Category } from '../../src/core/catalogue/category.ts'
import { openStores } from '../../src/persistence/openStores.ts'
import { prismaCatalogueStore } from '../../src/persistence/prismaCatalogueStore.ts'
import type { CatalogueStore } from '../../src/stores/catalogueStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { ADMIN_KEY, type TestApp, testApp } from '../helpers/testApp.ts'
import { testCategories } from '../helpers/testCatalogue.ts'
import { embeddedDatabases, freshClient } from '../stores/testDatabases.ts'

const embedded = embeddedDatabases()
const postgres = withPostgres()
afterAll(() => embedded.closeAll())

/** The stores of one or two processes over one database. */
const DATABASES: readonly (readonly [string, () => Promise<Opened>])[] = [
  [
    'one process on the embedded database',
    async () => {
      const { prisma, database } = await freshClient(embedded)
      return {
        stores: [prismaCatalogueStore(prisma)],
        close: async () => {
          await prisma.$disconnect()
          await database.close()
        },
      }
    },
  ],
  [
    'two processes on one PostgreSQL',
    async () => {
      const options = { databaseUrl: await postgres.freshDatabase(), dataDir: 'not used', poolSize: 3 }
      const opened = [await openStores(options), await openStores(options)]
      return {
        stores: opened.map(({ catalogueStore }) => catalogueStore),
        close: async () => {
          for (const stores of opened) await stores.close()
        },
      }
    },
  ],
]
interface Opened {
  readonly stores: readonly CatalogueStore[]
  readonly close: () => Promise<void>
}

const CLIENTS = 20
const EDITS_EACH = 10
const CODES = testCategories.map(({ code }) => code)

/** What one attempt knew, wanted and got. */
interface Attempt {
  readonly code: string
  readonly basedOn: Category
  readonly wanted: string
  readonly status: number
  readonly revision: number
}

/** One client: reads a category, gives it a name of its own on top of what it read, and does not try again. */
async function editOnce(service: TestApp, client: number, round: number): Promise<Attempt> {
  // Each round all clients meet at three categories.
  const code = CODES[(round + (client % 3)) % CODES.length]!
  const wanted = `Name ${round} of client ${client}`
  const read = await service.send.get(`/v1/categories/${code}`).expect(200)
  const answer = await service.send
    .patch(`/v1/categories/${code}`)
    .query({ reason: wanted })
    .set({
      authorization: `Bearer ${ADMIN_KEY}`,
      'content-type': 'application/merge-patch+json',
      'if-match': read.headers['etag']!,
    })
    .send(JSON.stringify({ name: wanted }))
  return {
    code,
    basedOn: read.body,
    wanted,
    status: answer.status,
    revision: Number(answer.headers['catalogue-revision'] ?? 0),
  }
}

describe.each(DATABASES)('200 edits at once by 20 clients, %s', (_, open) => {
  test('end with exactly the accepted ones, each in its own revision, none overwritten unseen', async () => {
    const { stores, close } = await open()
    const services: TestApp[] = []
    for (const catalogueStore of stores) services.push(await testApp({ catalogueStore }))
    const clients = Array.from({ length: CLIENTS }, async (_each, client) => {
      const attempts: Attempt[] = []
      for (let round = 0; round < EDITS_EACH; round++)
        attempts.push(await editOnce(services[client % services.length]!, client, round))
      return attempts
    })
    const attempts = (await Promise.all(clients)).flat()
    const accepted = attempts.filter(({ status }) => status === 200)
    const refused = attempts.filter(({ status }) => status !== 200)
    expect(attempts).toHaveLength(CLIENTS * EDITS_EACH)
    // Both outcomes happen, and there is no third.
    expect(new Set(refused.map(({ status }) => status))).toEqual(new Set([412]))
    expect(accepted.length).toBeGreaterThanOrEqual(EDITS_EACH)

    const [store] = stores
    expect(await store!.latestRevision()).toBe(1 + accepted.length)
    expect(accepted.map(({ revision }) => revision).sort((a, b) => a - b)).toEqual(
      accepted.map((_each, index) => index + 2),
    )
    for (const { code, basedOn, wanted, revision } of accepted) {
      const changes = await store!.changesIn(revision, { limit: 2, keep: 'first' })
      // What was there before is what the client had read: nobody's edit came between unseen.
      const before = { ...basedOn, sampleData: undefined, layer: undefined, overlayRevision: undefined }
      expect(changes).toEqual([{ before, after: { ...before, code, name: wanted } }])
    }
    const newest = (await store!.catalogueAt(1 + accepted.length))!
    for (const code of CODES) {
      const last = accepted.filter((each) => each.code === code).sort((a, b) => b.revision - a.revision)[0]
      const first = testCategories.find((each) => each.code === code)!
      expect(newest.categories.get(code)?.name).toBe(last?.wanted ?? first.name)
    }
    for (const service of services) await service.close()
    await close()
  }, 120_000)

  test('that make the same new category end with one, and the others are told that it is there', async () => {
    const { stores, close } = await open()
    const services: TestApp[] = []
    for (const catalogueStore of stores) services.push(await testApp({ catalogueStore }))
    const lamp = { ...testCategories[6]!, code: 'lamp', name: 'Lamp', aliases: [] }
    const answers = await Promise.all(
      Array.from({ length: 10 }, (_each, client) =>
        services[client % services.length]!.send.post('/v1/categories')
          .query({ reason: 'a test' })
          .set('authorization', `Bearer ${ADMIN_KEY}`)
          .send(lamp),
      ),
    )
    expect(answers.map(({ status }) => status).sort()).toEqual([201, ...Array<number>(9).fill(409)])
    expect(await stores[0]!.latestRevision()).toBe(2)
    for (const service of services) await service.close()
    await close()
  })

  test('that give one name to different categories end with one owner of it', async () => {
    const { stores, close } = await open()
    const services: TestApp[] = []
    for (const catalogueStore of stores) services.push(await testApp({ catalogueStore }))
    const answers = await Promise.all(
      CODES.map(async (code, client) => {
        const { send } = services[client % services.length]!
        const read = await send.get(`/v1/categories/${code}`)
        return send
          .patch(`/v1/categories/${code}`)
          .query({ reason: 'a test' })
          .set({
            authorization: `Bearer ${ADMIN_KEY}`,
            'content-type': 'application/merge-patch+json',
            'if-match': read.headers['etag']!,
          })
          .send(JSON.stringify({ aliases: ['the one name'] }))
      }),
    )
    expect(answers.map(({ status }) => status).sort()).toEqual([200, ...Array<number>(6).fill(422)])
    for (const service of services) await service.close()
    await close()
  })
})
