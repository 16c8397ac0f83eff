import { existsSync } from 'node:fs'
import { mkdir, rename, rm } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { PGlite } from '@electric-sql/pglite'
import { PrismaPGlite } from 'pglite-prisma-adapter'
import type { Database } from './database.ts'
import { lockFolder } from './lockFolder.ts'

/** A data folder of this name is no folder: the database lives in memory and is gone when it is closed. */
export const IN_MEMORY = 'memory://'

/**
 * Opens the embedded PostgreSQL in a folder, and makes it where there is none yet, which takes seconds.
 * @throws DomainError data-folder-in-use where another process has it open
 */
export async function openEmbedded(
  dataDir: string,
  onProgress: (message: string) => void,
): Promise<Database> {
  if (dataDir === IN_MEMORY) return databaseOver(await PGlite.create(IN_MEMORY), async () => undefined)
  const folder = resolve(dataDir)
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const release = await lockFolder(folder, onProgress)
  try {
    return await databaseOver(await openFolder(join(folder, 'database'), onProgress), release)
  } catch (error) {
    await release()
    throw error
  }
}

async function openFolder(folder: string, onProgress: (message: string) => void): Promise<PGlite> {
  if (!existsSync(folder)) {
    onProgress(`Making the embedded database in ${folder} (the first time only; it takes some seconds)`)
    await makeFolder(folder)
  }
  onProgress(`Opening the embedded database in ${folder}`)
  try {
    return await PGlite.create(folder)
  } catch (error) {
    throw new Error(
      `The embedded database in ${folder} does not open: ${String(error)}. If its files are damaged, put a copy of ` +
        'that folder back, or move it away to start with an empty one.',
      { cause: error },
    )
  }
}

/** Made beside its place and moved there when it is whole: a first start that is interrupted leaves no half database. */
async function makeFolder(folder: string): Promise<void> {
  const unfinished = `${folder}.unfinished`
  await rm(unfinished, { recursive: true, force: true })
  const made = await PGlite.create(unfinished)
  await made.close()
  await rename(unfinished, folder)
}

async function databaseOver(pglite: PGlite, release: () => Promise<void>): Promise<Database> {
  // The Prisma adapters write and read times without their zone, which is right in a session in UTC only.
  await pglite.exec("SET TIME ZONE 'UTC'")
  return {
    kind: 'embedded',
    adapter: new PrismaPGlite(pglite),
    withConnection: (work) =>
      work({
        run: async (sql) => {
          await pglite.exec(sql)
        },
        query: async <Row>(sql: string, parameters: readonly unknown[] = []) =>
          (await pglite.query<Row>(sql, [...parameters])).rows,
      }),
    close: async () => {
      try {
        await pglite.close()
      } finally {
        await release()
      }
    },
  }
}
