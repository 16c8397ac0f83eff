import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type StoredKey, withoutDigest } from '../../src/core/access/apiKey.ts'
import type { AuditStore } from '../../src/stores/auditStore.ts'
import type { KeyStore } from '../../src/stores/keyStore.ts'
import { aKey, anOrganisation, digestOf, originOf } from './aKey.ts'

export interface OpenedKeyStore {
  readonly store: KeyStore
  /** A second store over the same data, as another process of the service has one. */
  readonly second: KeyStore
  /** The trail that both write into. */
  readonly audit: AuditStore
  close(): Promise<void>
}

const EVERYTHING = { limit: 1_000, keep: 'first' } as const
const later = (minutes: number) => new Date(new Date('2024-02-29T23:59:58.789Z').getTime() + minutes * 60_000)

/** What every store of keys must do, whatever it keeps them in. `open` gives an empty one. */
export function keyStoreContract(name: string, open: () => Promise<OpenedKeyStore>): void {
  describe(`the key store ${name}`, () => {
    let opened: OpenedKeyStore
    let store: KeyStore
    beforeEach(async () => {
      opened = await open()
      store = opened.store
      await store.addOrganisation(anOrganisation('operator'), null)
    })
    afterEach(() => opened.close())

    const events = async (action?: string) => opened.audit.list({ action }, EVERYTHING)
    const issueAll = async (keys: readonly StoredKey[]) => {
      for (const key of keys) await store.issue(key, null)
    }
    const ids = (keys: readonly { readonly id: string }[]) => keys.map(({ id }) => id)

    it('keeps organisations in the order of their codes, in pages', async () => {
      for (const code of ['b', 'a-second', 'c']) await store.addOrganisation(anOrganisation(code), null)
      const all = ['a-second', 'b', 'c', 'operator'].map(anOrganisation)
      expect(await store.organisations({ limit: 9 })).toEqual(all)
      expect(await store.organisations({ limit: 2, after: 'a-second' })).toEqual(all.slice(1, 3))
    })

    it('refuses an organisation that there is already, and leaves that one and the trail as they are', async () => {
      const twice = store.addOrganisation({ ...anOrganisation('operator'), name: 'Another' }, null)
      await expect(twice).rejects.toMatchObject({ code: 'organisation-exists' })
      expect(await store.organisations({ limit: 9 })).toEqual([anOrganisation('operator')])
      expect(await events()).toHaveLength(1)
    })

    it('gives back every field of a key, and null where there is none', async () => {
      const origin = originOf('issuer')
      const full = aKey('full', {
        kind: 'publishable',
        origins: ['https://www.example.org', 'https://example.org:8443'],
        issuedBy: 'issuer',
        rotatedFrom: 'issuer',
        expiresAt: later(5),
        revokedAt: later(6),
        lastUsedAt: later(7),
      })
      await store.issue(aKey('issuer'), null)
      await store.issue(full, origin)
      expect(await store.find('full')).toEqual(full)
      expect(await opened.second.find('issuer')).toEqual(aKey('issuer'))
      expect(await store.find('none')).toBeNull()
    })

    it('issues no key to an organisation that there is not, and stores no event of it', async () => {
      const key = aKey('k', { organisation: 'nobody' })
      await expect(store.issue(key, null)).rejects.toMatchObject({ code: 'unknown-organisation' })
      expect(await store.find('k')).toBeNull()
      expect(await events('api-key.issue')).toEqual([])
    })

    it('never gives the digest with the list of keys', async () => {
      await store.issue(aKey('k'), null)
      expect(await store.list({}, EVERYTHING)).toEqual([withoutDigest(aKey('k'))])
    })

    it('lists keys newest first, of one organisation or of all, and counts them', async () => {
      await store.addOrganisation(anOrganisation('other'), null)
      await issueAll([
        aKey('a', { issuedAt: later(1) }),
        aKey('b', { issuedAt: later(3), organisation: 'other' }),
        aKey('c', { issuedAt: later(2) }),
        aKey('d', { issuedAt: later(2) }),
      ])
      expect(ids(await store.list({}, EVERYTHING))).toEqual(['b', 'd', 'c', 'a'])
      expect(ids(await store.list({ organisation: 'operator' }, EVERYTHING))).toEqual(['d', 'c', 'a'])
      expect(ids(await store.list({ organisation: 'nobody' }, EVERYTHING))).toEqual([])
      expect(await store.count({})).toBe(4)
      expect(await store.count({ organisation: 'other' })).toBe(1)
    })

    it('gives any part of the list, from either end, between places that need not be in it', async () => {
      const keys = ['a', 'b', 'c', 'd', 'e'].map((id, index) =>
        aKey(id, { issuedAt: later(Math.floor(index / 2)) }),
      )
      await issueAll(keys)
      const place = (id: string) => keys.find((key) => key.id === id)!
      const part = async (window: Partial<Parameters<KeyStore['list']>[1]>) =>
        ids(await store.list({}, { ...EVERYTHING, ...window })).join('')
      expect(await part({})).toBe('edcba')
      expect(await part({ limit: 2 })).toBe('ed')
      expect(await part({ limit: 2, keep: 'last' })).toBe('ba')
      expect(await part({ after: place('d') })).toBe('cba')
      expect(await part({ before: place('c') })).toBe('ed')
      expect(await part({ after: place('e'), before: place('a'), limit: 2 })).toBe('dc')
      expect(await part({ after: place('e'), before: place('a'), limit: 2, keep: 'last' })).toBe('cb')
      expect(await part({ after: { issuedAt: later(1), id: 'cc' } })).toBe('cba')
      expect(await part({ limit: 0 })).toBe('')
    })

    it('knows the origins of publishable keys, for as long as each is valid', async () => {
      const publishable = { kind: 'publishable' as const, scopes: ['estimate'] as const }
      await issueAll([
        aKey('secret'),
        aKey('p1', { ...publishable, origins: ['https://a.example.org', 'https://b.example.org'] }),
        aKey('p2', { ...publishable, origins: ['https://b.example.org'], expiresAt: later(5) }),
        aKey('p3', { ...publishable, origins: ['https://c.example.org'], expiresAt: later(5) }),
        aKey('p4', { ...publishable, origins: ['https://d.example.org'] }),
      ])
      const origins = async (minutes: number) => [...(await store.origins(later(minutes)))].sort()
      const [a, b, c, d] = ['a', 'b', 'c', 'd'].map((host) => `https://${host}.example.org`)
      expect(await origins(4)).toEqual([a, b, c, d])
      await opened.second.revoke('p4', later(4), null)
      expect(await origins(4)).toEqual([a, b, c])
      expect(await origins(5)).toEqual([a, b])
    })

    it('revokes a key for good, at the time of the first revocation, for every process', async () => {
      await store.issue(aKey('k'), null)
      expect(await store.revoke('k', later(1), null)).toEqual(
        withoutDigest(aKey('k', { revokedAt: later(1) })),
      )
      expect((await store.revoke('k', later(9), null)).revokedAt).toEqual(later(1))
      expect((await opened.second.find('k'))?.revokedAt).toEqual(later(1))
      expect(await events('api-key.revoke')).toHaveLength(1)
    })

    it('cannot revoke a key that there is not', async () => {
      await expect(store.revoke('none', later(1), null)).rejects.toMatchObject({ code: 'unknown-key' })
    })

    it('rotates: stores the successor, and lets the key end with the overlap', async () => {
      const admin = originOf('k')
      await store.issue(aKey('k'), null)
      const successor = aKey('next', { rotatedFrom: 'k', issuedBy: 'k', issuedAt: later(1) })
      await store.rotate(successor, later(60), admin)
      expect(await store.find('next')).toEqual(successor)
      expect(await store.find('k')).toEqual(aKey('k', { expiresAt: later(60) }))
    })

    it('never lets a key live longer because it was rotated', async () => {
      await store.issue(aKey('k', { expiresAt: later(30) }), null)
      await store.rotate(aKey('next', { rotatedFrom: 'k' }), later(60), originOf('k'))
      expect((await store.find('k'))?.expiresAt).toEqual(later(30))
    })

    it('rotates a key once, also where two ask at the same moment, and never a revoked one', async () => {
      await issueAll([aKey('k'), aKey('ended')])
      const both = await Promise.allSettled([
        store.rotate(aKey('one', { rotatedFrom: 'k' }), later(60), originOf('k')),
        opened.second.rotate(aKey('two', { rotatedFrom: 'k' }), later(60), originOf('k')),
      ])
      expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
      const made = (await store.find('one')) ? 'one' : 'two'
      await expect(
        store.rotate(aKey('more', { rotatedFrom: 'k' }), later(60), originOf('k')),
      ).rejects.toMatchObject({
        code: 'key-rotated',
        details: { successor: made },
      })
      await store.revoke('ended', later(1), null)
      const late = store.rotate(aKey('late', { rotatedFrom: 'ended' }), later(60), originOf('k'))
      await expect(late).rejects.toMatchObject({ code: 'key-ended' })
      expect(ids(await store.list({}, EVERYTHING)).sort()).toEqual(['ended', 'k', made].sort())
    })

    it('keeps the last use of a key, once a minute at most', async () => {
      await store.issue(aKey('k'), null)
      const lastUse = async () => (await store.find('k'))?.lastUsedAt
      await store.noteUse('k', later(1))
      await store.noteUse('k', new Date(later(2).getTime() - 1))
      expect(await lastUse()).toEqual(later(1))
      await opened.second.noteUse('k', later(2))
      expect(await lastUse()).toEqual(later(2))
      await store.noteUse('k', later(1))
      expect(await lastUse()).toEqual(later(2))
      await store.noteUse('none', later(9))
      expect(await events()).toHaveLength(2)
    })

    const bootstrap = (id: string, secret: string) => aKey(id, { bootstrap: true, digest: digestOf(secret) })

    it('has one valid key of the setting: a start with the same one keeps it, with another one replaces it', async () => {
      expect(await store.bootstrapKey()).toBeNull()
      await store.setBootstrapKey(bootstrap('one', 'first secret'), later(1))
      await store.setBootstrapKey(bootstrap('again', 'first secret'), later(2))
      expect(await store.bootstrapKey()).toEqual(bootstrap('one', 'first secret'))
      await store.setBootstrapKey(bootstrap('two', 'second secret'), later(3))
      expect(await opened.second.bootstrapKey()).toEqual(bootstrap('two', 'second secret'))
      expect((await store.find('one'))?.revokedAt).toEqual(later(3))
      await store.setBootstrapKey(null, later(4))
      expect(await store.bootstrapKey()).toBeNull()
    })

    it('takes a setting back that it had before, as a new key', async () => {
      await store.setBootstrapKey(bootstrap('one', 'first secret'), later(1))
      await store.setBootstrapKey(null, later(2))
      await store.setBootstrapKey(bootstrap('two', 'first secret'), later(3))
      expect(await store.bootstrapKey()).toEqual(bootstrap('two', 'first secret'))
    })

    it('ends with one key where several processes start with the same setting at once', async () => {
      const starts = ['a', 'b', 'c', 'd'].map((id, index) =>
        (index % 2 === 0 ? store : opened.second).setBootstrapKey(bootstrap(id, 'secret'), later(1)),
      )
      await Promise.all(starts)
      expect((await store.list({}, EVERYTHING)).filter(({ revokedAt }) => revokedAt === null)).toHaveLength(1)
      expect(await store.count({})).toBe(1)
    })

    it('issues the first key once, whoever asks how often, and whether or not there was one of the setting', async () => {
      await store.setBootstrapKey(bootstrap('setting', 'secret'), later(1))
      await store.setBootstrapKey(null, later(2))
      const asked = ['a', 'b', 'c'].map((id, index) =>
        (index === 1 ? opened.second : store).issueFirst(aKey(id)),
      )
      expect((await Promise.all(asked)).filter(Boolean)).toEqual([true])
      expect(await store.count({})).toBe(2)
      const [{ id } = { id: '' }] = (await store.list({}, EVERYTHING)).filter((key) => !key.bootstrap)
      await store.revoke(id, later(3), null)
      expect(await store.issueFirst(aKey('later'))).toBe(false)
    })

    it('leaves an event of every change: what was before and after, who did it, and whose matter it is', async () => {
      await store.addOrganisation(anOrganisation('other'), originOf('k'))
      await store.issue(aKey('k'), null)
      const admin = originOf('k')
      const issued = aKey('theirs', { organisation: 'other', issuedBy: 'k', issuedAt: later(1) })
      await store.issue(issued, admin)
      await store.rotate(
        aKey('next', { organisation: 'other', rotatedFrom: 'theirs', issuedAt: later(2) }),
        later(9),
        admin,
      )
      await store.revoke('theirs', later(3), admin)
      const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value))
      const shown = (key: StoredKey) => json(withoutDigest(key))
      const by = { organisation: 'operator', keyId: 'k', requestId: 'request-of-k', concerns: 'other' }
      const subject = { subjectKind: 'api-key', subjectId: 'theirs' }
      const overlapping = { ...issued, expiresAt: later(9) }
      const trail = (await events()).toReversed()
      expect(trail.map(({ action }) => action)).toEqual([
        'organisation.make',
        'organisation.make',
        'api-key.issue',
        'api-key.issue',
        'api-key.rotate',
        'api-key.issue',
        'api-key.revoke',
      ])
      expect(trail[0]).toMatchObject({
        organisation: null,
        keyId: null,
        requestId: null,
        concerns: 'operator',
      })
      expect(trail[1]).toMatchObject({ ...by, subjectId: 'other', before: null, after: { code: 'other' } })
      expect(trail[3]).toMatchObject({ ...by, ...subject, at: later(1), before: null, after: shown(issued) })
      expect(trail[4]).toMatchObject({
        ...by,
        ...subject,
        at: later(2),
        before: shown(issued),
        after: shown(overlapping),
      })
      expect(trail[5]).toMatchObject({ ...by, subjectId: 'next', at: later(2) })
      expect(trail[6]).toMatchObject({
        ...by,
        ...subject,
        at: later(3),
        before: shown(overlapping),
        after: shown({ ...overlapping, revokedAt: later(3) }),
      })
      expect(JSON.stringify(trail)).not.toContain('digest')
    })
  })
}
