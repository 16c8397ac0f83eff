import { describe, expect, it } from 'vitest'
import { catalogueOf } from '../../src/core/catalogue/catalogue.ts'
import { layerOf } from '../../src/core/catalogue/layerOf.ts'
import type { OverlayStore } from '../../src/stores/overlayStore.ts'
import { openOverlayMemory } from '../../src/useCases/overlayMemory.ts'
import { aCategory } from './aCategory.ts'
import { memoryOverlayStore } from './memoryOverlayStore.ts'
import { anOverlayEdit } from './overlayStoreContract.ts'

/** A store that tells what was read from it. */
function watched() {
  const store = memoryOverlayStore(() => undefined)
  const read: string[] = []
  const overlayAt: OverlayStore['overlayAt'] = async (organisation, revision) => {
    read.push(`${organisation}@${revision}`)
    return store.overlayAt(organisation, revision)
  }
  return { store: { ...store, overlayAt }, read }
}
const shared = catalogueOf(3, [aCategory('a'), aCategory('b')])

describe('the overlays in memory', () => {
  it('are all read at the start, and none is read again to be given', async () => {
    const { store, read } = watched()
    await store.append(0, anOverlayEdit('ours', 'a'))
    await store.append(0, anOverlayEdit('theirs', 'b'))
    const memory = await openOverlayMemory(store)
    expect(read.sort()).toEqual(['ours@1', 'theirs@1'])
    expect((await memory.current('ours')).categories.has('a')).toBe(true)
    expect((await memory.current('theirs')).categories.has('b')).toBe(true)
    expect(await memory.at('ours', 1)).toBe(await memory.current('ours'))
    expect(read).toHaveLength(2)
  })

  it('are empty, at revision 0, for an organisation that has none; that asks the store nothing', async () => {
    const { store, read } = watched()
    const memory = await openOverlayMemory(store)
    expect(await memory.current('nobody')).toMatchObject({ organisation: 'nobody', revision: 0 })
    expect((await memory.at('nobody', 0))?.categories.size).toBe(0)
    expect(read).toEqual([])
  })

  it('follow the store at each look, a first overlay too, and only what is new is read', async () => {
    const { store, read } = watched()
    await store.append(0, anOverlayEdit('theirs', 'b'))
    const memory = await openOverlayMemory(store)
    await store.append(0, anOverlayEdit('ours', 'a'))
    expect((await memory.current('ours')).revision).toBe(0)
    await memory.refresh()
    await memory.refresh()
    expect((await memory.current('ours')).revision).toBe(1)
    expect(read).toEqual(['theirs@1', 'ours@1'])
  })

  it('keep the past revisions that were asked for; null where there is none', async () => {
    const { store, read } = watched()
    await store.append(0, anOverlayEdit('ours', 'a'))
    await store.append(1, anOverlayEdit('ours', 'a', null))
    const memory = await openOverlayMemory(store)
    for (let time = 0; time < 3; time++) expect((await memory.at('ours', 1))?.categories.has('a')).toBe(true)
    expect(read).toEqual(['ours@2', 'ours@1'])
    expect(await memory.at('ours', 3)).toBeNull()
    expect(await memory.at('theirs', 1)).toBeNull()
  })

  it('hold no more categories than they may: what was not used for longest is read again when it is asked for', async () => {
    const { store, read } = watched()
    const names = ['one', 'two', 'three', 'four']
    for (const name of names) await store.append(0, anOverlayEdit(name, 'a'))
    // Each takes the room of its category and of itself.
    const memory = await openOverlayMemory(store, { categories: 4, kept: 1 })
    expect(read).toEqual(['one@1', 'two@1'])
    expect((await memory.current('three')).categories.size).toBe(1)
    expect(read).toEqual(['one@1', 'two@1', 'three@1'])
    await memory.current('two')
    expect(read).toHaveLength(3)
    await memory.current('one')
    expect(read).toEqual(['one@1', 'two@1', 'three@1', 'one@1'])
  })

  it('are given as they were until what is newer is read, and one that fails keeps no other from following', async () => {
    const { store } = watched()
    await store.append(0, anOverlayEdit('ours', 'a'))
    await store.append(0, anOverlayEdit('theirs', 'a'))
    let broken = false
    const memory = await openOverlayMemory({
      ...store,
      overlayAt: async (organisation, revision) => {
        if (broken && organisation === 'ours') throw new Error('The database is away.')
        return store.overlayAt(organisation, revision)
      },
    })
    await store.append(1, anOverlayEdit('ours', 'b'))
    await store.append(1, anOverlayEdit('theirs', 'b'))
    broken = true
    await expect(memory.refresh()).rejects.toThrow('Overlays could not be read.')
    expect((await memory.current('ours')).revision).toBe(1)
    expect((await memory.current('theirs')).revision).toBe(2)
    broken = false
    await memory.refresh()
    expect((await memory.current('ours')).revision).toBe(2)
  })

  it('lie over a shared catalogue as one and the same catalogue each time, as long as it is kept', async () => {
    const { store } = watched()
    await store.append(0, anOverlayEdit('ours', 'a', aCategory('a', { name: 'Ours' })))
    await store.append(0, anOverlayEdit('theirs', 'c'))
    const memory = await openOverlayMemory(store, { kept: 1 })
    const [ours, theirs] = [await memory.current('ours'), await memory.current('theirs')]
    const layered = memory.over(shared, ours)
    expect(memory.over(shared, ours)).toBe(layered)
    expect(layered.categories.get('a')?.name).toBe('Ours')
    expect([layerOf(layered, 'a'), layerOf(layered, 'b')]).toEqual(['organisation', 'shared'])
    expect([...memory.over(shared, theirs).categories.keys()]).toEqual(['a', 'b', 'c'])
    expect(memory.over(shared, ours)).not.toBe(layered)
    expect(shared.categories.get('a')?.name).toBe('Invented a')
    const again = memory.over(shared, ours)
    expect(memory.over(shared, await memory.current('nobody'))).toBe(shared)
    expect(memory.over(shared, ours)).toBe(again)
  })
})
