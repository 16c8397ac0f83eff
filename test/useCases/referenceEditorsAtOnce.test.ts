import { afterAll, describe, expect, test } from 'vitest'
import type { NamedTariff } from '../../src/core/money/tariff.ts'
import { openStores } from '../../src/persistence/openStores.ts'
import { prismaReferenceStore } from '../../src/persistence/prismaReferenceStore.ts'
import type { ReferenceStore } from '../../src/stores/referenceStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { asAdmin } from '../helpers/keys.ts'
import { type TestApp, testApp } from '../helpers/testApp.ts'
import { embeddedDatabases, freshClient } from '../stores/testDatabases.ts'

const embedded = embeddedDatabases()
const postgres = withPostgres()
afterAll(() => embedded.closeAll())

interface Opened {
  readonly stores: readonly ReferenceStore[]
  readonly countEvents: () => Promise<number>
  readonly close: () => Promise<void>
}
/** The stores of one or two processes over one database. */
const DATABASES: readonly (readonly [string, () => Promise<Opened>])[] = [
  [
    'one process on the embedded database',
    async () => {
      const { prisma, database } = await freshClient(embedded)
      return {
        stores: [prismaReferenceStore(prisma)],
        countEvents: () => prisma.auditEvent.count({ where: { subjectKind: 'tariff' } }),
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
        stores: opened.map(({ referenceStore }) => referenceStore),
        countEvents: () => opened[0]!.auditStore.count({ subjectKind: 'tariff' }),
        close: async () => {
          for (const stores of opened) await stores.close()
        },
      }
    },
  ],
]

const CLIENTS = 8
const EDITS_EACH = 5
const PATH = '/v1/tariffs/sample-flat-eur'

/** What one attempt knew, wanted and got. */
interface Attempt {
  readonly basedOn: NamedTariff
  readonly wanted: string
  readonly status: number
  readonly revision: number
}

/** One client: reads the tariff, gives it a name of its own on top of what it read, and does not try again. */
async function editOnce({ send }: TestApp, wanted: string): Promise<Attempt> {
  const read = await send.get(PATH).expect(200)
  const answer = await send
    .patch(PATH)
    .query({ reason: wanted })
    .set({
      ...asAdmin,
      'content-type': 'application/merge-patch+json',
      'if-match': read.headers['etag']!,
    })
    .send(JSON.stringify({ name: wanted }))
  const revision = Number(answer.headers['reference-revision'] ?? 0)
  return { basedOn: read.body, wanted, status: answer.status, revision }
}

describe.each(DATABASES)('40 edits at once of one tariff by 8 clients, %s', (_, open) => {
  test('end with exactly the accepted ones, each on top of what its editor had read, none lost', async () => {
    const { stores, countEvents, close } = await open()
    const services: TestApp[] = []
    for (const referenceStore of stores) services.push(await testApp({ referenceStore }))
    const clients = Array.from({ length: CLIENTS }, async (_each, client) => {
      const attempts: Attempt[] = []
      for (let round = 0; round < EDITS_EACH; round++)
        attempts.push(
          await editOnce(services[client % services.length]!, `Name ${round} of client ${client}`),
        )
      return attempts
    })
    const attempts = (await Promise.all(clients)).flat()
    const accepted = attempts.filter(({ status }) => status === 200)
    const refused = attempts.filter(({ status }) => status !== 200)
    expect(new Set(refused.map(({ status }) => status))).toEqual(new Set([412]))
    expect(accepted.length).toBeGreaterThanOrEqual(EDITS_EACH)
    expect(accepted.map(({ revision }) => revision).sort((a, b) => a - b)).toEqual(
      accepted.map((_each, index) => index + 2),
    )
    const nameAt = async (revision: number) =>
      (await stores[0]!.dataAt(revision))!.entries.tariff.get('sample-flat-eur')!.name
    for (const { basedOn, wanted, revision } of accepted) {
      // What was there before is what the client had read: nobody's edit came between unseen.
      expect(await nameAt(revision - 1)).toBe(basedOn.name)
      expect(await nameAt(revision)).toBe(wanted)
    }
    expect(await countEvents()).toBe(accepted.length)
    for (const service of services) await service.close()
    await close()
  }, 120_000)

  test('on different entries make nobody stale: each is stored on top of the others', async () => {
    const { stores, close } = await open()
    const services: TestApp[] = []
    for (const referenceStore of stores) services.push(await testApp({ referenceStore }))
    const answers = await Promise.all(
      Array.from({ length: 10 }, (_each, client) =>
        services[client % services.length]!.send.post('/v1/tariffs')
          .query({ reason: 'a test' })
          .set(asAdmin)
          .send({
            code: `tariff-${client}`,
            name: 'Invented',
            tariff: { kind: 'flat', currency: 'EUR', pricePerKwh: client },
            source: 'invented sample',
          }),
      ),
    )
    expect(answers.map(({ status }) => status)).toEqual(Array<number>(10).fill(201))
    expect((await stores[0]!.dataAt(11))!.entries.tariff.size).toBe(11)
    for (const service of services) await service.close()
    await close()
  })
})
