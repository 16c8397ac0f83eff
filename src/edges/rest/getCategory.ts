import { z } from 'zod'
import { categoryAnswerSchema, categoryQuerySchema } from '../../schemas/category.ts'
import { readCategory } from '../../useCases/readCategory.ts'
import { CATEGORY_HEADERS, OVERLAY_HEADER, jsonAnswer, notModified } from './answers.ts'
import { categoryTag, ownCategoryTag, ownFigures, sendTagged } from './conditional.ts'
import { exampleCategory } from './examples.ts'
import { problemAnswers, unknownPath } from './problem.ts'
import type { RestContext } from './restContext.ts'
import { senderOf } from './senderOf.ts'
import { fitting, type RestApp } from './submitted.ts'

const params = z.strictObject({ code: z.string().describe('Code, name or alias, such as set-top-box') })

export function getCategory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/categories/:code',
    schema: {
      operationId: 'readCategory',
      tags: ['catalogue'],
      summary: 'Read one category by its code, name or alias',
      description:
        'Case, accents and punctuation of a name do not matter. Content-Location is the address under the code. ' +
        'An unknown name is answered with the nearest three. With a key, an own category of its organisation is answered ' +
        'in place of the shared one, and layer says so; overlayRevision=0 asks for the shared one.',
      params,
      querystring: categoryQuerySchema.pick({ catalogueRevision: true, overlayRevision: true }),
      response: {
        200: jsonAnswer('The category', categoryAnswerSchema, exampleCategory, {
          ...CATEGORY_HEADERS,
          ...OVERLAY_HEADER,
          'Content-Location': { type: 'string', description: 'Address of the category under its code' },
        }),
        304: notModified,
        ...problemAnswers(
          'unknown-category',
          'unknown-revision',
          'unknown-overlay-revision',
          'address-too-long',
        ),
      },
    },
    handler: async (request, reply) => {
      const asked = fitting(request.query)
      const { code } = fitting(request.params)
      if (code === '') throw unknownPath()
      const found = await readCategory(deps, senderOf(request), code, asked)
      const { category, changedIn, catalogueRevision, overlayRevision } = found
      reply.header('content-location', `/v1/categories/${category.code}`)
      const own = category.layer === 'organisation' ? ownFigures(request, overlayRevision) : null
      const tag = own
        ? ownCategoryTag(category.code, catalogueRevision, own)
        : categoryTag(category.code, changedIn)
      return sendTagged(request, reply, { tag, catalogueRevision, overlayRevision }, category)
    },
  })
}
