import type { StoredKey } from '../../src/core/access/apiKey.ts'
import type { Caller, Origin } from '../../src/core/access/caller.ts'
import type { Organisation } from '../../src/core/access/organisation.ts'

const AT = new Date('2024-02-29T23:59:58.789Z')

export const anOrganisation = (code: string): Organisation =>
  Object.freeze({ code, name: `Invented ${code}`, madeAt: AT })

/** An invented key for the tests of the stores: its digest is made of its id. */
export const aKey = (id: string, changes: Partial<StoredKey> = {}): StoredKey =>
  Object.freeze({
    id,
    organisation: 'operator',
    kind: 'secret',
    name: `Invented ${id}`,
    scopes: Object.freeze(['estimate', 'catalogue:edit'] as const),
    origins: Object.freeze([]),
    bootstrap: false,
    issuedAt: AT,
    issuedBy: null,
    rotatedFrom: null,
    expiresAt: null,
    revokedAt: null,
    lastUsedAt: null,
    digest: digestOf(id),
    ...changes,
  })

export const digestOf = (id: string) => new Uint8Array(32).map((_, index) => id.charCodeAt(index % id.length))

export const originOf = (keyId: string, organisation = 'operator'): Origin => {
  const caller: Caller = { organisation, keyId, scopes: ['admin'] }
  return Object.freeze({ caller, requestId: `request-of-${keyId}` })
}
