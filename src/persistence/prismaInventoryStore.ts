import type { NewAuditEvent } from '../core/access/auditEvent.ts'
import { DomainError } from '../core/fault.ts'
import {
  type Inventory,
  type InventoryContent,
  type InventorySummary,
  summaryOf as summarise,
} from '../core/inventory/inventory.ts'
import { unknownInventory } from '../core/inventory/unknownInventory.ts'
import type {
  InventoryChange,
  InventoryFilter,
  InventoryStore,
  TimedPlace,
} from '../stores/inventoryStore.ts'
import type { Window } from '../stores/window.ts'
import type { Prisma, PrismaClient } from './generated/client.ts'
import { addBatch } from './addBatch.ts'
import { prismaEstimateStore } from './prismaEstimateStore.ts'
import { openRunOnce, READ_COMMITTED } from './runOnce.ts'
import { writeAudit } from './writeAudit.ts'

type Transaction = Prisma.TransactionClient
type Row = Prisma.InventoryGetPayload<object>

/** Households of organisations in PostgreSQL, embedded or served. */
export function prismaInventoryStore(prisma: PrismaClient): InventoryStore {
  const runOnce = openRunOnce(prisma)
  return {
    add: (organisation, inventory, event, once) =>
      runOnce({ organisation, inventory: inventory.id }, once, (inside) =>
        add(inside, organisation, inventory, event),
      ),
    find: async (organisation, id) => {
      const row = await prisma.inventory.findUnique({ where: { organisation_id: { organisation, id } } })
      return row && inventoryOf(row)
    },
    list: (organisation, filter, window) => list(prisma, organisation, filter, window),
    count: (organisation, filter) => prisma.inventory.count({ where: whereOf(organisation, filter) }),
    change: (organisation, id, decide, once) =>
      runOnce({ organisation, inventory: id }, once, (inside) => change(inside, organisation, id, decide)),
    remove: (organisation, id, decide) =>
      prisma.$transaction((inside) => remove(inside, organisation, id, decide), READ_COMMITTED),
    addBatch: (organisation, batch, entries, event) =>
      prisma.$transaction((inside) => addBatch(inside, organisation, batch, entries, event), READ_COMMITTED),
    ...prismaEstimateStore(prisma, runOnce),
  }
}

/** The shape of the content is not looked at: only this service writes it, after its rules were checked. */
const inventoryOf = ({ id, version, createdAt, updatedAt, content }: Row): Inventory => ({
  id,
  version,
  createdAt: createdAt.toISOString(),
  updatedAt: updatedAt.toISOString(),
  content: content as unknown as InventoryContent,
})

const dayOf = (date: Date) => date.toISOString().slice(0, 10)

function dataOf(inventory: Inventory) {
  const { reference, version, updatedAt, visits, lastVisit } = summarise(inventory)
  return {
    reference,
    version,
    updatedAt: new Date(updatedAt),
    visits,
    lastVisit: lastVisit === null ? null : new Date(lastVisit),
    content: inventory.content as unknown as Prisma.InputJsonObject,
  }
}

async function add(inside: Transaction, organisation: string, inventory: Inventory, event: NewAuditEvent) {
  const { id, createdAt } = inventory
  const row = { organisation, id, createdAt: new Date(createdAt), ...dataOf(inventory) }
  const { count } = await inside.inventory.createMany({ data: [row], skipDuplicates: true })
  if (count === 0) {
    const holder = await holderOf(inside, organisation, inventory.content.reference)
    throw exists(inventory, holder?.id ?? null)
  }
  await writeAudit(inside, event)
  return inventory
}

async function change(
  inside: Transaction,
  organisation: string,
  id: string,
  decide: (before: Inventory) => InventoryChange,
) {
  const { after, event } = decide(await held(inside, organisation, id))
  const holder = await holderOf(inside, organisation, after.content.reference)
  if (holder !== null && holder.id !== id) throw exists(after, holder.id)
  await inside.inventory.update({ where: { organisation_id: { organisation, id } }, data: dataOf(after) })
  await writeAudit(inside, event)
  return after
}

async function remove(
  inside: Transaction,
  organisation: string,
  id: string,
  decide: (before: Inventory) => NewAuditEvent,
) {
  const event = decide(await held(inside, organisation, id))
  await inside.inventory.delete({ where: { organisation_id: { organisation, id } } })
  await inside.keptResult.deleteMany({ where: { organisation, inventory: id } })
  await writeAudit(inside, event)
}

/** An inventory that nobody else changes until the transaction ends. */
async function held(inside: Transaction, organisation: string, id: string): Promise<Inventory> {
  await inside.$queryRaw`
    SELECT 1 FROM public.inventory WHERE organisation = ${organisation} AND id = ${id} FOR UPDATE`
  const row = await inside.inventory.findUnique({ where: { organisation_id: { organisation, id } } })
  if (row === null) throw unknownInventory(id)
  return inventoryOf(row)
}

const holderOf = (inside: Transaction, organisation: string, reference: string) =>
  inside.inventory.findUnique({
    where: { organisation_reference: { organisation, reference } },
    select: { id: true },
  })

const exists = ({ content: { reference } }: Inventory, id: string | null) =>
  new DomainError(
    'inventory-exists',
    `There is an inventory with the reference "${reference}" already. Change that one, or choose another reference.`,
    { id },
  )

const whereOf = (organisation: string, filter: InventoryFilter): Prisma.InventoryWhereInput => ({
  organisation,
  ...(filter.reference !== undefined && { reference: filter.reference }),
  ...(filter.followedUp !== undefined && { visits: filter.followedUp ? { gte: 2 } : { lt: 2 } }),
  ...((filter.visitedFrom ?? filter.visitedTo) && {
    lastVisit: {
      ...(filter.visitedFrom && { gte: new Date(filter.visitedFrom) }),
      ...(filter.visitedTo && { lte: new Date(filter.visitedTo) }),
    },
  }),
})

/** What stands after a place in a list that is newest first, or before it. */
const beyond = ({ at, id }: TimedPlace, side: 'older' | 'newer') =>
  side === 'older'
    ? { createdAt: { lte: at }, OR: [{ createdAt: { lt: at } }, { id: { lt: id } }] }
    : { createdAt: { gte: at }, OR: [{ createdAt: { gt: at } }, { id: { gt: id } }] }

async function list(
  prisma: PrismaClient,
  organisation: string,
  filter: InventoryFilter,
  { after, before, limit, keep }: Window<TimedPlace>,
): Promise<readonly InventorySummary[]> {
  const order = keep === 'first' ? 'desc' : 'asc'
  const rows = await prisma.inventory.findMany({
    where: {
      AND: [
        whereOf(organisation, filter),
        after ? beyond(after, 'older') : {},
        before ? beyond(before, 'newer') : {},
      ],
    },
    orderBy: [{ createdAt: order }, { id: order }],
    take: limit,
    omit: { content: true },
  })
  return (keep === 'first' ? rows : rows.reverse()).map(summaryOf)
}

const summaryOf = ({
  id,
  reference,
  version,
  createdAt,
  updatedAt,
  visits,
  lastVisit,
}: Omit<Row, 'content'>): InventorySummary => ({
  id,
  reference,
  version,
  createdAt: createdAt.toISOString(),
  updatedAt: updatedAt.toISOString(),
  visits,
  lastVisit: lastVisit && dayOf(lastVisit),
})
