import { once, EventEmitter } from 'node:events'
import { describe, expect, it } from 'vitest'
import { watchCatalogue } from '../../src/persistence/watchCatalogue.ts'
import { openCatalogueMemory } from '../../src/useCases/catalogueMemory.ts'
import { aCategory } from '../stores/aCategory.ts'
import { aNote as note } from '../stores/aNote.ts'
import { memoryCatalogueStore } from '../stores/memoryCatalogueStore.ts'
import { startProcess } from './startProcess.ts'

const noError = (error: unknown) => {
  throw new Error('not expected', { cause: error })
}

/** A memory whose refreshes are seen by the test, and end as it says. */
function seenMemory(outcome: () => Promise<void>) {
  const seen = new EventEmitter()
  let refreshes = 0
  return {
    refresh: async () => {
      refreshes++
      seen.emit('refresh')
      await outcome()
    },
    next: () => once(seen, 'refresh'),
    count: () => refreshes,
  }
}

describe('the watch on the catalogue', () => {
  it('sees what another process has stored', async () => {
    const store = memoryCatalogueStore()
    const memory = await openCatalogueMemory(store)
    const refreshed = new EventEmitter()
    const watched = {
      refresh: async () => {
        await memory.refresh()
        refreshed.emit('done')
      },
    }
    const stop = watchCatalogue(watched, { everyMs: 1, onError: noError })
    await store.append(0, [aCategory('a')], note)
    while (memory.current().revision === 0) await once(refreshed, 'done')
    expect([...memory.current().categories.keys()]).toEqual(['a'])
    await stop()
  })

  it('tells a look that fails, and goes on looking', async () => {
    let failures = 0
    const memory = seenMemory(async () => {
      if (++failures <= 2) throw new Error(`failure ${failures}`)
    })
    const told: unknown[] = []
    const stop = watchCatalogue(memory, { everyMs: 1, onError: (error) => told.push(error) })
    while (memory.count() < 4) await memory.next()
    await stop()
    expect(told.map(String)).toEqual(['Error: failure 1', 'Error: failure 2'])
  })

  it('looks no more once it is stopped, and stops only when the look under way has ended', async () => {
    let end: () => void = () => undefined
    const memory = seenMemory(() => new Promise((resolve) => (end = resolve)))
    const stop = watchCatalogue(memory, { everyMs: 1, onError: noError })
    await memory.next()
    let stopped = false
    const stopping = stop().then(() => (stopped = true))
    await new Promise((resolve) => setImmediate(resolve))
    expect(stopped).toBe(false)
    end()
    await stopping
    await new Promise((resolve) => setTimeout(resolve, 20))
    expect(memory.count()).toBe(1)
  })

  it('looks at every notice, too, however long the interval is', async () => {
    const memory = seenMemory(async () => undefined)
    let notice: () => void = () => undefined
    let listening = true
    const stop = watchCatalogue(memory, {
      everyMs: 3_600_000,
      onError: noError,
      listen: (onNotice) => {
        notice = onNotice
        return async () => {
          listening = false
        }
      },
    })
    notice()
    notice()
    expect(memory.count()).toBe(2)
    await stop()
    expect(listening).toBe(false)
  })

  it('tells a look that a notice led to and that fails', async () => {
    const told: unknown[] = []
    let notice: () => void = () => undefined
    const stop = watchCatalogue(
      { refresh: () => Promise.reject(new Error('no database')) },
      {
        everyMs: 3_600_000,
        onError: (error) => told.push(error),
        listen: (onNotice) => {
          notice = onNotice
          return async () => undefined
        },
      },
    )
    notice()
    await stop()
    expect(told.map(String)).toEqual(['Error: no database'])
  })

  it('keeps no process alive', async () => {
    const { ended } = await startProcess(new URL('./watchAndEndProcess.ts', import.meta.url))
    expect(await ended).toBe(0)
  })
})
