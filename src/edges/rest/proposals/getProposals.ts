import { proposalListQuerySchema, proposalListSchema, showProposal } from '../../../schemas/proposal.ts'
import { listProposals } from '../../../useCases/listProposals.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { PROPOSAL_LIST } from '../../proposalLists.ts'
import { jsonAnswer } from '../answers.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleProposalList } from './examples.ts'

export function getProposals(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/catalogue/proposals',
    config: { scope: 'catalogue:edit' },
    schema: {
      operationId: 'listProposals',
      tags: ['catalogue'],
      summary: 'List what readings say of the catalogue’s typical draws',
      description:
        'From the readings of real power in the inventories of all organisations, once eight devices in eight households were ' +
        'read; none of these is named. In the order of categories, modes and years, in pages. For editors of the organisation ' +
        'that runs the service.',
      querystring: proposalListQuerySchema,
      response: {
        200: jsonAnswer('One page of proposals', proposalListSchema, exampleProposalList, LINK_HEADER),
        ...problemAnswers(...NEEDS_OPERATOR_KEY, 'faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor, ...filter } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, PROPOSAL_LIST, filter)
      const part = await listProposals(deps, senderOf(request), filter, { after, limit, keep: 'first' })
      const nextCursor = part.hasAfter ? writeListCursor(part.items.at(-1)!, PROPOSAL_LIST, filter) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/catalogue/proposals', { ...filter, limit }, nextCursor))
      return reply
        .header('cache-control', 'no-store')
        .send({ items: part.items.map(showProposal), nextCursor })
    },
  })
}
