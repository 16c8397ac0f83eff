import { DomainError } from '../../../core/fault.ts'
import { tariffComparisonRequestSchema, tariffComparisonSchema } from '../../../schemas/tariffComparison.ts'
import { compareTariffs } from '../../../useCases/compareTariffs.ts'
import { jsonAnswer } from '../answers.ts'
import { mayEstimate } from '../authorize.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleComparison } from './examples.ts'

export function postTariffComparison(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/tariff-comparisons',
    schema: {
      operationId: 'compareTariffs',
      tags: ['money and grid'],
      summary: 'What the standby of one household costs under several tariffs',
      description:
        'Takes a household as an estimate does, with a list of tariffs in place of one: codes, or tariffs. Gives the cost ' +
        'a year under each and its difference from the first, both with intervals; the energy is the same for all, so ' +
        'that it does not blur the difference. All in one currency. Nothing is stored.',
      querystring: noQuery,
      body: tariffComparisonRequestSchema,
      response: {
        200: jsonAnswer('The comparison', tariffComparisonSchema, exampleComparison),
        ...problemAnswers(
          ...NEEDS_BODY,
          ...NEEDS_KEY,
          'unknown-revision',
          'unknown-reference-revision',
          'unknown-overlay-revision',
        ),
      },
    },
    onRequest: mayEstimate(anonymousEstimates),
    preValidation: async (request) => {
      const body: unknown = request.body
      if (body === undefined)
        throw new DomainError('malformed-body', 'This request needs a JSON body; none came.')
    },
    handler: async (request, reply) => {
      const { body, query } = request
      reply.header('cache-control', 'no-store')
      const faults = [...queryFaults(query), ...body.faults]
      const comparison = await compareTariffs(deps, senderOf(request), { ...body, faults })
      return { ...comparison, tariffs: [...comparison.tariffs] }
    },
  })
}
