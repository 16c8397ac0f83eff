import {
  estimateWantedSchema,
  showStoredEstimate,
  storedEstimateSchema,
} from '../../../schemas/storedEstimate.ts'
import { storeEstimate } from '../../../useCases/storeEstimate.ts'
import { jsonAnswer } from '../answers.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { idempotencyKey, ONCE_PROBLEMS, REPLAY_HEADER, replayHeader } from '../idempotency.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleStoredEstimate } from './examples.ts'
import { inventoryParameters } from './inventoryParameters.ts'

export function postStoredEstimate(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/inventories/:id/estimates',
    config: { scope: 'intake', conditions: ['Idempotency-Key'] },
    schema: {
      operationId: 'storeEstimate',
      tags: ['inventories'],
      summary: 'Estimate a household as it was on a visit, and keep the result',
      description:
        'The same figures as POST /v1/estimates gives, kept with the household, the catalogue revision, tariff, emission factor and ' +
        'method version, so that the same estimate can be made again at any time.',
      params: inventoryParameters,
      querystring: noQuery,
      body: estimateWantedSchema,
      response: {
        201: jsonAnswer('The stored estimate', storedEstimateSchema, exampleStoredEstimate, {
          ...REPLAY_HEADER,
          Location: { type: 'string', description: 'Address of the stored estimate' },
        }),
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          ...ONCE_PROBLEMS,
          'unknown-inventory',
          'unknown-revision',
          'unknown-reference-revision',
          'unknown-overlay-revision',
          'address-too-long',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      const { id } = fitting(request.params)
      const wanted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const { result, replayed } = await storeEstimate(
        deps,
        senderOf(request),
        id,
        wanted,
        idempotencyKey(request),
      )
      return replayHeader(reply, replayed)
        .code(201)
        .headers({
          'cache-control': 'no-store',
          location: `/v1/inventories/${id}/estimates/${result.stored.id}`,
        })
        .send(showStoredEstimate(result))
    },
  })
}
