import { z } from 'zod'
import {
  changesQuerySchema,
  comparisonSchema,
  revisionNumber,
  showChange,
} from '../../../schemas/catalogueRevision.ts'
import { compareRevisions } from '../../../useCases/compareRevisions.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from '../answers.ts'
import { comparisonTag, sendTagged } from '../conditional.ts'
import { LINK_HEADER } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { changesAfter, nextChanges } from './changePages.ts'
import { exampleComparison } from './examples.ts'

const params = z.strictObject({
  number: revisionNumber.describe('The revision to compare'),
  other: revisionNumber.describe('The revision to compare it with'),
})

export function getRevisionComparison(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/catalogue/revisions/:number/diff/:other',
    schema: {
      operationId: 'compareRevisions',
      tags: ['catalogue'],
      summary: 'Compare two revisions',
      description:
        'What leads from the first to the second, whichever is older: categories added, changed with every field before ' +
        'and after, retired and restored; in the order of the codes and in pages.',
      params,
      querystring: changesQuerySchema,
      response: {
        200: jsonAnswer('What differs', comparisonSchema, exampleComparison, {
          ...CATALOGUE_HEADERS,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers('faulty-cursor', 'unknown-revision', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor } = fitting(request.query)
      const { number: from, other: to } = fitting(request.params)
      const after = changesAfter(cursor, { from, to })
      const page = await compareRevisions(deps, from, to, { after, limit, keep: 'first' })
      const address = `/v1/catalogue/revisions/${from}/diff/${to}`
      const nextCursor = nextChanges(reply, page, address, { from, to }, limit)
      return sendTagged(
        request,
        reply,
        { tag: comparisonTag(from, to), catalogueRevision: to },
        { from, to, counts: page.counts, changes: page.items.map(showChange), nextCursor },
      )
    },
  })
}
