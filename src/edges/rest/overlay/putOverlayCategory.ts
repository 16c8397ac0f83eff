import { categoryContentSchema, editQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { authorize } from '../../../useCases/authorize.ts'
import { layCategory } from '../../../useCases/layCategory.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { categoryCodeParameter } from '../catalogue/categoryCode.ts'
import { editOf } from '../catalogue/editOf.ts'
import { basisInOverlay } from '../ifMatch.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { EDITS_OVERLAY, LAID_ANSWERS, sendLaid, withOwnTag } from './sendLaid.ts'

export function putOverlayCategory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'PUT',
    url: '/v1/overlay/categories/:code',
    config: { scope: 'catalogue:edit', conditions: ['If-Match', 'If-None-Match'] },
    schema: {
      operationId: 'layCategory',
      tags: ['own figures'],
      summary: 'Lay a category of your own over the shared catalogue, or replace it',
      description:
        'In place of the shared category of the same code, or under a code of your own; for the callers of your organisation ' +
        'alone, and for everybody else nothing changes. With If-None-Match: * where there is none of your own yet, with ' +
        'If-Match where there is. retired: true keeps it out of your lists. A draw figure that would differ from what your ' +
        'callers see now by more than a factor of three, or go, needs confirm=true.',
      params: categoryCodeParameter,
      querystring: editQuerySchema,
      body: categoryContentSchema,
      response: {
        ...LAID_ANSWERS,
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          ...EDITS_OVERLAY,
          'already-there',
          'large-change',
          'overlay-full',
        ),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const options = editOf(request)
      const { code } = fitting(request.params)
      const sender = senderOf(request)
      const { organisation } = authorize(sender, 'catalogue:edit').caller
      const basedOn = basisInOverlay(request, code, organisation)
      const edit = layCategory(deps, sender, code, request.body, { ...options, basedOn })
      return sendLaid(reply, organisation, await withOwnTag(request, code, edit))
    },
  })
}
