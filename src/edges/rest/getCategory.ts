import { z } from 'zod'
import { categoryAnswerSchema, categoryQuerySchema } from '../../schemas/category.ts'
import { readCategory } from '../../useCases/readCategory.ts'
import { CATEGORY_HEADERS, jsonAnswer, notModified } from './answers.ts'
import { categoryTag, sendTagged } from './conditional.ts'
import { exampleCategory } from './examples.ts'
import { problemAnswers, unknownPath } from './problem.ts'
import type { RestContext } from './restContext.ts'
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
        'An unknown name is answered with the nearest three.',
      params,
      querystring: categoryQuerySchema.pick({ catalogueRevision: true }),
      response: {
        200: jsonAnswer('The category', categoryAnswerSchema, exampleCategory, {
          ...CATEGORY_HEADERS,
          'Content-Location': { type: 'string', description: 'Address of the category under its code' },
        }),
        304: notModified,
        ...problemAnswers('unknown-category', 'unknown-revision', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      const { catalogueRevision: asked } = fitting(request.query)
      const { code } = fitting(request.params)
      if (code === '') throw unknownPath()
      const { category, catalogueRevision, changedIn } = await readCategory(deps, code, asked)
      reply.header('content-location', `/v1/categories/${category.code}`)
      const tag = categoryTag(category.code, changedIn)
      return sendTagged(request, reply, { tag, catalogueRevision }, category)
    },
  })
}
