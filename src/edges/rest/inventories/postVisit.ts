import { inventoryContentSchema, visitSchema } from '../../../schemas/inventory.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { addVisit } from '../../../useCases/addVisit.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { idempotencyKey, ONCE_PROBLEMS, replayHeader } from '../idempotency.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { madeAnswer, sendInventory } from './answers.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function postVisit(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/inventories/:id/visits',
    config: { scope: 'intake', conditions: ['Idempotency-Key'] },
    schema: {
      operationId: 'addVisit',
      tags: ['inventories'],
      summary: 'Add a visit to a household',
      description:
        'The full state that was found on that day. It overwrites nothing, so it needs no If-Match; a second visit on the same ' +
        'day is refused. The answer is the inventory with all its visits.',
      params: inventoryParameters,
      querystring: noQuery,
      body: visitSchema,
      response: {
        201: madeAnswer('The inventory with the visit'),
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          ...ONCE_PROBLEMS,
          'unknown-inventory',
          'address-too-long',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      fitting(request.query)
      const { id } = fitting(request.params)
      const readContent = (whole: unknown) => readShape(inventoryContentSchema, whole)
      const key = idempotencyKey(request)
      const added = await addVisit(deps, senderOf(request), id, request.body.raw, readContent, key)
      return sendInventory(replayHeader(reply, added.replayed), added.result, 201)
    },
  })
}
