import { type ApiKey, type StoredKey, withoutDigest } from '../core/access/apiKey.ts'
import type { Origin } from '../core/access/caller.ts'
import { keyAction, organisationMade } from '../core/access/keyAction.ts'
import type { Organisation } from '../core/access/organisation.ts'
import { DomainError } from '../core/fault.ts'
import type { KeyFilter, KeyPlace, KeyStore } from '../stores/keyStore.ts'
import type { Window } from '../stores/window.ts'
import { ACCESS_LOCK } from './advisoryLocks.ts'
import { Prisma, type PrismaClient } from './generated/client.ts'
import { writeAudit } from './writeAudit.ts'

type Transaction = Prisma.TransactionClient
// What is read after a wait for a lock must be what the holder before left.
const TRANSACTION = { isolationLevel: Prisma.TransactionIsolationLevel.ReadCommitted }
const MINUTE_MS = 60_000

/** Organisations and their keys in PostgreSQL, embedded or served. */
export function prismaKeyStore(prisma: PrismaClient): KeyStore {
  const change = <T>(work: (transaction: Transaction) => Promise<T>) => prisma.$transaction(work, TRANSACTION)
  return {
    addOrganisation: (organisation, origin) =>
      change((inside) => addOrganisation(inside, organisation, origin)),
    organisations: ({ after = '', limit }) =>
      prisma.organisation.findMany({ where: { code: { gt: after } }, orderBy: { code: 'asc' }, take: limit }),
    issue: (key, origin) => change((inside) => issue(inside, key, origin)),
    find: async (id) => keyOf(await prisma.apiKey.findUnique({ where: { id } })),
    origins: (at) => origins(prisma, at),
    list: (filter, window) => list(prisma, filter, window),
    count: (filter) => prisma.apiKey.count({ where: whereOf(filter) }),
    revoke: (id, at, origin) => change((inside) => revoke(inside, id, at, origin)),
    rotate: (successor, endsAt, origin) => change((inside) => rotate(inside, successor, endsAt, origin)),
    noteUse: async (id, at) => {
      const aMinuteAgo = new Date(at.getTime() - MINUTE_MS)
      const notYet = { OR: [{ lastUsedAt: null }, { lastUsedAt: { lte: aMinuteAgo } }] }
      await prisma.apiKey.updateMany({ where: { id, ...notYet }, data: { lastUsedAt: at } })
    },
    bootstrapKey: async () =>
      keyOf(await prisma.apiKey.findFirst({ where: { bootstrap: true, revokedAt: null } })),
    setBootstrapKey: (key, at) => change((inside) => setBootstrapKey(inside, key, at)),
    issueFirst: (key) => change((inside) => issueFirst(inside, key)),
  }
}

type Row = Prisma.ApiKeyGetPayload<object>

/** The words of kinds and scopes are not looked at: only this service writes them, after its rules were checked. */
function keyOf(row: Row): StoredKey
function keyOf(row: Row | null): StoredKey | null
function keyOf(row: Row | null): StoredKey | null {
  return row as StoredKey | null
}

const whereOf = ({ organisation }: KeyFilter) => ({ ...(organisation !== undefined && { organisation }) })
const olderThan = ({ issuedAt, id }: KeyPlace) => ({
  issuedAt: { lte: issuedAt },
  OR: [{ issuedAt: { lt: issuedAt } }, { id: { lt: id } }],
})
const newerThan = ({ issuedAt, id }: KeyPlace) => ({
  issuedAt: { gte: issuedAt },
  OR: [{ issuedAt: { gt: issuedAt } }, { id: { gt: id } }],
})

async function origins(prisma: PrismaClient, at: Date): Promise<ReadonlySet<string>> {
  const rows = await prisma.apiKey.findMany({
    where: { kind: 'publishable', revokedAt: null, OR: [{ expiresAt: null }, { expiresAt: { gt: at } }] },
    select: { origins: true },
  })
  return new Set(rows.flatMap((row) => row.origins))
}

async function list(
  prisma: PrismaClient,
  filter: KeyFilter,
  { after, before, limit, keep }: Window<KeyPlace>,
): Promise<readonly ApiKey[]> {
  const order = keep === 'first' ? 'desc' : 'asc'
  const rows = await prisma.apiKey.findMany({
    where: { AND: [whereOf(filter), after ? olderThan(after) : {}, before ? newerThan(before) : {}] },
    orderBy: [{ issuedAt: order }, { id: order }],
    take: limit,
  })
  return (keep === 'first' ? rows : rows.reverse()).map((row) => withoutDigest(keyOf(row)))
}

async function addOrganisation(inside: Transaction, organisation: Organisation, origin: Origin | null) {
  const { code, name, madeAt } = organisation
  const { count } = await inside.organisation.createMany({
    data: [{ code, name, madeAt }],
    skipDuplicates: true,
  })
  if (count === 0)
    throw new DomainError(
      'organisation-exists',
      `There is an organisation "${code}" already; choose another code.`,
    )
  await writeAudit(inside, organisationMade(organisation, origin))
}

async function issue(inside: Transaction, key: StoredKey, origin: Origin | null): Promise<void> {
  if ((await inside.organisation.findUnique({ where: { code: key.organisation } })) === null)
    throw new DomainError('unknown-organisation', `There is no organisation "${key.organisation}".`)
  await inside.apiKey.create({ data: dataOf(key) })
  await writeAudit(inside, keyAction('api-key.issue', { before: null, after: key }, key.issuedAt, origin))
}

const dataOf = (key: StoredKey) => ({
  ...withoutDigest(key),
  scopes: [...key.scopes],
  origins: [...key.origins],
  digest: Uint8Array.from(key.digest),
})

async function revoke(inside: Transaction, id: string, at: Date, origin: Origin | null): Promise<ApiKey> {
  const { count } = await inside.apiKey.updateMany({
    where: { id, revokedAt: null },
    data: { revokedAt: at },
  })
  const after = keyOf(await inside.apiKey.findUnique({ where: { id } }))
  if (after === null) throw new DomainError('unknown-key', `There is no key with the id "${id}".`)
  if (count > 0) {
    const before = { ...after, revokedAt: null }
    await writeAudit(inside, keyAction('api-key.revoke', { before, after }, at, origin))
  }
  return withoutDigest(after)
}

async function rotate(
  inside: Transaction,
  successor: StoredKey,
  endsAt: Date,
  origin: Origin,
): Promise<void> {
  const id = successor.rotatedFrom ?? ''
  await inside.$queryRaw`SELECT id FROM public.api_key WHERE id = ${id} FOR UPDATE`
  const before = keyOf(await inside.apiKey.findUnique({ where: { id, revokedAt: null } }))
  // It was there and valid when it was looked at, and has been revoked since.
  if (before === null)
    throw new DomainError('key-ended', `The key ${id} is no longer valid, so it has no successor.`)
  const successorOfBefore = await inside.apiKey.findFirst({ where: { rotatedFrom: id } })
  if (successorOfBefore !== null)
    throw new DomainError(
      'key-rotated',
      `The key ${id} has the successor ${successorOfBefore.id} already. Rotate that one; or, if it was lost, revoke it and issue a new key.`,
      { successor: successorOfBefore.id },
    )
  const expiresAt = before.expiresAt !== null && before.expiresAt < endsAt ? before.expiresAt : endsAt
  await inside.apiKey.update({ where: { id }, data: { expiresAt } })
  const after = { ...before, expiresAt }
  await writeAudit(inside, keyAction('api-key.rotate', { before, after }, successor.issuedAt, origin))
  await issue(inside, successor, origin)
}

const inTurn = (inside: Transaction) => inside.$executeRaw`SELECT ${Prisma.raw(ACCESS_LOCK)}`

async function setBootstrapKey(inside: Transaction, key: StoredKey | null, at: Date): Promise<void> {
  await inTurn(inside)
  const inForce = await inside.apiKey.findMany({ where: { bootstrap: true, revokedAt: null } })
  const isWanted = ({ digest }: Row) => key !== null && Buffer.compare(digest, key.digest) === 0
  for (const { id } of inForce.filter((row) => !isWanted(row))) await revoke(inside, id, at, null)
  if (key !== null && !inForce.some(isWanted)) await issue(inside, key, null)
}

async function issueFirst(inside: Transaction, key: StoredKey): Promise<boolean> {
  await inTurn(inside)
  if ((await inside.apiKey.findFirst({ where: { bootstrap: false } })) !== null) return false
  await issue(inside, key, null)
  return true
}
