import { once, EventEmitter } from 'node:events'
import { Client } from 'pg'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { listenForRevisions } from '../../src/persistence/listenForRevisions.ts'
import { openStores, type Stores } from '../../src/persistence/openStores.ts'
import { watchCatalogue } from '../../src/persistence/watchCatalogue.ts'
import { openCatalogueMemory } from '../../src/useCases/catalogueMemory.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { aCategory } from '../stores/aCategory.ts'
import { aNote } from '../stores/aNote.ts'
import { anOverlayEdit } from '../stores/overlayStoreContract.ts'
import { openLine } from './openLine.ts'

const postgres = withPostgres()
const LISTENERS = "application_name = 'standby-draw-estimation listener' AND datname = current_database()"

let databaseUrl: string
let stores: Stores
beforeEach(async () => {
  databaseUrl = await postgres.freshDatabase()
  stores = await openStores({ databaseUrl, dataDir: 'not used', poolSize: 3 })
})
afterEach(() => stores.close())

/** Listens, and lets a test wait for the next notice. */
function listen(url = databaseUrl) {
  const heard = new EventEmitter()
  const troubles: string[] = []
  let notices = 0
  const stop = listenForRevisions(url, 5_000, (message) => {
    troubles.push(message)
    heard.emit('trouble')
  })(() => {
    notices++
    heard.emit('notice')
  })
  return {
    stop,
    troubles,
    count: () => notices,
    notice: () => once(heard, 'notice'),
    trouble: () => once(heard, 'trouble'),
  }
}

async function query<Row extends object>(sql: string): Promise<Row[]> {
  const client = new Client({ connectionString: databaseUrl })
  await client.connect()
  try {
    return (await client.query<Row>(sql)).rows
  } finally {
    await client.end()
  }
}
const edit = async (code: string) =>
  stores.catalogueStore.append(await stores.catalogueStore.latestRevision(), [aCategory(code)], aNote)

describe('listening for revisions', () => {
  it('notices at its opening, and then once for each revision that is committed', async () => {
    const listening = listen()
    await listening.notice()
    for (const code of ['a', 'b']) {
      const notice = listening.notice()
      await edit(code)
      await notice
    }
    expect(listening.count()).toBe(3)
    await listening.stop()
  })

  it('notices each revision of an organisation’s own figures too', async () => {
    await query("INSERT INTO organisation VALUES ('ours', 'Ours', now()) RETURNING code")
    const listening = listen()
    await listening.notice()
    const notice = listening.notice()
    await stores.overlayStore.append(0, anOverlayEdit('ours', 'a'))
    await notice
    expect(listening.count()).toBe(2)
    await listening.stop()
  })

  it('hears nothing of a revision that is undone', async () => {
    const listening = listen()
    await listening.notice()
    await expect(stores.catalogueStore.append(0, [aCategory('a'), aCategory('a')], aNote)).rejects.toThrow()
    const notice = listening.notice()
    await edit('b')
    await notice
    expect(listening.count()).toBe(2)
    await listening.stop()
  })

  it('opens a lost session again, and notices then, since nobody has told what came meanwhile', async () => {
    const listening = listen()
    await listening.notice()
    const again = listening.notice()
    await query(`SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE ${LISTENERS}`)
    await again
    expect(listening.troubles).toHaveLength(1)
    const notice = listening.notice()
    await edit('a')
    await notice
    await listening.stop()
  })

  it('tries again until a server answers that did not, and says so', async () => {
    const { port } = new URL(databaseUrl)
    const line = await openLine(Number(port))
    const url = databaseUrl.replace(`:${port}/`, `:${line.port}/`)
    await line.close()
    const listening = listen(url)
    await listening.trouble()
    await listening.trouble()
    expect(listening.count()).toBe(0)
    expect(listening.troubles[0]).toContain('trying again')
    await listening.stop()
  })

  it('ends its session when it is stopped, whatever it was doing', async () => {
    const early = listen()
    await early.stop()
    const late = listen()
    await late.notice()
    await late.stop()
    expect(await query(`SELECT pid FROM pg_stat_activity WHERE ${LISTENERS}`)).toEqual([])
    expect([early.troubles, late.troubles]).toEqual([[], []])
  })

  it('is what the stores offer on a server, and not on an embedded database', async () => {
    expect(stores.listen).toBeTypeOf('function')
    const embedded = await openStores({ dataDir: 'memory://' })
    expect(embedded.listen).toBeUndefined()
    await embedded.close()
  })
})

describe('the watch on a catalogue that another process edits', () => {
  const noError = (error: unknown) => {
    throw new Error('not expected', { cause: error })
  }
  /** A second process's view: stores and memory of its own. */
  async function another() {
    const its = await openStores({ databaseUrl, dataDir: 'not used', poolSize: 3 })
    const memory = await openCatalogueMemory(its.catalogueStore)
    const refreshed = new EventEmitter()
    const watched = {
      refresh: async () => {
        await memory.refresh()
        refreshed.emit('done')
      },
    }
    const sees = async (code: string) => {
      while (!memory.current().categories.has(code)) await once(refreshed, 'done')
    }
    return { its, watched, sees }
  }

  it('sees an edit by the notice alone, where it would not look by itself for an hour', async () => {
    const { its, watched, sees } = await another()
    const stop = watchCatalogue(watched, { everyMs: 3_600_000, listen: its.listen, onError: noError })
    await edit('a')
    await sees('a')
    await stop()
    await its.close()
  })

  it('sees an edit by looking alone, where the database tells nobody', async () => {
    await postgres.run(databaseUrl, 'DROP TRIGGER tell ON catalogue_revision')
    const { its, watched, sees } = await another()
    const stop = watchCatalogue(watched, { everyMs: 50, listen: its.listen, onError: noError })
    await edit('a')
    await sees('a')
    await stop()
    await its.close()
  })
})
