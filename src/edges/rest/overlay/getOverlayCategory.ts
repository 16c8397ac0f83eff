import { categoryAnswerSchema } from '../../../schemas/category.ts'
import { readOverlayCategory } from '../../../useCases/readOverlay.ts'
import { jsonAnswer, notModified } from '../answers.ts'
import { categoryCodeParameter } from '../catalogue/categoryCode.ts'
import { overlayCategoryTag, sendOwn } from '../conditional.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleOwnCategory } from './examples.ts'
import { OWN_TAG } from './ownTag.ts'

export function getOverlayCategory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/overlay/categories/:code',
    config: { scope: 'catalogue:edit' },
    schema: {
      operationId: 'readOverlayCategory',
      tags: ['own figures'],
      summary: "Read one of your organisation's own categories",
      description: 'As it was laid over the shared catalogue. Its ETag is what an edit of it is based on.',
      params: categoryCodeParameter,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The own category', categoryAnswerSchema, exampleOwnCategory, OWN_TAG),
        304: notModified,
        ...problemAnswers(...NEEDS_KEY, 'unknown-overlay-category', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { code } = fitting(request.params)
      const found = await readOverlayCategory(deps, senderOf(request), code)
      const { category, organisation, changedIn } = found
      return sendOwn(request, reply, overlayCategoryTag(code, organisation, changedIn), category)
    },
  })
}
