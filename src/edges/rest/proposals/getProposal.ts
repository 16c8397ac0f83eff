import { placeOf, proposalParameters, proposalSchema, showProposal } from '../../../schemas/proposal.ts'
import { readProposal } from '../../../useCases/readProposal.ts'
import { jsonAnswer, notModified } from '../answers.ts'
import { sendOwn } from '../conditional.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleProposal } from './examples.ts'
import { PROPOSAL_TAG, tagOfProposal } from './tagOfProposal.ts'

export function getProposal(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/catalogue/proposals/:category/:mode/:years',
    config: { scope: 'catalogue:edit' },
    schema: {
      operationId: 'readProposal',
      tags: ['catalogue'],
      summary: 'Read what readings say of one typical draw',
      description: 'Whether it is open or was answered. Its ETag is what an answer to it is based on.',
      params: proposalParameters,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The proposal as it is now', proposalSchema, exampleProposal, PROPOSAL_TAG),
        304: notModified,
        ...problemAnswers(...NEEDS_OPERATOR_KEY, 'unknown-proposal', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const proposal = await readProposal(deps, senderOf(request), placeOf(fitting(request.params)))
      return sendOwn(request, reply, tagOfProposal(proposal), showProposal(proposal))
    },
  })
}
