import {
  revisionListQuerySchema,
  revisionListSchema,
  showRevision,
} from '../../../schemas/catalogueRevision.ts'
import { listRevisions } from '../../../useCases/listRevisions.ts'
import { REVISION_LIST } from '../../catalogueLists.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from '../answers.ts'
import { catalogueTag, sendTagged } from '../conditional.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleRevisionList } from './examples.ts'

export function getRevisions(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/catalogue/revisions',
    schema: {
      operationId: 'listRevisions',
      tags: ['catalogue'],
      summary: 'List the revisions of the catalogue: who edited it, when and why',
      description: 'Newest first, in pages. Each edit made one, and none is ever changed or removed.',
      querystring: revisionListQuerySchema,
      response: {
        200: jsonAnswer('One page of revisions', revisionListSchema, exampleRevisionList, {
          ...CATALOGUE_HEADERS,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers('faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, REVISION_LIST, {})
      const { items, hasAfter, total } = await listRevisions(deps, { after, limit, keep: 'first' })
      const nextCursor = hasAfter ? writeListCursor(items.at(-1)!, REVISION_LIST, {}) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/catalogue/revisions', { limit }, nextCursor))
      return sendTagged(
        request,
        reply,
        { tag: catalogueTag(total), catalogueRevision: total },
        { items: items.map(showRevision), nextCursor, catalogueRevision: total },
      )
    },
  })
}
