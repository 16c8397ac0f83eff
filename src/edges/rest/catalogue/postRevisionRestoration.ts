import { editQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { restoredRevisionSchema, showRevision } from '../../../schemas/catalogueRevision.ts'
import { restoreRevision } from '../../../useCases/restoreRevision.ts'
import { CATALOGUE_HEADERS, jsonAnswer } from '../answers.ts'
import { catalogueTag, tagHeaders } from '../conditional.ts'
import { basisOfCatalogue } from '../ifMatch.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { editOf } from './editOf.ts'
import { exampleRestoredRevision } from './examples.ts'
import { revisionParameter } from './getRevision.ts'

const LOCATION = {
  Location: { type: 'string', description: 'Address of the revision that was made' },
} as const

export function postRevisionRestoration(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/catalogue/revisions/:number/restore',
    config: { scope: 'catalogue:edit', conditions: ['If-Match'] },
    schema: {
      operationId: 'restoreRevision',
      tags: ['catalogue'],
      summary: 'Bring the catalogue back to what it was at a revision',
      description:
        'As one new revision: every category is as it was then, and those that there were none of then are retired. With ' +
        'If-Match, the ETag of the newest revision, so that no edit is undone unseen.',
      params: revisionParameter,
      querystring: editQuerySchema,
      response: {
        200: jsonAnswer('The catalogue was as it is wanted already', restoredRevisionSchema, {
          ...exampleRestoredRevision,
          revision: null,
          counts: { added: 0, changed: 0, retired: 0, restored: 0 },
        }),
        201: jsonAnswer('It was brought back', restoredRevisionSchema, exampleRestoredRevision, {
          ...CATALOGUE_HEADERS,
          ...LOCATION,
        }),
        ...problemAnswers(
          ...NEEDS_OPERATOR_KEY,
          'unknown-revision',
          'malformed-condition',
          'precondition-required',
          'stale-revision',
          'large-change',
          'address-too-long',
        ),
      },
    },
    handler: async (request, reply) => {
      const options = editOf({ query: request.query })
      const { number } = fitting(request.params)
      const basedOn = basisOfCatalogue(request)
      const restored = await restoreRevision(deps, senderOf(request), number, { ...options, basedOn })
      const { revision, catalogueRevision } = restored
      reply.headers({
        ...tagHeaders({ tag: catalogueTag(catalogueRevision), catalogueRevision }),
        'cache-control': 'no-store',
      })
      if (revision) reply.code(201).header('location', `/v1/catalogue/revisions/${revision.number}`)
      return reply.send({ ...restored, revision: revision && showRevision(revision) })
    },
  })
}
