import { type InventorySummary, summariseInventory } from '../../../useCases/listInventories.ts'
import { readInventory } from '../../../useCases/readInventory.ts'
import { builder } from '../builder.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { InventoryType } from './inventory.ts'

export const InventorySummaryType = builder.node(builder.objectRef<InventorySummary>('InventorySummary'), {
  description: 'A household in a list.',
  id: { description: 'Opaque name of the summary, unique in the whole service.', resolve: ({ id }) => id },
  loadOne: (id, { deps, sender }) => nodeOrNull(() => summariseInventory(deps, sender, id)),
  fields: (t) => ({
    identifier: t.exposeString('id', { description: 'What mutations and REST name it by.' }),
    reference: t.exposeString('reference', { description: 'Your own name for it.' }),
    version: t.exposeInt('version', { description: 'One more with every change.' }),
    createdAt: t.exposeString('createdAt', { description: 'When it was made (RFC 3339).' }),
    updatedAt: t.exposeString('updatedAt', { description: 'When it was last changed (RFC 3339).' }),
    visitCount: t.exposeInt('visits', { description: 'Number of visits.' }),
    lastVisit: t.exposeString('lastVisit', {
      nullable: true,
      description: 'Date of the last visit, YYYY-MM-DD; null where there is none yet.',
    }),
    inventory: t.field({
      type: InventoryType,
      nullable: true,
      description: 'The whole of it; null where it was deleted meanwhile. One more look-up for each.',
      complexity: { field: 10, multiplier: 1 },
      resolve: ({ id }, _arguments, { deps, sender }) => nodeOrNull(() => readInventory(deps, sender, id)),
    }),
  }),
})
