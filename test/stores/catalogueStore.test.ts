import { afterAll } from 'vitest'
import { openStores } from '../../src/persistence/openStores.ts'
import { prismaCatalogueStore } from '../../src/persistence/prismaCatalogueStore.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { catalogueStoreContract } from './catalogueStoreContract.ts'
import { memoryCatalogueStore } from './memoryCatalogueStore.ts'
import { embeddedDatabases, failOnLoss, freshClient } from './testDatabases.ts'

const embedded = embeddedDatabases()
const postgres = withPostgres()
afterAll(() => embedded.closeAll())

catalogueStoreContract('in memory, for tests', async () => {
  const store = memoryCatalogueStore()
  return { store, second: store, close: async () => undefined }
})

catalogueStoreContract('in the embedded database', async () => {
  const { prisma, database } = await freshClient(embedded)
  return {
    store: prismaCatalogueStore(prisma),
    second: prismaCatalogueStore(prisma),
    close: async () => {
      await prisma.$disconnect()
      await database.close()
    },
  }
})

const openTwo = async (databaseUrl: string) => {
  const options = { databaseUrl, dataDir: 'not used', poolSize: 3, onProgress: ignoreMigrations }
  const [one, other] = [await openStores(options), await openStores(options)]
  return {
    store: one.catalogueStore,
    second: other.catalogueStore,
    close: async () => {
      await Promise.all([one.close(), other.close()])
    },
  }
}
const ignoreMigrations = (message: string) => {
  if (!message.startsWith('Applied the migration')) failOnLoss(message)
}

catalogueStoreContract('in PostgreSQL', async () => openTwo(await postgres.freshDatabase()))

catalogueStoreContract(
  'in a PostgreSQL that is set to serializable transactions and another time zone',
  async () => {
    const databaseUrl = await postgres.freshDatabase()
    const database = new URL(databaseUrl).pathname.slice(1)
    await postgres.run(
      databaseUrl,
      `ALTER DATABASE ${database} SET default_transaction_isolation = 'serializable';
     ALTER DATABASE ${database} SET timezone = 'Pacific/Auckland'`,
    )
    return openTwo(databaseUrl)
  },
)
