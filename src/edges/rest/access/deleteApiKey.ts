import { apiKeySchema, showKey } from '../../../schemas/apiKey.ts'
import { revokeKey } from '../../../useCases/revokeKey.ts'
import { jsonAnswer } from '../answers.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleKey } from './examples.ts'
import { keyParameters } from './keyParameters.ts'

export function deleteApiKey(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'DELETE',
    url: '/v1/api-keys/:id',
    config: { scope: 'admin' },
    schema: {
      operationId: 'revokeApiKey',
      tags: ['access'],
      summary: 'Revoke an API key, for good',
      description:
        'Acts at once; where several processes serve, within a second in all of them. The key stays in the list. ' +
        'Revoking it again changes nothing.',
      params: keyParameters,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The key, revoked', apiKeySchema, {
          ...exampleKey,
          state: 'revoked',
          revokedAt: '2026-03-01T08:30:00.000Z',
        }),
        ...problemAnswers(...NEEDS_KEY, 'unknown-key', 'bootstrap-key', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const key = await revokeKey(deps, senderOf(request), fitting(request.params).id)
      return reply.header('cache-control', 'no-store').send(showKey(key, deps.clock()))
    },
  })
}
