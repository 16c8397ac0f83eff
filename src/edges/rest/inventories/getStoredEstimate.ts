import { showStoredEstimate, storedEstimateSchema } from '../../../schemas/storedEstimate.ts'
import { readStoredEstimate } from '../../../useCases/readStoredEstimate.ts'
import { jsonAnswer } from '../answers.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleStoredEstimate } from './examples.ts'
import { estimateParameters } from './inventoryParameters.ts'

export function getStoredEstimate(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/inventories/:id/estimates/:estimateId',
    config: { scope: 'intake' },
    schema: {
      operationId: 'readStoredEstimate',
      tags: ['inventories'],
      summary: 'Read a stored estimate, and how it stands to what would be estimated today',
      description:
        'With the household as it was estimated. `standing` tells what moved on since, and by how much the total would change.',
      params: estimateParameters,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The stored estimate', storedEstimateSchema, exampleStoredEstimate),
        ...problemAnswers(...NEEDS_KEY, 'unknown-inventory', 'unknown-estimate', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { id, estimateId } = fitting(request.params)
      const found = await readStoredEstimate(deps, senderOf(request), id, estimateId)
      return reply.header('cache-control', 'no-store').send(showStoredEstimate(found))
    },
  })
}
