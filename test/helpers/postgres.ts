import { afterAll, beforeAll } from 'vitest'
import { addressOf, run, type RunningServer, startServer } from './postgresServer.ts'

export interface TestPostgres {
  /** Makes an empty database on the server and gives its URL. */
  freshDatabase(): Promise<string>
  /** Runs SQL in a database as its superuser. */
  run(databaseUrl: string, sql: string): Promise<void>
}

/**
 * A real PostgreSQL server for the tests of one file: call it once, at the top of the file. It listens on 127.0.0.1
 * alone, and it and its data are gone when the tests have ended. Where it cannot be started the tests fail with the reason.
 */
export function withPostgres(): TestPostgres {
  let server: RunningServer | undefined
  let databases = 0
  const serverUrl = (database: string) => {
    if (server === undefined)
      throw new Error('PostgreSQL is not running: ask for a database in a test or a hook.')
    return addressOf(server, database)
  }
  beforeAll(async () => {
    server = await startServer()
  })
  afterAll(async () => {
    await server?.stop()
  })
  return {
    freshDatabase: async () => {
      const name = `fresh_${++databases}`
      await run(serverUrl('postgres'), `CREATE DATABASE ${name}`)
      return serverUrl(name)
    },
    run,
  }
}
