import { afterAll } from 'vitest'
import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import type { Database } from '../../src/persistence/database.ts'
import type { PrismaClient } from '../../src/persistence/generated/client.ts'
import { prismaAuditStore } from '../../src/persistence/prismaAuditStore.ts'
import { prismaKeyStore } from '../../src/persistence/prismaKeyStore.ts'
import { writeAudit } from '../../src/persistence/writeAudit.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { auditStoreContract } from './auditStoreContract.ts'
import { keyStoreContract } from './keyStoreContract.ts'
import { memoryAuditStore } from './memoryAuditStore.ts'
import { memoryKeyStore } from './memoryKeyStore.ts'
import { embeddedDatabases, freshClient, servedDatabases } from './testDatabases.ts'

const embedded = embeddedDatabases()
const served = servedDatabases(withPostgres())
afterAll(() => embedded.closeAll())

keyStoreContract('in memory, for tests', async () => {
  const audit = memoryAuditStore()
  const store = memoryKeyStore(audit.write)
  return { store, second: store, audit, close: async () => undefined }
})
auditStoreContract('in memory, for tests', async () => {
  const store = memoryAuditStore()
  return { store, write: async (event) => store.write(event), close: async () => undefined }
})

const closing = (prisma: PrismaClient, database: Database) => async () => {
  await prisma.$disconnect()
  await database.close()
}
for (const databases of [embedded, served]) {
  keyStoreContract(`over ${databases.name}`, async () => {
    const { prisma, database } = await freshClient(databases)
    return {
      store: prismaKeyStore(prisma),
      second: prismaKeyStore(prisma),
      audit: prismaAuditStore(prisma),
      close: closing(prisma, database),
    }
  })
  auditStoreContract(`over ${databases.name}`, async () => {
    const { prisma, database } = await freshClient(databases)
    return {
      store: prismaAuditStore(prisma),
      write: (event: NewAuditEvent) => prisma.$transaction((inside) => writeAudit(inside, event)),
      close: closing(prisma, database),
    }
  })
}
