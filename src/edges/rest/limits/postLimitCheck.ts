import { limitAnswerSchema, limitQuestionSchema } from '../../../schemas/limitCheck.ts'
import { checkAgainstLimit } from '../../../useCases/checkAgainstLimit.ts'
import { jsonAnswer } from '../answers.ts'
import { mayEstimate } from '../authorize.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleLimitCheck } from './examples.ts'

export function postLimitCheck(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/limits/check',
    schema: {
      operationId: 'checkAgainstLimit',
      tags: ['limits and cautions'],
      summary: 'Hold a reading against the published limit of its mode and year',
      description:
        'below, above, or cannot-be-told, with the reason: the interval of the reading is held against the limit, and what ' +
        'is above it against the verification tolerance, too. Where several limits may apply, all are compared. A household ' +
        'reading is no compliance test; every answer says so. Nothing is stored.',
      querystring: noQuery,
      body: limitQuestionSchema,
      response: {
        200: jsonAnswer('The comparison', limitAnswerSchema, exampleLimitCheck),
        ...problemAnswers(...NEEDS_BODY, ...NEEDS_KEY, 'unknown-revision', 'unknown-overlay-revision'),
      },
    },
    onRequest: mayEstimate(anonymousEstimates),
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      reply.header('cache-control', 'no-store')
      return checkAgainstLimit(deps, senderOf(request), {
        ...body,
        faults: [...queryFaults(query), ...body.faults],
      })
    },
  })
}
