import { readInventory } from '../../../useCases/readInventory.ts'
import { builder } from '../builder.ts'
import { InventoryType } from '../types/inventory.ts'

builder.queryField('inventory', (t) =>
  t.field({
    type: InventoryType,
    nullable: true,
    description:
      "One of your organisation's households by its `identifier`. An unknown one is an error with code NOT_FOUND. Needs a key with the scope intake.",
    args: { inventoryId: t.arg.string({ required: true, description: 'Id of the household.' }) },
    resolve: (_root, { inventoryId }, { deps, sender }) => readInventory(deps, sender, inventoryId),
  }),
)
