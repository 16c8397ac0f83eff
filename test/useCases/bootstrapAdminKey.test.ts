import { createHash } from 'node:crypto'
import { beforeEach, describe, expect, it } from 'vitest'
import { digests } from '../../src/persistence/digests.ts'
import type { KeyStore } from '../../src/stores/keyStore.ts'
import { authenticate } from '../../src/useCases/authenticate.ts'
import { openBadKeys } from '../../src/useCases/badKeys.ts'
import { bootstrapAdminKey } from '../../src/useCases/bootstrapAdminKey.ts'
import type { Deps } from '../../src/useCases/deps.ts'
import { openKeyMemory } from '../../src/useCases/keyMemory.ts'
import { type MemoryAuditStore, memoryAuditStore } from '../stores/memoryAuditStore.ts'
import { memoryKeyStore } from '../stores/memoryKeyStore.ts'

const [FIRST, SECOND] = ['first-chosen-key-0123456789-abcdefgh', 'second-chosen-key-0123456789-abcdefg']
const EVERYTHING = { limit: 100, keep: 'first' } as const

let audit: MemoryAuditStore
let keyStore: KeyStore
let starts = 0
beforeEach(() => {
  audit = memoryAuditStore()
  keyStore = memoryKeyStore(audit.write)
})

/** What a process has that starts over the store, with a memory and with chance of its own. */
function aProcess(): Deps {
  const seed = ++starts
  let drawn = 0
  const clock = () => new Date(Date.UTC(2026, 0, 31, 12, 0, seed))
  const others = {} as Pick<
    Deps,
    | 'catalogueStore'
    | 'catalogueMemory'
    | 'referenceStore'
    | 'referenceMemory'
    | 'settings'
    | 'inventoryStore'
    | 'proposalStore'
    | 'quizLanguages'
    | 'overlayStore'
    | 'overlayMemory'
  >
  return {
    ...others,
    clock,
    keyStore,
    keyMemory: openKeyMemory(keyStore, clock, (error) => {
      throw error
    }),
    auditStore: audit,
    random: (bytes) => createHash('sha512').update(`${seed}/${++drawn}`).digest().subarray(0, bytes),
    digests,
  }
}
const start = (chosen: string | null) => bootstrapAdminKey(aProcess(), chosen)
const opens = async (text: string) => {
  const found = await authenticate(aProcess(), openBadKeys(), { text, address: '192.0.2.1' })
  return 'key' in found ? found.key : null
}

describe('a start', () => {
  it('makes the organisation of the operator, once', async () => {
    await start(null)
    await start(FIRST)
    expect((await keyStore.organisations({ limit: 9 })).map(({ code }) => code)).toEqual(['operator'])
  })

  it('without a chosen key issues one at the first time and gives it out once, good for everything', async () => {
    const key = await start(null)
    expect(await opens(key!)).toMatchObject({ organisation: 'operator', scopes: ['admin'], expiresAt: null })
    expect([await start(null), await start(null)]).toEqual([null, null])
    expect(await keyStore.count({})).toBe(1)
  })

  it('issues one first key where two processes start at once', async () => {
    const keys = await Promise.all([start(null), start(null)])
    expect(keys.filter((key) => key !== null)).toHaveLength(1)
  })

  it('issues no other key once one was issued, also where that one was revoked', async () => {
    const key = await start(null)
    const { id } = (await opens(key!))!
    await keyStore.revoke(id, new Date(), null)
    expect(await start(null)).toBeNull()
  })

  it('with a chosen key takes that one over and gives nothing out', async () => {
    expect(await start(FIRST)).toBeNull()
    expect(await opens(FIRST)).toMatchObject({ organisation: 'operator', scopes: ['admin'], bootstrap: true })
    expect(await opens(`${FIRST}x`)).toBeNull()
  })

  it('keeps a chosen key as one key over many starts', async () => {
    await start(FIRST)
    const { id } = (await opens(FIRST))!
    await start(FIRST)
    expect((await opens(FIRST))?.id).toBe(id)
    expect(await keyStore.count({})).toBe(1)
  })

  it('ends a chosen key that is changed or no longer set, and takes it back where it is set again', async () => {
    await start(FIRST)
    await start(SECOND)
    expect([await opens(FIRST), (await opens(SECOND)) !== null]).toEqual([null, true])
    const issued = await start(null)
    expect([await opens(FIRST), await opens(SECOND), (await opens(issued!)) !== null]).toEqual([
      null,
      null,
      true,
    ])
    await start(FIRST)
    expect([(await opens(FIRST)) !== null, (await opens(issued!)) !== null]).toEqual([true, true])
  })

  it('lets the chosen key have the form of an issued one', async () => {
    const issued = await start(null)
    const id = (await opens(issued!))!.id
    const other = issued!.replace(id, 'a'.repeat(16))
    await start(other)
    expect((await opens(other))?.bootstrap).toBe(true)
    expect((await opens(issued!))?.bootstrap).toBe(false)
  })

  it('leaves what it did in the trail, as the service’s own act, and no key in it', async () => {
    const key = await start(null)
    await start(FIRST)
    await start(SECOND)
    const trail = (await audit.list({}, EVERYTHING)).toReversed()
    expect(trail.map(({ action }) => action)).toEqual([
      'organisation.make',
      'api-key.issue',
      'api-key.issue',
      'api-key.revoke',
      'api-key.issue',
    ])
    expect(
      trail.every(
        ({ organisation, keyId, requestId }) => organisation === null && keyId === null && requestId === null,
      ),
    ).toBe(true)
    const text = JSON.stringify(trail)
    for (const secret of [FIRST, SECOND, key!.slice(21)]) expect(text).not.toContain(secret)
  })
})
