import { showInventory } from '../../../schemas/inventory.ts'
import { readInventory } from '../../../useCases/readInventory.ts'
import { notModified } from '../answers.ts'
import { inventoryHeaders, sendUnlessKept } from '../conditional.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { inventoryAnswer } from './answers.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function getInventory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/inventories/:id',
    config: { scope: 'intake' },
    schema: {
      operationId: 'readInventory',
      tags: ['inventories'],
      summary: 'Read one household with all its visits',
      description:
        'Visits come in the order of their dates. The tag is what a change or a deletion is based on.',
      params: inventoryParameters,
      querystring: noQuery,
      response: {
        200: inventoryAnswer('The inventory'),
        304: notModified,
        ...problemAnswers(...NEEDS_KEY, 'unknown-inventory', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const inventory = await readInventory(deps, senderOf(request), fitting(request.params).id)
      return sendUnlessKept(request, reply, inventoryHeaders(inventory), showInventory(inventory))
    },
  })
}
