import { describe, expect, it } from 'vitest'
import { openKeyMemory } from '../../src/useCases/keyMemory.ts'
import { aKey, anOrganisation } from '../stores/aKey.ts'
import { memoryAuditStore } from '../stores/memoryAuditStore.ts'
import { memoryKeyStore } from '../stores/memoryKeyStore.ts'

/** A memory over a store that counts look-ups and can hold them up, with a clock that the test moves. */
async function open() {
  const store = memoryKeyStore(memoryAuditStore().write)
  await store.addOrganisation(anOrganisation('operator'), null)
  await store.issue(aKey('k'), null)
  const start = new Date('2026-01-31T12:00:00Z').getTime()
  const state = { ms: 0, lookUps: 0, held: Promise.resolve(), failure: null as Error | null }
  const errors: unknown[] = []
  const looked = async <T>(find: () => Promise<T>) => {
    state.lookUps += 1
    const found = await find()
    await state.held
    if (state.failure) throw state.failure
    return found
  }
  const watched = {
    ...store,
    find: (id: string) => looked(() => store.find(id)),
    bootstrapKey: () => looked(() => store.bootstrapKey()),
    origins: (time: Date) => looked(() => store.origins(time)),
    noteUse: (id: string, at: Date) => looked(() => store.noteUse(id, at)),
  }
  const clock = () => new Date(start + state.ms)
  return { store, state, errors, clock, memory: openKeyMemory(watched, clock, (error) => errors.push(error)) }
}
const at = new Date('2026-01-31T12:00:00Z')

describe('the memory of keys', () => {
  it('looks a key up once for calls within a second, and again after it', async () => {
    const { memory, state, store } = await open()
    await Promise.all([memory.find('k'), memory.find('k')])
    state.ms = 899
    expect((await memory.find('k'))?.id).toBe('k')
    expect(state.lookUps).toBe(1)
    await store.revoke('k', at, null)
    state.ms = 900
    expect((await memory.find('k'))?.revokedAt).toEqual(at)
    expect(state.lookUps).toBe(2)
  })

  it('counts the second from the beginning of a look-up, however long it takes', async () => {
    const { memory, state } = await open()
    let release: () => void = () => undefined
    state.held = new Promise((resolve) => (release = resolve))
    const slow = memory.find('k')
    state.ms = 950
    release()
    await slow
    await memory.find('k')
    expect(state.lookUps).toBe(2)
  })

  it('looks all origins up once for a second, however many are asked for, and again once any key changed', async () => {
    const { memory, state, store } = await open()
    const origin = 'https://www.example.org'
    await store.issue(aKey('p', { kind: 'publishable', origins: [origin] }), null)
    const asked = await Promise.all(
      [origin, 'https://a.example', 'https://b.example'].map((one) => memory.isOrigin(one)),
    )
    expect([asked, state.lookUps]).toEqual([[true, false, false], 1])
    await store.revoke('p', at, null)
    expect([await memory.isOrigin(origin), state.lookUps]).toEqual([true, 1])
    memory.forget('p')
    expect([await memory.isOrigin(origin), state.lookUps]).toEqual([false, 2])
    state.ms = 900
    await memory.isOrigin(origin)
    expect(state.lookUps).toBe(3)
  })

  it('looks up again at once what it is told to forget, also while a look-up is under way', async () => {
    const { memory, state, store } = await open()
    let release: () => void = () => undefined
    state.held = new Promise((resolve) => (release = resolve))
    const before = memory.find('k')
    await store.revoke('k', at, null)
    memory.forget('k')
    const after = memory.find('k')
    release()
    expect((await before)?.revokedAt).toBeNull()
    expect((await after)?.revokedAt).toEqual(at)
    expect((await memory.find('k'))?.revokedAt).toEqual(at)
  })

  it('keeps that there is no such key just as long', async () => {
    const { memory, state } = await open()
    expect([await memory.find('none'), await memory.find('none')]).toEqual([null, null])
    expect(state.lookUps).toBe(1)
  })

  it('keeps no look-up that failed', async () => {
    const { memory, state } = await open()
    state.failure = new Error('the database is gone')
    await expect(memory.find('k')).rejects.toThrow('gone')
    state.failure = null
    expect((await memory.find('k'))?.id).toBe('k')
  })

  it('looks up again when the clock was set back', async () => {
    const { memory, state } = await open()
    await memory.find('k')
    state.ms = -3_600_000
    await memory.find('k')
    expect(state.lookUps).toBe(2)
  })

  it('keeps 10,000 keys and no more', async () => {
    const { memory, state } = await open()
    for (let index = 0; index < 10_001; index++) await memory.find(`none-${index}`)
    await memory.find('none-10000')
    await memory.find('none-1')
    expect(state.lookUps).toBe(10_001)
    await memory.find('none-0')
    expect(state.lookUps).toBe(10_002)
  })

  it('keeps the key of the setting, too, until any key was changed here', async () => {
    const { memory, state, store } = await open()
    expect([await memory.bootstrapKey(), await memory.bootstrapKey()]).toEqual([null, null])
    await store.setBootstrapKey(aKey('setting', { bootstrap: true }), at)
    memory.forget('k')
    expect((await memory.bootstrapKey())?.id).toBe('setting')
    expect(state.lookUps).toBe(2)
  })

  it('stores a use once a minute, and has stored it when it is settled', async () => {
    const { memory, store, state, clock } = await open()
    let release: () => void = () => undefined
    state.held = new Promise((resolve) => (release = resolve))
    memory.noteUse('k', clock())
    memory.noteUse('k', clock())
    const settled = memory.settled()
    release()
    await settled
    expect((await store.find('k'))?.lastUsedAt).toEqual(clock())
    expect(state.lookUps).toBe(1)
    state.ms = 60_000
    memory.noteUse('k', clock())
    await memory.settled()
    expect((await store.find('k'))?.lastUsedAt).toEqual(clock())
  })

  it('tells that a use could not be stored, and nobody else hears of it', async () => {
    const { memory, state, errors } = await open()
    state.failure = new Error('the database is gone')
    memory.noteUse('k', at)
    await memory.settled()
    expect(errors).toEqual([state.failure])
  })
})
