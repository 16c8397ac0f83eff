import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { retireCategory } from '../../../useCases/retireCategory.ts'
import { basisOfCategory } from '../ifMatch.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { categoryCodeParameter, EDITS_CATEGORY } from './categoryCode.ts'
import { editOf } from './editOf.ts'
import { editedAnswer, sendEdited, withCurrentTag } from './sendEdited.ts'

export function deleteCategory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'DELETE',
    url: '/v1/categories/:code',
    config: { scope: 'catalogue:edit', conditions: ['If-Match'] },
    schema: {
      operationId: 'retireCategory',
      tags: ['catalogue'],
      summary: 'Retire a category',
      description:
        'It goes out of lists and suggestions, as one new revision, and nothing of it is lost: old inventories are still ' +
        'estimated with it, and POST /v1/categories/{code}/restore brings it back.',
      params: categoryCodeParameter,
      querystring: reasonQuerySchema,
      response: {
        200: editedAnswer('The category, retired'),
        ...problemAnswers(...NEEDS_OPERATOR_KEY, ...EDITS_CATEGORY),
      },
    },
    handler: async (request, reply) => {
      const { reason } = editOf({ query: request.query })
      const { code } = fitting(request.params)
      const basedOn = basisOfCategory(request, code)
      return sendEdited(
        reply,
        await withCurrentTag(retireCategory(deps, senderOf(request), code, { reason, basedOn })),
      )
    },
  })
}
