import { z } from 'zod'
import { inventoryFilterSchema } from '../../../schemas/inventory.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { countInventories, listInventories } from '../../../useCases/listInventories.ts'
import { INVENTORY_LIST } from '../../inventoryLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { InventorySummaryType } from '../types/inventorySummary.ts'
import { withoutNulls } from '../withoutNulls.ts'

/** The same filter as REST has it, but that a truth value is one already. */
const filterSchema = inventoryFilterSchema.extend({ followedUp: z.boolean().optional() })

builder.queryField('inventories', (t) =>
  t.connection(
    {
      type: InventorySummaryType,
      nullable: true,
      description: "Your organisation's households, newest first. Needs a key with the scope intake.",
      args: {
        reference: t.arg.string({ description: 'Only the one with this reference.' }),
        visitedFrom: t.arg.string({
          description: 'Only those whose last visit was on this day (YYYY-MM-DD) or later.',
        }),
        visitedTo: t.arg.string({
          description: 'Only those whose last visit was on this day (YYYY-MM-DD) or earlier.',
        }),
        followedUp: t.arg.boolean({
          description: 'Only those with two visits or more (true), or only those without (false).',
        }),
      },
      complexity: pageCost,
      resolve: async (_root, { first, last, after, before, ...rest }, { deps, sender }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls({ first, last, after, before }))
        const given = readShape(filterSchema, withoutNulls(rest))
        const { filter, window } = listWindow(INVENTORY_LIST, page, given)
        const part = await listInventories(deps, sender, filter, window)
        return {
          ...connectionOf(INVENTORY_LIST, part, filter),
          count: () => countInventories(deps, sender, filter),
        }
      },
    },
    {
      name: 'InventoryConnection',
      description: 'A page of households.',
      fields: (connection) => ({
        totalCount: connection.int({
          description: 'Number of households that the filter lets through, on all pages.',
          resolve: ({ count }) => count(),
        }),
      }),
    },
    { name: 'InventoryEdge', description: 'A household and its place in the list.' },
  ),
)
