import type { Inventory, Visit, VisitKind } from '../../../core/inventory/inventory.ts'
import { showInventory, showTerms } from '../../../schemas/inventory.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { listStoredEstimates } from '../../../useCases/listStoredEstimates.ts'
import { readInventory } from '../../../useCases/readInventory.ts'
import { STORED_ESTIMATE_LIST } from '../../inventoryLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { nodeOrNull } from '../nodeOrNull.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { withoutNulls } from '../withoutNulls.ts'
import { VisitKindEnum } from './inventoryEnums.ts'
import { StoredEstimateType } from './storedEstimate.ts'

const VisitType = builder.objectRef<Visit & { readonly kind: VisitKind }>('Visit').implement({
  description: 'All that was found on one day.',
  fields: (t) => ({
    date: t.exposeString('date', { description: 'Day of the visit, YYYY-MM-DD.' }),
    kind: t.expose('kind', { type: VisitKindEnum, description: 'Which visit it is.' }),
    notes: t.string({
      nullable: true,
      description: 'Notes of the assessor.',
      resolve: ({ notes }) => notes ?? null,
    }),
    deviceCount: t.int({
      description: 'Number of entries in the list of devices.',
      resolve: ({ devices }) => devices.length,
    }),
    content: t.string({
      description: 'Meters and devices as JSON, in the form in which REST has them.',
      resolve: ({ meters = [], devices }) => JSON.stringify({ meters, devices }),
    }),
  }),
})

export const InventoryType = builder.node(builder.objectRef<Inventory>('Inventory'), {
  description: "One of your organisation's households.",
  id: { description: 'Opaque name of the household, unique in the whole service.', resolve: ({ id }) => id },
  loadOne: (id, { deps, sender }) => nodeOrNull(() => readInventory(deps, sender, id)),
  fields: (t) => ({
    identifier: t.exposeString('id', { description: 'What mutations and REST name it by.' }),
    reference: t.string({
      description: 'Your own name for it.',
      resolve: ({ content }) => content.reference,
    }),
    version: t.exposeInt('version', {
      description: '1 when it is made, one more with every change; what a change is based on.',
    }),
    createdAt: t.exposeString('createdAt', { description: 'When it was made (RFC 3339).' }),
    updatedAt: t.exposeString('updatedAt', { description: 'When it was last changed (RFC 3339).' }),
    notes: t.string({
      nullable: true,
      description: 'What is to be remembered.',
      resolve: ({ content: { notes } }) => notes ?? null,
    }),
    terms: t.string({
      description:
        'Supply, tariff, emission factor, use and the like as JSON, in the form in which REST has them.',
      resolve: (inventory) => JSON.stringify(showTerms(inventory)),
    }),
    visits: t.field({
      type: [VisitType],
      description: 'The visits in the order of their dates.',
      resolve: (inventory) => showInventory(inventory).visits,
    }),
    estimates: t.connection(
      {
        type: StoredEstimateType,
        description: 'The estimates that are kept of it, newest first.',
        complexity: pageCost,
        resolve: async ({ id }, pageArguments, { deps, sender }) => {
          const page = readShape(pageArgumentsSchema, withoutNulls(pageArguments))
          const of = { value: { inventory: id }, faults: [], raw: null }
          const { window, filter } = listWindow(STORED_ESTIMATE_LIST, page, of)
          const part = await listStoredEstimates(deps, sender, id, window)
          return connectionOf(STORED_ESTIMATE_LIST, part, filter)
        },
      },
      { name: 'StoredEstimateConnection', description: 'A page of stored estimates.' },
      { name: 'StoredEstimateEdge', description: 'A stored estimate and its place in the list.' },
    ),
  }),
})
