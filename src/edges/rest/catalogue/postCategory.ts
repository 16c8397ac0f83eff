import { categoryContentSchema, editQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { createCategory } from '../../../useCases/createCategory.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { NEEDS_BODY, NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import type { RestApp } from '../submitted.ts'
import { editOf } from './editOf.ts'
import { createdAnswer, sendEdited } from './sendEdited.ts'

export function postCategory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/categories',
    config: { scope: 'catalogue:edit' },
    schema: {
      operationId: 'createCategory',
      tags: ['catalogue'],
      summary: 'Add a category to the catalogue',
      description:
        'As one new revision. The code must never have been used, and no name may be that of another category. A second ' +
        'attempt is refused with 409 category-exists, so it can safely be sent again.',
      querystring: editQuerySchema.pick({ reason: true }),
      body: categoryContentSchema,
      response: {
        201: createdAnswer,
        ...problemAnswers(...NEEDS_OPERATOR_KEY, ...NEEDS_BODY, 'category-exists'),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const { reason } = editOf(request)
      const options = { reason, confirm: false }
      return sendEdited(reply, await createCategory(deps, senderOf(request), request.body, options), 201)
    },
  })
}
