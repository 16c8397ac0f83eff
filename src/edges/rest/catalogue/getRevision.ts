import { z } from 'zod'
import {
  changesQuerySchema,
  revisionAnswerSchema,
  revisionNumber,
  showRevision,
  showWholeChange,
} from '../../../schemas/catalogueRevision.ts'
import { countRevisionChanges, readRevision, readRevisionChanges } from '../../../useCases/readRevision.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from '../answers.ts'
import { catalogueTag, sendTagged } from '../conditional.ts'
import { LINK_HEADER } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { changesAfter, nextChanges } from './changePages.ts'
import { exampleRevisionAnswer } from './examples.ts'

export const revisionParameter = z.strictObject({ number: revisionNumber.describe('Number of a revision') })

export function getRevision(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/catalogue/revisions/:number',
    schema: {
      operationId: 'readRevision',
      tags: ['catalogue'],
      summary: 'Read one revision: what its author said of it, and what it changed',
      description:
        'Each category that it changed, before and after and field by field, in the order of the codes and in pages.',
      params: revisionParameter,
      querystring: changesQuerySchema,
      response: {
        200: jsonAnswer('The revision', revisionAnswerSchema, exampleRevisionAnswer, {
          ...CATALOGUE_HEADERS,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers('faulty-cursor', 'unknown-revision', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor } = fitting(request.query)
      const { number } = fitting(request.params)
      const after = changesAfter(cursor, { number })
      const revision = await readRevision(deps, number)
      const page = await readRevisionChanges(deps, number, { after, limit, keep: 'first' })
      const nextCursor = nextChanges(reply, page, `/v1/catalogue/revisions/${number}`, { number }, limit)
      return sendTagged(
        request,
        reply,
        { tag: catalogueTag(number), catalogueRevision: number },
        {
          ...showRevision(revision),
          changeCount: await countRevisionChanges(deps, number),
          changes: page.items.map(showWholeChange),
          nextCursor,
        },
      )
    },
  })
}
