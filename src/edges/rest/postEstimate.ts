import { DomainError } from '../../core/fault.ts'
import { estimateSchema } from '../../schemas/estimate.ts'
import { estimateRequestSchema } from '../../schemas/estimateRequest.ts'
import { estimateHousehold } from '../../useCases/estimateHousehold.ts'
import { jsonAnswer } from './answers.ts'
import { mayEstimate } from './authorize.ts'
import { exampleEstimate } from './examples.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from './problem.ts'
import type { RestContext } from './restContext.ts'
import { senderOf } from './senderOf.ts'
import { noQuery, queryFaults, type RestApp } from './submitted.ts'

export function postEstimate(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/estimates',
    config: { publishable: true },
    schema: {
      operationId: 'estimateHousehold',
      tags: ['estimates'],
      summary: 'Estimate what the devices of a household draw while nobody uses them',
      description:
        'Per device and in total: average power, energy, money and emissions a year, each as the mean and a coverage ' +
        'interval, with a flag that tells measured from assumed. Only devices[].category is required (a code, a name or ' +
        'an alias); the answer repeats what was used in place of what was left out. Nothing is stored. The same request ' +
        'against the same catalogue revision gives the same bytes. `method: "monte-carlo"` draws the sums from `seed` in place of ' +
        'convolving them; `used.methodVersion` then names draws and seed. `expectedWidths: true` adds how wide the interval of the ' +
        'total energy would be after the best one, two and five readings with a plug-in wattmeter.',
      querystring: noQuery,
      body: estimateRequestSchema,
      response: {
        200: jsonAnswer('The estimate', estimateSchema, exampleEstimate),
        ...problemAnswers(
          ...NEEDS_BODY,
          ...NEEDS_KEY,
          'foreign-origin',
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
      return estimateHousehold(deps, senderOf(request), {
        ...body,
        faults: [...queryFaults(query), ...body.faults],
      })
    },
  })
}
