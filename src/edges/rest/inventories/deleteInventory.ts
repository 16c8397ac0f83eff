import { z } from 'zod'
import { removeInventory } from '../../../useCases/removeInventory.ts'
import { basisOfInventory } from '../ifMatch.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function deleteInventory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'DELETE',
    url: '/v1/inventories/:id',
    config: { scope: 'intake', conditions: ['If-Match'] },
    schema: {
      operationId: 'deleteInventory',
      tags: ['inventories'],
      summary: 'Delete a household with everything that hangs on it',
      description:
        'Visits, stored estimates and kept answers go with it, for good. With If-Match, the ETag of the inventory as it was ' +
        'read. The audit trail keeps that it was there, without reference and content.',
      params: inventoryParameters,
      querystring: noQuery,
      response: {
        204: z.null().describe('It is gone'),
        ...problemAnswers(
          ...NEEDS_KEY,
          'unknown-inventory',
          'malformed-condition',
          'precondition-required',
          'stale-inventory',
          'address-too-long',
        ),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { id } = fitting(request.params)
      await removeInventory(deps, senderOf(request), id, basisOfInventory(request, id))
      return reply.code(204).send(null)
    },
  })
}
