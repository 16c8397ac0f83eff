import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { placeOf, proposalParameters, proposalSchema, showProposal } from '../../../schemas/proposal.ts'
import { rejectProposal } from '../../../useCases/rejectProposal.ts'
import { jsonAnswer } from '../answers.ts'
import { editOf } from '../catalogue/editOf.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleRejectedProposal } from './examples.ts'
import {
  ANSWERS_PROPOSAL,
  basedOnProposal,
  PROPOSAL_TAG,
  tagOfProposal,
  withCurrentProposal,
} from './tagOfProposal.ts'

export function postRejection(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/catalogue/proposals/:category/:mode/:years/rejection',
    config: { scope: 'catalogue:edit', conditions: ['If-Match'] },
    schema: {
      operationId: 'rejectProposal',
      tags: ['catalogue'],
      summary: 'Reject a proposal, with a reason',
      description:
        'The reason is kept with its author and time. The proposal is open again once there are a quarter more readings, and at ' +
        'least eight more. With If-Match, the ETag of the proposal as it was read.',
      params: proposalParameters,
      querystring: reasonQuerySchema,
      response: {
        200: jsonAnswer('The rejected proposal', proposalSchema, exampleRejectedProposal, PROPOSAL_TAG),
        ...problemAnswers(...NEEDS_OPERATOR_KEY, ...ANSWERS_PROPOSAL, 'proposal-not-open'),
      },
    },
    handler: async (request, reply) => {
      const { reason } = editOf({ query: request.query })
      const place = placeOf(fitting(request.params))
      const basedOn = basedOnProposal(request, place)
      const rejecting = rejectProposal(deps, senderOf(request), place, { reason, basedOn })
      const rejected = await withCurrentProposal(rejecting)
      return reply
        .headers({ etag: tagOfProposal(rejected), 'cache-control': 'no-store' })
        .send(showProposal(rejected))
    },
  })
}
