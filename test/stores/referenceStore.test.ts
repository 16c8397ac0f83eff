import { afterAll } from 'vitest'
import { openStores } from '../../src/persistence/openStores.ts'
import { prismaReferenceStore } from '../../src/persistence/prismaReferenceStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { memoryReferenceStore } from './memoryReferenceStore.ts'
import { referenceStoreContract } from './referenceStoreContract.ts'
import { embeddedDatabases, freshClient } from './testDatabases.ts'

const embedded = embeddedDatabases()
const postgres = withPostgres()
afterAll(() => embedded.closeAll())

referenceStoreContract('in memory, for tests', async () => {
  const store = memoryReferenceStore()
  return { store, second: store, close: async () => undefined }
})

referenceStoreContract('in the embedded database', async () => {
  const { prisma, database } = await freshClient(embedded)
  return {
    store: prismaReferenceStore(prisma),
    second: prismaReferenceStore(prisma),
    close: async () => {
      await prisma.$disconnect()
      await database.close()
    },
  }
})

referenceStoreContract('in PostgreSQL, by two processes', async () => {
  const options = { databaseUrl: await postgres.freshDatabase(), dataDir: 'not used', poolSize: 3 }
  const [one, other] = [await openStores(options), await openStores(options)]
  return {
    store: one.referenceStore,
    second: other.referenceStore,
    close: async () => {
      await Promise.all([one.close(), other.close()])
    },
  }
})
