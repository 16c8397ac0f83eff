import { remadeEstimateSchema } from '../../../schemas/storedEstimate.ts'
import { remakeEstimate } from '../../../useCases/remakeEstimate.ts'
import { jsonAnswer } from '../answers.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleRemadeEstimate } from './examples.ts'
import { estimateParameters } from './inventoryParameters.ts'

export function getRemadeEstimate(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/inventories/:id/estimates/:estimateId/recomputation',
    config: { scope: 'intake' },
    schema: {
      operationId: 'recomputeEstimate',
      tags: ['inventories'],
      summary: 'Make a stored estimate again from what is stored with it',
      description:
        'With the catalogue revision, settings, tariff and emission factor of that time; `same` tells whether the result is the ' +
        'stored one to the last byte. Nothing is stored.',
      params: estimateParameters,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The estimate, made again', remadeEstimateSchema, exampleRemadeEstimate),
        ...problemAnswers(...NEEDS_KEY, 'unknown-inventory', 'unknown-estimate', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { id, estimateId } = fitting(request.params)
      const remade = await remakeEstimate(deps, senderOf(request), id, estimateId)
      return reply.header('cache-control', 'no-store').send(remade)
    },
  })
}
