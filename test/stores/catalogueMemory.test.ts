import { beforeEach, describe, expect, it } from 'vitest'
import type { Catalogue } from '../../src/core/catalogue/catalogue.ts'
import type { CatalogueStore } from '../../src/stores/catalogueStore.ts'
import { openCatalogueMemory } from '../../src/useCases/catalogueMemory.ts'
import { aCategory } from './aCategory.ts'
import { aNote as note } from './aNote.ts'
import { memoryCatalogueStore } from './memoryCatalogueStore.ts'

/** A store that counts what it is asked, can be held up, and can fail. */
function watchedStore() {
  const store = memoryCatalogueStore()
  const asked: string[] = []
  let gate: Promise<void> = Promise.resolve()
  let failure: Error | null = null
  const answer = async <T>(question: string, ask: () => Promise<T>): Promise<T> => {
    asked.push(question)
    const result = await ask()
    await gate
    if (failure) throw failure
    return result
  }
  return {
    store: {
      ...store,
      latestRevision: () => answer('latest', () => store.latestRevision()),
      catalogueAt: (revision) => answer(`at ${revision}`, () => store.catalogueAt(revision)),
      statesBetween: (after, upTo) => answer(`${after} to ${upTo}`, () => store.statesBetween(after, upTo)),
    } satisfies CatalogueStore,
    edit: async (code: string) => store.append(await store.latestRevision(), [aCategory(code)], note),
    asked,
    /** Holds every answer back, after the store was looked at, until the returned function is called. */
    hold: () => {
      let letGo: () => void = () => undefined
      gate = new Promise((resolve) => (letGo = resolve))
      return letGo
    },
    failWith: (error: Error | null) => (failure = error),
  }
}

const codesOf = (catalogue: Catalogue | null) => [...(catalogue?.categories.keys() ?? [])]

describe('the catalogue in memory', () => {
  let watched: ReturnType<typeof watchedStore>
  beforeEach(() => {
    watched = watchedStore()
  })

  it('is an empty revision 0 where the store is empty', async () => {
    const memory = await openCatalogueMemory(watched.store)
    expect(memory.current().revision).toBe(0)
    expect(codesOf(memory.current())).toEqual([])
    expect(await memory.at(1)).toBeNull()
  })

  it('is the newest revision of the store when it is opened, and answers without asking the store', async () => {
    await watched.edit('a')
    await watched.edit('b')
    const memory = await openCatalogueMemory(watched.store)
    watched.asked.length = 0
    expect(codesOf(memory.current())).toEqual(['a', 'b'])
    expect(await memory.at(2)).toBe(memory.current())
    expect(watched.asked).toEqual([])
  })

  it('takes over a newer revision at a refresh, and not before', async () => {
    await watched.edit('a')
    const memory = await openCatalogueMemory(watched.store)
    await watched.edit('b')
    expect(memory.current().revision).toBe(1)
    await memory.refresh()
    expect(memory.current().revision).toBe(2)
    expect(codesOf(memory.current())).toEqual(['a', 'b'])
  })

  it('reads no catalogue again at a refresh that finds nothing newer', async () => {
    await watched.edit('a')
    const memory = await openCatalogueMemory(watched.store)
    const before = memory.current()
    watched.asked.length = 0
    await memory.refresh()
    expect(watched.asked).toEqual(['latest'])
    expect(memory.current()).toBe(before)
  })

  it('reads the store once for all refreshes that are asked for while one is under way', async () => {
    const memory = await openCatalogueMemory(watched.store)
    await watched.edit('a')
    watched.asked.length = 0
    const letGo = watched.hold()
    const first = memory.refresh()
    const others = [memory.refresh(), memory.refresh(), memory.refresh()]
    letGo()
    await Promise.all([first, ...others])
    expect(watched.asked).toEqual(['latest', 'at 1', 'latest'])
  })

  it('shows whoever refreshes what was stored before, even where a refresh is under way that looked too early', async () => {
    const memory = await openCatalogueMemory(watched.store)
    const letGo = watched.hold()
    const early = memory.refresh()
    await watched.edit('a')
    const mine = memory.refresh()
    letGo()
    await mine
    expect(codesOf(memory.current())).toEqual(['a'])
    await early
  })

  it('keeps what it has when a refresh fails, tells the failure to those who asked, and works the next time', async () => {
    await watched.edit('a')
    const memory = await openCatalogueMemory(watched.store)
    await watched.edit('b')
    watched.failWith(new Error('no database'))
    const failed = await Promise.allSettled([memory.refresh(), memory.refresh()])
    expect(failed.map(({ status }) => status)).toEqual(['rejected', 'rejected'])
    expect(memory.current().revision).toBe(1)
    watched.failWith(null)
    await memory.refresh()
    expect(memory.current().revision).toBe(2)
  })

  it('is not opened where the store cannot be read', async () => {
    watched.failWith(new Error('no database'))
    await expect(openCatalogueMemory(watched.store)).rejects.toThrow('no database')
  })

  it('reads a past revision once, also for those who ask at the same moment', async () => {
    for (const code of ['a', 'b', 'c']) await watched.edit(code)
    const memory = await openCatalogueMemory(watched.store)
    watched.asked.length = 0
    const [one, other] = await Promise.all([memory.at(1), memory.at(1)])
    expect(codesOf(one)).toEqual(['a'])
    expect(other).toBe(one)
    expect(await memory.at(1)).toBe(one)
    expect(watched.asked).toEqual(['at 1'])
  })

  it('holds the past revisions that were used last, and no more than it was told', async () => {
    for (const code of ['a', 'b', 'c', 'd']) await watched.edit(code)
    const memory = await openCatalogueMemory(watched.store, { pastRevisions: 2 })
    watched.asked.length = 0
    for (const revision of [1, 2, 1, 3]) await memory.at(revision)
    expect(watched.asked).toEqual(['at 1', 'at 2', 'at 3'])
    await memory.at(1)
    await memory.at(2)
    expect(watched.asked).toEqual(['at 1', 'at 2', 'at 3', 'at 2'])
  })

  it('asks again for a revision that was not there, or could not be read', async () => {
    await watched.edit('a')
    await watched.edit('b')
    const memory = await openCatalogueMemory(watched.store)
    expect(await memory.at(3)).toBeNull()
    await watched.edit('c')
    expect(codesOf(await memory.at(3))).toEqual(['a', 'b', 'c'])
    watched.failWith(new Error('no database'))
    await expect(memory.at(1)).rejects.toThrow('no database')
    watched.failWith(null)
    expect(codesOf(await memory.at(1))).toEqual(['a'])
  })
})
