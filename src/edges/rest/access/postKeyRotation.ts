import { issuedKeySchema, rotationSchema, showKey } from '../../../schemas/apiKey.ts'
import { rotateKey } from '../../../useCases/rotateKey.ts'
import { jsonAnswer } from '../answers.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleIssuedKey } from './examples.ts'
import { keyParameters } from './keyParameters.ts'
import { LOCATION_HEADER } from './postApiKey.ts'

export function postKeyRotation(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/api-keys/:id/rotations',
    config: { scope: 'admin' },
    schema: {
      operationId: 'rotateApiKey',
      tags: ['access'],
      summary: 'Issue the successor of an API key',
      description:
        'The successor may do the same, and the answer shows it this once. The key itself stays valid for overlapHours ' +
        'more, a day unless the body says something else, so that what uses it can be changed over without a gap.',
      params: keyParameters,
      querystring: noQuery,
      body: rotationSchema,
      response: {
        201: jsonAnswer(
          'The successor',
          issuedKeySchema,
          { ...exampleIssuedKey, rotatedFrom: 'nbswy3dpeb3w64tm' },
          LOCATION_HEADER,
        ),
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          'unknown-key',
          'key-ended',
          'key-rotated',
          'bootstrap-key',
          'address-too-long',
        ),
      },
    },
    handler: async (request, reply) => {
      const { body, query, params } = request
      const submitted = { ...body, faults: [...queryFaults(query), ...body.faults] }
      const { key, text } = await rotateKey(deps, senderOf(request), fitting(params).id, submitted)
      return reply
        .code(201)
        .headers({ location: `/v1/api-keys/${key.id}`, 'cache-control': 'no-store' })
        .send({ ...showKey(key, deps.clock()), key: text })
    },
    preValidation: async (request) => {
      const body: unknown = request.body
      // Everything in it has a default.
      if (body === undefined) request.body = {} as typeof request.body
    },
  })
}
