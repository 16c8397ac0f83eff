import { revisionListQuerySchema, showRevision } from '../../../schemas/catalogueRevision.ts'
import { referenceRevisionListSchema } from '../../../schemas/referenceRevision.ts'
import { listReferenceRevisions } from '../../../useCases/listRevisions.ts'
import { REFERENCE_REVISION_LIST } from '../../referenceLists.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer, notModified, REFERENCE_HEADERS } from '../answers.ts'
import { referenceDataTag, sendTagged } from '../conditional.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleReferenceRevisionList } from './examples.ts'

export function getReferenceRevisions(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/reference-revisions',
    schema: {
      operationId: 'listReferenceRevisions',
      tags: ['money and grid'],
      summary: 'List the revisions of tariffs and emission factors: who edited them, when and why',
      description: 'Newest first, in pages. Each edit made one, and none is ever changed or removed.',
      querystring: revisionListQuerySchema,
      response: {
        200: jsonAnswer('One page of revisions', referenceRevisionListSchema, exampleReferenceRevisionList, {
          ...REFERENCE_HEADERS,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers('faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, REFERENCE_REVISION_LIST, {})
      const { items, hasAfter, total } = await listReferenceRevisions(deps, { after, limit, keep: 'first' })
      const nextCursor = hasAfter ? writeListCursor(items.at(-1)!, REFERENCE_REVISION_LIST, {}) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/reference-revisions', { limit }, nextCursor))
      const tagged = { tag: referenceDataTag(total), referenceRevision: total }
      const body = { items: items.map(showRevision), nextCursor, referenceRevision: total }
      return sendTagged(request, reply, tagged, body)
    },
  })
}
