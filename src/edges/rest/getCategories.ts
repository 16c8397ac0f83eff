import { FaultyInput } from '../../core/fault.ts'
import { categoryListSchema, categoryQuerySchema } from '../../schemas/category.ts'
import { exportCategories } from '../../useCases/exportCatalogue.ts'
import { listCategoryPage } from '../../useCases/listCategoryPage.ts'
import { CATALOGUE_HEADERS, OVERLAY_HEADER, jsonAnswer, notModified } from './answers.ts'
import { readCursor, writeCursor } from '../categoryCursor.ts'
import { alsoAsCsv, FORMS, sendCsv, wantsCsv } from './catalogue/forms.ts'
import { catalogueTag, ownFigures, sendTagged } from './conditional.ts'
import { exampleCategoryList } from './examples.ts'
import { LINK_HEADER, linkToNext } from './linkToNext.ts'
import { problemAnswers } from './problem.ts'
import type { RestContext } from './restContext.ts'
import { senderOf } from './senderOf.ts'
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
        'cursor=nextCursor. Pages of one walk all read the revisions of the first, whatever is edited meanwhile. With a key, ' +
        'the own figures of its organisation stand in place of the shared ones, and layer says of each category whose it ' +
        'is; overlayRevision=0 asks for the shared catalogue alone. ' +
        'With Accept: text/csv the answer is everything that the filter lets through, as one file, without limit and cursor.',
      querystring: categoryQuerySchema,
      response: {
        200: ANSWER,
        304: notModified,
        ...problemAnswers('faulty-cursor', 'unknown-revision', 'unknown-overlay-revision'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor: text, ...filter } = fitting(request.query)
      const sender = senderOf(request)
      if (wantsCsv(request)) {
        refusePaging(request.query.raw)
        return sendCsv(request, reply, await exportCategories(deps, sender, filter))
      }
      const organisation = request.caller?.organisation ?? null
      const cursor = text === undefined ? null : readCursor(text, filter, { ...filter, organisation })
      const asked = cursor
        ? { catalogueRevision: cursor.revision, overlayRevision: cursor.overlay }
        : { catalogueRevision: filter.catalogueRevision, overlayRevision: filter.overlayRevision }
      const page = await listCategoryPage(
        deps,
        sender,
        { ...filter, ...asked },
        { limit, after: cursor?.after },
      )
      const { items, next, catalogueRevision, overlayRevision } = page
      const read = { catalogueRevision, overlayRevision }
      const nextCursor = next === null ? null : writeCursor(next, { ...read, organisation }, filter)
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/categories', { ...filter, limit }, nextCursor))
      const tag = catalogueTag(catalogueRevision, 'json', ownFigures(request, overlayRevision))
      return sendTagged(request, reply, { tag, ...read }, { items, nextCursor, ...read })
    },
  })
}

const ANSWER = alsoAsCsv(
  jsonAnswer('One page of categories, or as CSV all of them', categoryListSchema, exampleCategoryList, {
    ...CATALOGUE_HEADERS,
    ...OVERLAY_HEADER,
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
