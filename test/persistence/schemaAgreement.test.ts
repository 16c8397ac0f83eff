import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Prisma, type PrismaClient } from '../../src/persistence/generated/client.ts'
import { withPostgres } from '../helpers/postgres.ts'
import { aCategory } from '../stores/aCategory.ts'
import { embeddedDatabases, freshClient, servedDatabases } from '../stores/testDatabases.ts'
import { describeDatabase, describeModel } from './describeTables.ts'
import { type DataModel, readDataModel } from './readDataModel.ts'

let model: DataModel
beforeAll(async () => {
  model = await readDataModel()
})
const postgres = withPostgres()

/** SQL that makes the database another one than schema.prisma says, and the line that then differs. */
const DRIFTS = [
  ['ALTER TABLE category_state ADD COLUMN extra text', 'category_state: column extra text, nullable'],
  ['ALTER TABLE catalogue_revision DROP COLUMN reason', 'catalogue_revision: column reason text, not null'],
  [
    'ALTER TABLE catalogue_revision ALTER author DROP NOT NULL',
    'catalogue_revision: column author text, nullable',
  ],
  [
    "ALTER TABLE catalogue_revision ALTER action SET DEFAULT 'seed'",
    'catalogue_revision: column action text, not null',
  ],
  [
    'ALTER TABLE catalogue_revision ALTER at TYPE timestamp(3)',
    'catalogue_revision: column at timestamp(3) without time zone, not null',
  ],
  [
    'ALTER TABLE category_state DROP CONSTRAINT category_state_pkey',
    'category_state: primary key (code, revision)',
  ],
  ['CREATE UNIQUE INDEX ON category_state (code)', 'category_state: unique index (code)'],
  ['CREATE TABLE other (id integer)', 'other: column id integer, nullable'],
  [
    'ALTER TABLE category_state DROP CONSTRAINT category_state_revision_fkey',
    'category_state: (revision) references catalogue_revision (number), on delete restrict, on update restrict',
  ],
] as const

for (const databases of [embeddedDatabases(), servedDatabases(postgres)])
  describe(`schema.prisma and the migrated database, ${databases.name}`, () => {
    afterAll(() => databases.closeAll())

    it('have the same tables, columns, types, keys, indexes and references', async () => {
      const { database } = await freshClient(databases)
      expect(await database.withConnection(describeDatabase)).toEqual(describeModel(model))
      await database.close()
    })

    it.each(DRIFTS)('would be told apart after %s', async (drift, line) => {
      const { database } = await freshClient(databases)
      const found = await database.withConnection(async (connection) => {
        await connection.run(drift)
        return describeDatabase(connection)
      })
      const described = describeModel(model)
      const different = [
        ...found.filter((one) => !described.includes(one)),
        ...described.filter((one) => !found.includes(one)),
      ]
      expect(different).toContain(line)
      await database.close()
    })

    it('let the client write and read every field of every model', async () => {
      const { prisma, database } = await freshClient(databases)
      for (const name of Object.values(Prisma.ModelName)) await EXERCISES[name](prisma)
      await database.close()
    })
  })

const revision = {
  number: 1,
  action: 'seed',
  author: 'an-organisation',
  keyId: 'a-key',
  reason: 'a test',
  at: new Date('2024-02-29T23:59:58.789Z'),
}
const state = { code: 'a', revision: 1, retired: false, content: JSON.parse(JSON.stringify(aCategory('a'))) }
const at = new Date('2024-02-29T23:59:58.789Z')
const organisation = { code: 'an-organisation', name: 'An organisation', madeAt: at }
const overlayRevision = {
  organisation: 'an-organisation',
  number: 1,
  action: 'lay',
  keyId: 'key',
  reason: 'a test',
  at,
  code: 'a',
}
const key = {
  id: 'key',
  organisation: 'an-organisation',
  kind: 'publishable',
  name: 'A key',
  scopes: ['estimate'],
  origins: ['https://www.example.org', 'https://example.org'],
  digest: new Uint8Array(32).fill(7),
  bootstrap: false,
  issuedAt: at,
  issuedBy: null,
  rotatedFrom: null,
  expiresAt: at,
  revokedAt: at,
  lastUsedAt: at,
}
const event = {
  at,
  organisation: 'an-organisation',
  keyId: 'key',
  requestId: 'a-request',
  action: 'api-key.issue',
  subjectKind: 'api-key',
  subjectId: 'key',
  concerns: 'an-organisation',
  before: { name: 'Before' },
  after: { name: 'After' },
}

const inventory = {
  organisation: 'an-organisation',
  id: 'inventory',
  reference: 'H-1',
  version: 1,
  createdAt: at,
  updatedAt: at,
  visits: 1,
  lastVisit: new Date('2024-02-29'),
  content: { reference: 'H-1', visits: [] },
  batch: 'a-batch',
  batchLine: 1,
  batchDigest: new Uint8Array(32).fill(7),
}
const estimate = {
  organisation: 'an-organisation',
  inventory: 'inventory',
  id: 'estimate',
  visit: new Date('2024-02-29'),
  madeAt: at,
  catalogueRevision: 1,
  methodVersion: '1',
  household: { devices: [] },
  basis: {},
  result: { zebra: 1, ant: 2 },
}
const kept = {
  organisation: 'an-organisation',
  key: 'a-key',
  digest: new Uint8Array(32).fill(7),
  inventory: 'inventory',
  result: { id: 'inventory' },
  keptAt: at,
}
const deviceReading = {
  visit: new Date('2024-02-29'),
  place: 0,
  device: 'tv',
  category: 'television',
  mode: 'standby',
  year: 2018,
  quantity: 1,
  reading: { kind: 'power', watts: 0.8 },
}
const rejection = {
  category: 'television',
  mode: 'standby',
  yearFrom: 2013,
  yearTo: 2020,
  version: '1-8-0.1-0.2-0.3',
  n: 8,
  lowW: 0.1,
  typicalW: 0.2,
  highW: 0.3,
  author: 'an-organisation',
  keyId: 'key',
  reason: 'a reason',
  at,
}
const referenceState = {
  kind: 'tariff',
  code: 'a',
  revision: 1,
  retired: false,
  content: { name: 'Fields in an order of their own', code: 'a', retired: false },
}

/** One for each model: a model without one does not compile. */
const EXERCISES: Record<Prisma.ModelName, (prisma: PrismaClient) => Promise<void>> = {
  CatalogueRevision: async (prisma) => {
    await prisma.$transaction(async (transaction) => {
      await transaction.catalogueRevision.create({ data: revision })
      await transaction.categoryState.create({ data: state })
    })
    expect(await prisma.catalogueRevision.findMany()).toEqual([revision])
  },
  CategoryState: async (prisma) => {
    expect(await prisma.categoryState.findMany()).toEqual([state])
    expect(await prisma.categoryState.findMany({ include: { made: true } })).toEqual([
      { ...state, made: revision },
    ])
  },
  ReferenceRevision: async (prisma) => {
    await prisma.$transaction(async (transaction) => {
      await transaction.referenceRevision.create({ data: revision })
      await transaction.referenceState.create({ data: referenceState })
    })
    expect(await prisma.referenceRevision.findMany()).toEqual([revision])
  },
  ReferenceState: async (prisma) => {
    const states = await prisma.referenceState.findMany()
    expect(JSON.stringify(states)).toBe(JSON.stringify([referenceState]))
  },
  Organisation: async (prisma) => {
    await prisma.organisation.create({ data: organisation })
    expect(await prisma.organisation.findMany()).toEqual([organisation])
  },
  OverlayRevision: async (prisma) => {
    const data = { ...overlayRevision, content: state.content }
    await prisma.overlayRevision.create({ data })
    expect(await prisma.overlayRevision.findMany({ include: { holder: true } })).toEqual([
      { ...data, holder: organisation },
    ])
    const removal = { ...overlayRevision, number: 2, action: 'remove' }
    expect(await prisma.overlayRevision.create({ data: removal })).toEqual({ ...removal, content: null })
  },
  ApiKey: async (prisma) => {
    await prisma.apiKey.create({ data: key })
    await prisma.apiKey.create({ data: { ...key, id: 'successor', issuedBy: 'key', rotatedFrom: 'key' } })
    expect(await prisma.apiKey.findUnique({ where: { id: 'key' } })).toEqual(key)
    expect(
      await prisma.apiKey.findUnique({
        where: { id: 'successor' },
        select: { holder: true, issuer: true, predecessor: true },
      }),
    ).toEqual({ holder: organisation, issuer: key, predecessor: key })
    expect(
      await prisma.apiKey.findUnique({
        where: { id: 'key' },
        select: { issued: { select: { id: true } }, successors: { select: { id: true } } },
      }),
    ).toEqual({ issued: [{ id: 'successor' }], successors: [{ id: 'successor' }] })
    expect(
      await prisma.organisation.findMany({
        select: { keys: { select: { id: true }, orderBy: { id: 'asc' } } },
      }),
    ).toEqual([{ keys: [{ id: 'key' }, { id: 'successor' }] }])
  },
  AuditEvent: async (prisma) => {
    await prisma.auditEvent.create({ data: event })
    expect(await prisma.auditEvent.findMany()).toEqual([{ id: 1n, ...event }])
  },
  Inventory: async (prisma) => {
    await prisma.inventory.create({ data: inventory })
    expect(await prisma.inventory.findMany({ include: { holder: true } })).toEqual([
      { ...inventory, holder: organisation },
    ])
  },
  StoredEstimate: async (prisma) => {
    await prisma.storedEstimate.create({ data: estimate })
    const found = await prisma.storedEstimate.findMany({ include: { of: true } })
    expect(found).toEqual([{ ...estimate, of: inventory }])
    // The order in which the fields were written is part of what is kept.
    expect(JSON.stringify(found[0]?.result)).toBe('{"zebra":1,"ant":2}')
  },
  KeptResult: async (prisma) => {
    await prisma.keptResult.create({ data: kept })
    expect(await prisma.keptResult.findMany({ include: { holder: true } })).toEqual([
      { ...kept, holder: organisation },
    ])
  },
  DeviceReading: async (prisma) => {
    const { organisation: holder, id } = inventory
    const data = { ...deviceReading, organisation: holder, inventory: id }
    const { id: number } = await prisma.deviceReading.create({ data })
    expect(await prisma.deviceReading.findMany({ include: { of: true } })).toEqual([
      { ...data, id: number, of: inventory },
    ])
  },
  ProposalRejection: async (prisma) => {
    const { id } = await prisma.proposalRejection.create({ data: rejection })
    expect(await prisma.proposalRejection.findMany({ include: { of: true } })).toEqual([
      { ...rejection, id, of: organisation },
    ])
  },
}
