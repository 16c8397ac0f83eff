import { type ApiKey, type StoredKey, stateOf, withoutDigest } from '../../src/core/access/apiKey.ts'
import type { NewAuditEvent } from '../../src/core/access/auditEvent.ts'
import { keyAction, organisationMade } from '../../src/core/access/keyAction.ts'
import type { Organisation } from '../../src/core/access/organisation.ts'
import { DomainError } from '../../src/core/fault.ts'
import type { KeyStore } from '../../src/stores/keyStore.ts'

const MINUTE_MS = 60_000

/** A store of organisations and keys in memory, for tests; `write` takes its audit events. */
export function memoryKeyStore(write: (event: NewAuditEvent) => void): KeyStore {
  const organisations = new Map<string, Organisation>()
  const keys = new Map<string, StoredKey>()
  const put = (key: StoredKey, change: Partial<ApiKey>) => {
    const changed = { ...key, ...change }
    keys.set(key.id, changed)
    return changed
  }
  const newestFirst = (organisation: string | undefined) =>
    [...keys.values()]
      .filter((key) => organisation === undefined || key.organisation === organisation)
      .sort((one, other) => compare(other, one))
  const inForce = () => [...keys.values()].filter((key) => key.bootstrap && key.revokedAt === null)

  const store: KeyStore = {
    addOrganisation: async (organisation, origin) => {
      if (organisations.has(organisation.code)) throw new DomainError('organisation-exists', 'It exists.')
      organisations.set(organisation.code, organisation)
      write(organisationMade(organisation, origin))
    },
    organisations: async ({ after = '', limit }) =>
      [...organisations.values()]
        .filter(({ code }) => code > after)
        .sort((one, other) => (one.code < other.code ? -1 : 1))
        .slice(0, limit),
    issue: async (key, origin) => {
      if (!organisations.has(key.organisation))
        throw new DomainError('unknown-organisation', 'There is none.')
      keys.set(key.id, key)
      write(keyAction('api-key.issue', { before: null, after: key }, key.issuedAt, origin))
    },
    find: async (id) => keys.get(id) ?? null,
    origins: async (at) =>
      new Set(
        [...keys.values()]
          .filter((key) => key.kind === 'publishable' && stateOf(key, at) === 'active')
          .flatMap(({ origins }) => origins),
      ),
    list: async ({ organisation }, { after, before, limit, keep }) => {
      const between = newestFirst(organisation).filter(
        (key) => (!after || compare(key, after) < 0) && (!before || compare(key, before) > 0),
      )
      const part =
        keep === 'first' ? between.slice(0, limit) : between.slice(Math.max(between.length - limit, 0))
      return part.map(withoutDigest)
    },
    count: async ({ organisation }) => newestFirst(organisation).length,
    revoke: async (id, at, origin) => {
      const before = keys.get(id)
      if (!before) throw new DomainError('unknown-key', 'There is none.')
      if (before.revokedAt !== null) return withoutDigest(before)
      const after = put(before, { revokedAt: at })
      write(keyAction('api-key.revoke', { before, after }, at, origin))
      return withoutDigest(after)
    },
    rotate: async (successor, endsAt, origin) => {
      const before = keys.get(successor.rotatedFrom ?? '')
      if (before?.revokedAt !== null) throw new DomainError('key-ended', 'It is revoked.')
      const other = [...keys.values()].find(({ rotatedFrom }) => rotatedFrom === before.id)
      if (other) throw new DomainError('key-rotated', 'It was.', { successor: other.id })
      const sooner = before.expiresAt !== null && before.expiresAt < endsAt
      const after = put(before, { expiresAt: sooner ? before.expiresAt : endsAt })
      write(keyAction('api-key.rotate', { before, after }, successor.issuedAt, origin))
      await store.issue(successor, origin)
    },
    noteUse: async (id, at) => {
      const key = keys.get(id)
      if (key && at.getTime() - (key.lastUsedAt?.getTime() ?? -Infinity) >= MINUTE_MS)
        put(key, { lastUsedAt: at })
    },
    bootstrapKey: async () => inForce()[0] ?? null,
    setBootstrapKey: async (key, at) => {
      const isWanted = ({ digest }: StoredKey) => key !== null && Buffer.compare(digest, key.digest) === 0
      const found = inForce()
      for (const other of found.filter((each) => !isWanted(each))) await store.revoke(other.id, at, null)
      if (key !== null && !found.some(isWanted)) await store.issue(key, null)
    },
    issueFirst: async (key) => {
      if ([...keys.values()].some(({ bootstrap }) => !bootstrap)) return false
      await store.issue(key, null)
      return true
    },
  }
  return store
}

/** Later keys are greater; of two at once the one with the greater id. */
function compare(one: Pick<ApiKey, 'issuedAt' | 'id'>, other: Pick<ApiKey, 'issuedAt' | 'id'>): number {
  const later = one.issuedAt.getTime() - other.issuedAt.getTime()
  return later !== 0 ? later : one.id < other.id ? -1 : Number(one.id > other.id)
}
