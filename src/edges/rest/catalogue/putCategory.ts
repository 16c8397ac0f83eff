import { categoryContentSchema, editQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { createCategory } from '../../../useCases/createCategory.ts'
import { replaceCategory } from '../../../useCases/replaceCategory.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { asksForNothingThere, basisOfCategory } from '../ifMatch.ts'
import { NEEDS_BODY, NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { categoryCodeParameter, EDITS_CATEGORY } from './categoryCode.ts'
import { editOf } from './editOf.ts'
import { createdAnswer, editedAnswer, sendEdited, withCurrentTag } from './sendEdited.ts'

export function putCategory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'PUT',
    url: '/v1/categories/:code',
    config: { scope: 'catalogue:edit', conditions: ['If-Match', 'If-None-Match'] },
    schema: {
      operationId: 'replaceCategory',
      tags: ['catalogue'],
      summary: 'Replace a category as a whole, or make it where there is none',
      description:
        'With If-Match, the ETag of the category as it was read, as one new revision; content that is the same makes ' +
        'none. With If-None-Match: * only where there is no such category yet. A draw figure that would change by more ' +
        'than a factor of three, or go, needs confirm=true.',
      params: categoryCodeParameter,
      querystring: editQuerySchema,
      body: categoryContentSchema,
      response: {
        200: editedAnswer('The category as it is now'),
        201: createdAnswer,
        ...problemAnswers(
          ...NEEDS_OPERATOR_KEY,
          ...NEEDS_BODY,
          ...EDITS_CATEGORY,
          'already-there',
          'large-change',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const options = editOf(request)
      const { code } = fitting(request.params)
      if (asksForNothingThere(request)) {
        const made = await createCategory(deps, senderOf(request), request.body, { ...options, code })
        return sendEdited(reply, made, 201)
      }
      const basedOn = basisOfCategory(request, code)
      const sender = senderOf(request)
      return sendEdited(
        reply,
        await withCurrentTag(replaceCategory(deps, sender, code, request.body, { ...options, basedOn })),
      )
    },
  })
}
