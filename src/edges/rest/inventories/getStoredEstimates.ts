import {
  storedEstimateListSchema,
  storedEstimateQuerySchema,
  summariseStoredEstimate,
} from '../../../schemas/storedEstimate.ts'
import { listStoredEstimates } from '../../../useCases/listStoredEstimates.ts'
import { STORED_ESTIMATE_LIST } from '../../inventoryLists.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer } from '../answers.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleStoredEstimateList } from './examples.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function getStoredEstimates(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/inventories/:id/estimates',
    config: { scope: 'intake' },
    schema: {
      operationId: 'listStoredEstimates',
      tags: ['inventories'],
      summary: 'List the estimates kept of a household, and which of them are out of date',
      description:
        'Newest first, in pages. `standing` tells whether the catalogue, a tariff, an emission factor or the visit itself has moved ' +
        'since, and by how much the total would change today.',
      params: inventoryParameters,
      querystring: storedEstimateQuerySchema,
      response: {
        200: jsonAnswer(
          'One page of stored estimates',
          storedEstimateListSchema,
          exampleStoredEstimateList,
          LINK_HEADER,
        ),
        ...problemAnswers(...NEEDS_KEY, 'unknown-inventory', 'faulty-cursor', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor } = fitting(request.query)
      const { id } = fitting(request.params)
      const of = { inventory: id }
      const after = cursor === undefined ? undefined : readListCursor(cursor, STORED_ESTIMATE_LIST, of)
      const part = await listStoredEstimates(deps, senderOf(request), id, { after, limit, keep: 'first' })
      const nextCursor = part.hasAfter ? writeListCursor(part.items.at(-1)!, STORED_ESTIMATE_LIST, of) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext(`/v1/inventories/${id}/estimates`, { limit }, nextCursor))
      return reply
        .header('cache-control', 'no-store')
        .send({ items: part.items.map(summariseStoredEstimate), nextCursor })
    },
  })
}
