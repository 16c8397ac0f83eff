import { issuedKeySchema, keyRequestSchema, showKey } from '../../../schemas/apiKey.ts'
import { issueKey } from '../../../useCases/issueKey.ts'
import { jsonAnswer } from '../answers.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleIssuedKey } from './examples.ts'

export const LOCATION_HEADER = {
  Location: { type: 'string', description: 'Address of the new key' },
} as const

export function postApiKey(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/api-keys',
    config: { scope: 'admin' },
    schema: {
      operationId: 'issueApiKey',
      tags: ['access'],
      summary: 'Issue an API key',
      description:
        'The answer shows the key this once; the service itself keeps only a digest of it. A publishable key is for a ' +
        'website that everybody can read: it is good for estimates and the quiz alone, and only where the header Origin ' +
        'names one of its origins.',
      querystring: noQuery,
      body: keyRequestSchema,
      response: {
        201: jsonAnswer('The new key', issuedKeySchema, exampleIssuedKey, LOCATION_HEADER),
        ...problemAnswers(...NEEDS_KEY, ...NEEDS_BODY),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      const submitted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const { key, text } = await issueKey(deps, senderOf(request), submitted)
      return reply
        .code(201)
        .headers({ location: `/v1/api-keys/${key.id}`, 'cache-control': 'no-store' })
        .send({ ...showKey(key, deps.clock()), key: text })
    },
  })
}
