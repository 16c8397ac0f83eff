import { editQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { placeOf, proposalParameters } from '../../../schemas/proposal.ts'
import { acceptProposal } from '../../../useCases/acceptProposal.ts'
import { editOf } from '../catalogue/editOf.ts'
import { editedAnswer, sendEdited } from '../catalogue/sendEdited.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { ANSWERS_PROPOSAL, basedOnProposal, withCurrentProposal } from './tagOfProposal.ts'

export function postAcceptance(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/catalogue/proposals/:category/:mode/:years/acceptance',
    config: { scope: 'catalogue:edit', conditions: ['If-Match'] },
    schema: {
      operationId: 'acceptProposal',
      tags: ['catalogue'],
      summary: 'Accept a proposal: its figures become the typical draw',
      description:
        'As figures of a programme with their number of readings, in one new revision. With If-Match, the ETag of the proposal ' +
        'as it was read. A figure that would change by more than a factor of three needs confirm=true.',
      params: proposalParameters,
      querystring: editQuerySchema,
      response: {
        200: editedAnswer('The category with the accepted figures'),
        ...problemAnswers(...NEEDS_OPERATOR_KEY, ...ANSWERS_PROPOSAL, 'faulty-input', 'large-change'),
      },
    },
    handler: async (request, reply) => {
      const options = editOf({ query: request.query })
      const place = placeOf(fitting(request.params))
      const basedOn = basedOnProposal(request, place)
      const accepted = acceptProposal(deps, senderOf(request), place, { ...options, basedOn })
      return sendEdited(reply, await withCurrentProposal(accepted))
    },
  })
}
