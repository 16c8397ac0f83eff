import { savingsPlanSchema, savingsRequestSchema } from '../../../schemas/savingsPlan.ts'
import { planSavings } from '../../../useCases/planSavings.ts'
import { jsonAnswer } from '../answers.ts'
import { mayEstimate } from '../authorize.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import { senderOf } from '../senderOf.ts'
import type { RestContext } from '../restContext.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleSavingsPlan } from './examples.ts'

export function postSavingsPlan(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/savings-plans',
    schema: {
      operationId: 'planSavings',
      tags: ['savings'],
      summary: 'Plan what a household can save, and what it must leave powered',
      description:
        'Takes a household as an estimate does, of at most 100 entries, with options of the plan. Gives every measure at ' +
        'every place with energy, money and emissions saved, simple payback, and the probability that it pays back within ' +
        'its life, each as if it were the only one; the best set within the budget, exactly, with its overlaps counted ' +
        'once; what is not offered and why; and the devices that must stay powered. Devices that share an outlet can share ' +
        'a strip: their rated loads, where given, are added up. Nothing is stored. The same request against the same ' +
        'catalogue revision gives the same bytes.',
      querystring: noQuery,
      body: savingsRequestSchema,
      response: {
        200: jsonAnswer('The plan', savingsPlanSchema, exampleSavingsPlan),
        ...problemAnswers(
          ...NEEDS_BODY,
          ...NEEDS_KEY,
          'unknown-revision',
          'unknown-overlay-revision',
          'unknown-reference-revision',
          'plan-too-large',
        ),
      },
    },
    onRequest: mayEstimate(anonymousEstimates),
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      reply.header('cache-control', 'no-store')
      return planSavings(deps, senderOf(request), {
        ...body,
        faults: [...queryFaults(query), ...body.faults],
      })
    },
  })
}
