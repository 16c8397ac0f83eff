import { afterAll } from 'vitest'
import { prismaAuditStore } from '../../src/persistence/prismaAuditStore.ts'
import { prismaInventoryStore } from '../../src/persistence/prismaInventoryStore.ts'
import { prismaKeyStore } from '../../src/persistence/prismaKeyStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import type { OpenedInventoryStore } from './anInventory.ts'
import { batchContract } from './batchContract.ts'
import { inventoryStoreContract, onceUnderWayContract } from './inventoryStoreContract.ts'
import { memoryAuditStore } from './memoryAuditStore.ts'
import { memoryInventoryStore } from './memoryInventoryStore.ts'
import { memoryKeyStore } from './memoryKeyStore.ts'
import { embeddedDatabases, freshClient, servedDatabases, type TestDatabases } from './testDatabases.ts'

const embedded = embeddedDatabases()
const served = servedDatabases(withPostgres())
afterAll(() => embedded.closeAll())

for (const contract of [inventoryStoreContract, batchContract])
  contract('in memory, for tests', async () => {
    const audit = memoryAuditStore()
    const store = memoryInventoryStore(audit.write)
    return { store, second: store, keys: memoryKeyStore(audit.write), audit, close: async () => undefined }
  })

async function opened(databases: TestDatabases): Promise<OpenedInventoryStore> {
  const { prisma, database } = await freshClient(databases)
  return {
    store: prismaInventoryStore(prisma),
    second: prismaInventoryStore(prisma),
    keys: prismaKeyStore(prisma),
    audit: prismaAuditStore(prisma),
    close: async () => {
      await prisma.$disconnect()
      await database.close()
    },
  }
}
for (const databases of [embedded, served]) {
  inventoryStoreContract(`over ${databases.name}`, () => opened(databases))
  batchContract(`over ${databases.name}`, () => opened(databases))
  onceUnderWayContract(`over ${databases.name}`, () => opened(databases))
}
