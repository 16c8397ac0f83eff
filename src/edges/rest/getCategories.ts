import { FaultyInput } from '../../core/fault.ts'
import { categoryListSchema, categoryQuerySchema } from '../../schemas/category.ts'
import { exportCatalogue } from '../../useCases/exportCatalogue.ts'
import { listCategoryPage } from '../../useCases/listCategoryPage.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from './answers.ts'
import { readCursor, writeCursor } from '../categoryCursor.ts'
import { alsoAsCsv, FORMS, sendCsv, wantsCsv } from './catalogue/forms.ts'
import { catalogueTag, sendTagged } from './conditional.ts'
import { exampleCategoryList } from './examples.ts'
import { LINK_HEADER, linkToNext } from './linkToNext.ts'
import { problemAnswers } from './problem.ts'
import type { RestContext } from './restContext.ts'
import { fitting, type RestApp } from './submitted.ts'

export function getCategories(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/categories',
    config: { produces: FORMS },
    schema: {
      operationId: 'listCategories',
      tags: ['catalogue'],
      summary: 'List the kinds of devices that the catalogue knows',
      description:
        'In the order of their codes, in pages. The next page is at Link rel="next", and takes the same filter with ' +
        'cursor=nextCursor. Pages of one walk all read the catalogue revision of the first, whatever is edited meanwhile. ' +
        'With Accept: text/csv the answer is everything that the filter lets through, as one file, without limit and cursor.',
      querystring: categoryQuerySchema,
      response: {
        200: ANSWER,
        304: notModified,
        ...problemAnswers('faulty-cursor', 'unknown-revision'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor: text, ...filter } = fitting(request.query)
      if (wantsCsv(request)) {
        refusePaging(request.query.raw)
        const whole = await exportCatalogue(deps, filter)
        return sendCsv(request, reply, whole.catalogueRevision, whole.categories)
      }
      const cursor = text === undefined ? null : readCursor(text, filter, filter.catalogueRevision)
      const catalogueRevision = cursor?.revision ?? filter.catalogueRevision
      const page = await listCategoryPage(
        deps,
        { ...filter, catalogueRevision },
        { limit, after: cursor?.after },
      )
      const nextCursor = page.next === null ? null : writeCursor(page.next, page.catalogueRevision, filter)
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/categories', { ...filter, limit }, nextCursor))
      const tag = catalogueTag(page.catalogueRevision)
      return sendTagged(
        request,
        reply,
        { tag, catalogueRevision: page.catalogueRevision },
        { items: page.items, nextCursor, catalogueRevision: page.catalogueRevision },
      )
    },
  })
}

const ANSWER = alsoAsCsv(
  jsonAnswer('One page of categories, or as CSV all of them', categoryListSchema, exampleCategoryList, {
    ...CATALOGUE_HEADERS,
    ...LINK_HEADER,
  }),
  exampleCategoryList.items,
)

/** A file that were cut off after a page, or began in the middle, would look like the whole. */
function refusePaging(query: unknown): void {
  const faults = ['limit', 'cursor']
    .filter((name) => Object.hasOwn(Object(query) as object, name))
    .map((name) => ({
      in: 'query' as const,
      pointer: `/${name}`,
      code: 'not-with-csv',
      message: `A CSV answer is always the whole list; leave ${name} out, or ask for application/json.`,
    }))
  if (faults.length > 0) throw new FaultyInput(faults)
}
