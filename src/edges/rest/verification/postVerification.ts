import { verificationRequestSchema } from '../../../schemas/verification.ts'
import { verificationSchema } from '../../../schemas/verificationAnswer.ts'
import { verifySavings } from '../../../useCases/verifySavings.ts'
import { jsonAnswer } from '../answers.ts'
import { mayEstimate } from '../authorize.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import { senderOf } from '../senderOf.ts'
import type { RestContext } from '../restContext.ts'
import { noQuery, queryFaults, type RestApp } from '../submitted.ts'
import { exampleVerification } from './exampleVerification.ts'

export function postVerification(app: RestApp, { deps, anonymousEstimates }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/verifications',
    schema: {
      operationId: 'verifySavings',
      tags: ['verification'],
      summary: 'What was saved between two visits, and whether it is larger than noise',
      description:
        'Takes two visits to one household, each with its devices and meters as an estimate takes them; price, grid, ' +
        'voltage and weeks are stated once for both. Gives, per device and in total, what changed, the difference in ' +
        'power, energy, cost and emissions (before less after), and how sure it is. What both visits share counts once: ' +
        "a meter's gain, the typical draw or power factor of an unchanged device, the voltage. A power that was only " +
        'better known the second time is no saving and is in betterKnown. Nothing is stored.',
      querystring: noQuery,
      body: verificationRequestSchema,
      response: {
        200: jsonAnswer('The verification', verificationSchema, exampleVerification),
        ...problemAnswers(
          ...NEEDS_BODY,
          ...NEEDS_KEY,
          'unknown-revision',
          'unknown-overlay-revision',
          'unknown-reference-revision',
        ),
      },
    },
    onRequest: mayEstimate(anonymousEstimates),
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { body, query } = request
      reply.header('cache-control', 'no-store')
      return verifySavings(deps, senderOf(request), {
        ...body,
        faults: [...queryFaults(query), ...body.faults],
      })
    },
  })
}
