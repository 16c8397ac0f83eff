import { afterAll } from 'vitest'
import { prismaAuditStore } from '../../src/persistence/prismaAuditStore.ts'
import { prismaOverlayStore } from '../../src/persistence/prismaOverlayStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { memoryAuditStore } from './memoryAuditStore.ts'
import { memoryOverlayStore } from './memoryOverlayStore.ts'
import { overlayStoreContract } from './overlayStoreContract.ts'
import { embeddedDatabases, freshClient, servedDatabases } from './testDatabases.ts'

const embedded = embeddedDatabases()
const served = servedDatabases(withPostgres())
afterAll(() => embedded.closeAll())

overlayStoreContract('in memory, for tests', async () => {
  const audit = memoryAuditStore()
  const store = memoryOverlayStore(audit.write)
  return { store, second: store, audit, close: async () => undefined }
})

for (const databases of [embedded, served])
  overlayStoreContract(`over ${databases.name}`, async () => {
    const { prisma, database } = await freshClient(databases)
    // Not by the key store, which would leave audit events.
    const madeAt = new Date('2024-02-29T12:00:00Z')
    await prisma.organisation.createMany({
      data: ['ours', 'theirs'].map((code) => ({ code, name: code, madeAt })),
    })
    return {
      store: prismaOverlayStore(prisma),
      second: prismaOverlayStore(prisma),
      audit: prismaAuditStore(prisma),
      close: async () => {
        await prisma.$disconnect()
        await database.close()
      },
    }
  })
