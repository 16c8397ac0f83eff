import { inventoryContentSchema } from '../../../schemas/inventory.ts'
import { makeInventory } from '../../../useCases/makeInventory.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { idempotencyKey, ONCE_PROBLEMS, replayHeader } from '../idempotency.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { madeAnswer, sendInventory } from './answers.ts'

export function postInventory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/inventories',
    config: { scope: 'intake', conditions: ['Idempotency-Key'] },
    schema: {
      operationId: 'createInventory',
      tags: ['inventories'],
      summary: "Keep a household of your organisation's",
      description:
        'Under your own reference, with what holds on every visit (supply, tariff, emission factor, use) and with the visits, ' +
        'each a full state of meters and devices. Names and addresses are not kept: fields and texts that look like one are ' +
        'refused. No other organisation can see it.',
      querystring: noQuery,
      body: inventoryContentSchema,
      response: {
        201: madeAnswer('The inventory'),
        ...problemAnswers(...NEEDS_KEY, ...NEEDS_BODY, ...ONCE_PROBLEMS, 'inventory-exists'),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      const submitted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const made = await makeInventory(deps, senderOf(request), submitted, idempotencyKey(request))
      return sendInventory(replayHeader(reply, made.replayed), made.result, 201)
    },
  })
}
