import { categoryListSchema } from '../../../schemas/category.ts'
import { revisionListQuerySchema } from '../../../schemas/catalogueRevision.ts'
import { catalogueOf } from '../../../useCases/catalogueOf.ts'
import { categoryPage } from '../../../useCases/listCategoryPage.ts'
import { readCursor, writeCursor } from '../../categoryCursor.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from '../answers.ts'
import { catalogueTag, sendTagged } from '../conditional.ts'
import { exampleCategoryList } from '../examples.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { revisionParameter } from './getRevision.ts'

const EVERYTHING = { includeRetired: true }
/** History is everybody's: nobody's own figures are in it. */
const SHARED = { overlayRevision: 0, organisation: null }

export function getRevisionCategories(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/catalogue/revisions/:number/categories',
    schema: {
      operationId: 'listRevisionCategories',
      tags: ['catalogue'],
      summary: 'Read the whole catalogue as it was at a revision',
      description:
        'Every category, retired ones too, in the order of the codes and in pages. GET /v1/catalogue/export gives the same ' +
        'at once; GET /v1/categories?catalogueRevision=… filters it.',
      params: revisionParameter,
      querystring: revisionListQuerySchema,
      response: {
        200: jsonAnswer('One page of categories', categoryListSchema, exampleCategoryList, {
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
      const after =
        cursor === undefined
          ? undefined
          : readCursor(cursor, EVERYTHING, { catalogueRevision: number, ...SHARED }).after
      const catalogue = await catalogueOf(deps, number)
      const { items, next } = categoryPage(catalogue, EVERYTHING, { limit, after })
      const nextCursor =
        next === null ? null : writeCursor(next, { catalogueRevision: number, ...SHARED }, EVERYTHING)
      if (nextCursor !== null)
        reply.header(
          'link',
          linkToNext(`/v1/catalogue/revisions/${number}/categories`, { limit }, nextCursor),
        )
      return sendTagged(
        request,
        reply,
        { tag: catalogueTag(number), catalogueRevision: number },
        { items, nextCursor, catalogueRevision: number, overlayRevision: SHARED.overlayRevision },
      )
    },
  })
}
