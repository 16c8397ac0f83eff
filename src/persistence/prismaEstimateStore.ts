import type { EstimateBasis } from '../core/estimate/basis.ts'
import type { Estimate } from '../core/estimate/estimate.ts'
import type { Household } from '../core/inventory/household.ts'
import type { StoredEstimate } from '../core/inventory/storedEstimate.ts'
import { unknownInventory } from '../core/inventory/unknownInventory.ts'
import { without } from '../core/without.ts'
import type { InventoryStore, TimedPlace } from '../stores/inventoryStore.ts'
import type { Window } from '../stores/window.ts'
import type { Prisma, PrismaClient } from './generated/client.ts'
import type { RunOnce } from './runOnce.ts'
import { writeAudit } from './writeAudit.ts'

type Row = Prisma.StoredEstimateGetPayload<object>

/** The part of the inventory store that keeps estimates. */
export const prismaEstimateStore = (
  prisma: PrismaClient,
  runOnce: RunOnce,
): Pick<InventoryStore, 'addEstimate' | 'findEstimate' | 'estimates'> => ({
  addEstimate: (organisation, stored, event, once) =>
    runOnce({ organisation, inventory: stored.inventory }, once, async (inside) => {
      const { inventory: id } = stored
      // Held, so that the inventory is not taken away meanwhile.
      const held = await inside.$queryRaw<unknown[]>`
        SELECT 1 FROM public.inventory WHERE organisation = ${organisation} AND id = ${id} FOR KEY SHARE`
      if (held.length === 0) throw unknownInventory(id)
      await inside.storedEstimate.create({ data: dataOf(organisation, stored) })
      await writeAudit(inside, event)
      return stored
    }),
  findEstimate: async (organisation, inventory, id) => {
    const row = await prisma.storedEstimate.findUnique({
      where: { organisation_inventory_id: { organisation, inventory, id } },
    })
    return row && storedOf(row)
  },
  estimates: (organisation, inventory, window) => list(prisma, organisation, inventory, window),
})

const dataOf = (organisation: string, stored: StoredEstimate): Prisma.StoredEstimateUncheckedCreateInput => ({
  organisation,
  inventory: stored.inventory,
  id: stored.id,
  visit: new Date(stored.visit),
  madeAt: new Date(stored.madeAt),
  catalogueRevision: stored.catalogueRevision,
  methodVersion: stored.methodVersion,
  household: stored.household as unknown as Prisma.InputJsonObject,
  basis: stored.basis as unknown as Prisma.InputJsonObject,
  result: stored.result as unknown as Prisma.InputJsonObject,
})

export const storedOf = (row: Row): StoredEstimate => ({
  ...without(row, 'organisation'),
  visit: row.visit.toISOString().slice(0, 10),
  madeAt: row.madeAt.toISOString(),
  household: row.household as unknown as Household,
  basis: row.basis as unknown as EstimateBasis,
  result: row.result as unknown as Estimate,
})

const beyond = ({ at, id }: TimedPlace, side: 'older' | 'newer') =>
  side === 'older'
    ? { madeAt: { lte: at }, OR: [{ madeAt: { lt: at } }, { id: { lt: id } }] }
    : { madeAt: { gte: at }, OR: [{ madeAt: { gt: at } }, { id: { gt: id } }] }

async function list(
  prisma: PrismaClient,
  organisation: string,
  inventory: string,
  { after, before, limit, keep }: Window<TimedPlace>,
): Promise<readonly StoredEstimate[]> {
  const order = keep === 'first' ? 'desc' : 'asc'
  const rows = await prisma.storedEstimate.findMany({
    where: {
      AND: [
        { organisation, inventory },
        after ? beyond(after, 'older') : {},
        before ? beyond(before, 'newer') : {},
      ],
    },
    orderBy: [{ madeAt: order }, { id: order }],
    take: limit,
  })
  return (keep === 'first' ? rows : rows.reverse()).map(storedOf)
}
