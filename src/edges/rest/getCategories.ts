import { categoryListSchema, categoryQuerySchema } from '../../schemas/category.ts'
import { listCategoryPage } from '../../useCases/listCategoryPage.ts'
import { CATALOGUE_HEADERS, jsonAnswer, notModified } from './answers.ts'
import { readCursor, writeCursor } from '../categoryCursor.ts'
import { sendTagged } from './conditional.ts'
import { exampleCategoryList } from './examples.ts'
import { problemAnswers } from './problem.ts'
import type { RestContext } from './restContext.ts'
import { fitting, type RestApp } from './submitted.ts'

export function getCategories(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/categories',
    schema: {
      operationId: 'listCategories',
      tags: ['catalogue'],
      summary: 'List the kinds of devices that the catalogue knows',
      description:
        'In the order of their codes, in pages. The next page is at Link rel="next", and takes the same filter with ' +
        'cursor=nextCursor. Pages of one walk all read the catalogue revision of the first, whatever is edited meanwhile.',
      querystring: categoryQuerySchema,
      response: {
        200: jsonAnswer('One page of categories', categoryListSchema, exampleCategoryList, {
          ...CATALOGUE_HEADERS,
          Link: {
            type: 'string',
            description: 'Address of the next page, as rel="next"; absent on the last (RFC 8288)',
          },
        }),
        304: notModified,
        ...problemAnswers('faulty-cursor', 'unknown-revision'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor: text, ...filter } = fitting(request.query)
      const cursor = text === undefined ? null : readCursor(text, filter, filter.catalogueRevision)
      const catalogueRevision = cursor?.revision ?? filter.catalogueRevision
      const page = await listCategoryPage(
        deps,
        { ...filter, catalogueRevision },
        { limit, after: cursor?.after },
      )
      const nextCursor = page.next === null ? null : writeCursor(page.next, page.catalogueRevision, filter)
      if (nextCursor !== null) reply.header('link', linkToNext(filter, limit, nextCursor))
      return sendTagged(request, reply, page.catalogueRevision, {
        items: page.items,
        nextCursor,
        catalogueRevision: page.catalogueRevision,
      })
    },
  })
}

type Parameter = string | number | boolean | undefined

function linkToNext(filter: Readonly<Record<string, Parameter>>, limit: number, cursor: string): string {
  const next = new URLSearchParams()
  const parameters: Readonly<Record<string, Parameter>> = { ...filter, limit, cursor }
  for (const [name, value] of Object.entries(parameters))
    if (value !== undefined) next.set(name, String(value))
  return `</v1/categories?${next.toString()}>; rel="next"`
}
