import { apiKeySchema, showKey } from '../../../schemas/apiKey.ts'
import { readApiKey } from '../../../useCases/readApiKey.ts'
import { jsonAnswer } from '../answers.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleKey } from './examples.ts'
import { keyParameters } from './keyParameters.ts'

export function getApiKey(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/api-keys/:id',
    config: { scope: 'admin' },
    schema: {
      operationId: 'readApiKey',
      tags: ['access'],
      summary: 'Read one API key, without its secret',
      description: 'A key of another organisation is answered like one that does not exist.',
      params: keyParameters,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The key', apiKeySchema, exampleKey),
        ...problemAnswers(...NEEDS_KEY, 'unknown-key', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const key = await readApiKey(deps, senderOf(request), fitting(request.params).id)
      return reply.header('cache-control', 'no-store').send(showKey(key, deps.clock()))
    },
  })
}
