import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { restoreCategory } from '../../../useCases/restoreCategory.ts'
import { basisOfCategory } from '../ifMatch.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { categoryCodeParameter, EDITS_CATEGORY } from './categoryCode.ts'
import { editOf } from './editOf.ts'
import { editedAnswer, sendEdited, withCurrentTag } from './sendEdited.ts'

export function postCategoryRestoration(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'POST',
    url: '/v1/categories/:code/restore',
    config: { scope: 'catalogue:edit', conditions: ['If-Match'] },
    schema: {
      operationId: 'restoreCategory',
      tags: ['catalogue'],
      summary: 'Bring a retired category back',
      description:
        'As it is, as one new revision. Refused where another category has taken one of its names.',
      params: categoryCodeParameter,
      querystring: reasonQuerySchema,
      response: {
        200: editedAnswer('The category, in use again'),
        ...problemAnswers(...NEEDS_OPERATOR_KEY, ...EDITS_CATEGORY, 'faulty-input'),
      },
    },
    handler: async (request, reply) => {
      const { reason } = editOf({ query: request.query })
      const { code } = fitting(request.params)
      const basedOn = basisOfCategory(request, code)
      return sendEdited(
        reply,
        await withCurrentTag(restoreCategory(deps, senderOf(request), code, { reason, basedOn })),
      )
    },
  })
}
