import {
  organisationListSchema,
  organisationQuerySchema,
  showOrganisation,
} from '../../../schemas/organisation.ts'
import { listOrganisations } from '../../../useCases/listOrganisations.ts'
import { ORGANISATION_LIST } from '../../accessLists.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer } from '../answers.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleOrganisationList } from './examples.ts'

export function getOrganisations(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/organisations',
    config: { scope: 'admin' },
    schema: {
      operationId: 'listOrganisations',
      tags: ['access'],
      summary: 'List the organisations',
      description: "In the order of their codes, in pages. For the operator's admins.",
      querystring: organisationQuerySchema,
      response: {
        200: jsonAnswer(
          'One page of organisations',
          organisationListSchema,
          exampleOrganisationList,
          LINK_HEADER,
        ),
        ...problemAnswers(...NEEDS_KEY, 'operator-only', 'faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, ORGANISATION_LIST, {})
      const { items, hasAfter } = await listOrganisations(deps, senderOf(request), { limit, after })
      const nextCursor = hasAfter ? writeListCursor(items.at(-1)!, ORGANISATION_LIST, {}) : null
      if (nextCursor !== null) reply.header('link', linkToNext('/v1/organisations', { limit }, nextCursor))
      return reply
        .header('cache-control', 'no-store')
        .send({ items: items.map(showOrganisation), nextCursor })
    },
  })
}
