import { afterAll } from 'vitest'
import { prismaAuditStore } from '../../src/persistence/prismaAuditStore.ts'
import { prismaInventoryStore } from '../../src/persistence/prismaInventoryStore.ts'
import { prismaKeyStore } from '../../src/persistence/prismaKeyStore.ts'
import { prismaProposalStore } from '../../src/persistence/prismaProposalStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { memoryAuditStore } from './memoryAuditStore.ts'
import { memoryInventoryStore } from './memoryInventoryStore.ts'
import { memoryKeyStore } from './memoryKeyStore.ts'
import { memoryProposalStore } from './memoryProposalStore.ts'
import { proposalStoreContract } from './proposalStoreContract.ts'
import { embeddedDatabases, freshClient, servedDatabases } from './testDatabases.ts'

const embedded = embeddedDatabases()
const served = servedDatabases(withPostgres())
afterAll(() => embedded.closeAll())

proposalStoreContract('in memory, for tests', async () => {
  const audit = memoryAuditStore()
  const inventories = memoryInventoryStore(audit.write)
  const store = memoryProposalStore(audit.write, inventories.everything)
  return { store, inventories, keys: memoryKeyStore(audit.write), audit, close: async () => undefined }
})

for (const databases of [embedded, served])
  proposalStoreContract(`over ${databases.name}`, async () => {
    const { prisma, database } = await freshClient(databases)
    return {
      store: prismaProposalStore(prisma),
      inventories: prismaInventoryStore(prisma),
      keys: prismaKeyStore(prisma),
      audit: prismaAuditStore(prisma),
      close: async () => {
        await prisma.$disconnect()
        await database.close()
      },
    }
  })
