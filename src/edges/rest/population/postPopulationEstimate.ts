import { populationEstimateSchema, populationRequestSchema } from '../../../schemas/population.ts'
import { estimatePopulation } from '../../../useCases/estimatePopulation.ts'
import { jsonAnswer } from '../answers.ts'
import { mayEstimate } from '../authorize.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleStockEstimate } from './examples.ts'

export function postPopulationEstimate(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/population-estimates',
    schema: {
      operationId: 'estimatePopulation',
      tags: ['populations'],
      summary: 'Estimate what many homes draw, from a survey or from ownership',
      description:
        'survey: surveyed homes, or their summary by stratum, drawn singly or in whole clusters; total, mean, domains and ' +
        'ratio to a known total, with finite population correction, t-intervals and design effect. stock: kinds of device ' +
        'by ownership, count, draw and hours, for a ladder from one home to a country; the spread between homes shrinks ' +
        'with their number, and what is not known of ownership and mean draw does not. Nothing is stored.',
      querystring: noQuery,
      body: populationRequestSchema,
      response: {
        200: jsonAnswer('The estimate', populationEstimateSchema, exampleStockEstimate),
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
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      reply.header('cache-control', 'no-store')
      return estimatePopulation(deps, senderOf(request), {
        ...body,
        faults: [...queryFaults(query), ...body.faults],
      })
    },
  })
}
