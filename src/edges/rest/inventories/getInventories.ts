import { inventoryListSchema, inventoryQuerySchema } from '../../../schemas/inventory.ts'
import { listInventories } from '../../../useCases/listInventories.ts'
import { INVENTORY_LIST } from '../../inventoryLists.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer } from '../answers.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleInventoryList } from './examples.ts'

export function getInventories(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/inventories',
    config: { scope: 'intake' },
    schema: {
      operationId: 'listInventories',
      tags: ['inventories'],
      summary: 'List the households of your organisation',
      description: 'Newest first, in pages, without their visits.',
      querystring: inventoryQuerySchema,
      response: {
        200: jsonAnswer('One page of inventories', inventoryListSchema, exampleInventoryList, LINK_HEADER),
        ...problemAnswers(...NEEDS_KEY, 'faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor, ...filter } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, INVENTORY_LIST, filter)
      const part = await listInventories(deps, senderOf(request), filter, { after, limit, keep: 'first' })
      const nextCursor = part.hasAfter ? writeListCursor(part.items.at(-1)!, INVENTORY_LIST, filter) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/inventories', { ...filter, limit }, nextCursor))
      return reply.header('cache-control', 'no-store').send({ items: [...part.items], nextCursor })
    },
  })
}
