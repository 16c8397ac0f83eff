import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { removedCategorySchema, showOverlayRevision } from '../../../schemas/overlay.ts'
import { authorize } from '../../../useCases/authorize.ts'
import { removeFromOverlay } from '../../../useCases/removeFromOverlay.ts'
import { sharedCategory } from '../../../useCases/sharedCategory.ts'
import { jsonAnswer } from '../answers.ts'
import { categoryCodeParameter } from '../catalogue/categoryCode.ts'
import { editOf } from '../catalogue/editOf.ts'
import { basisOfOverlayCategory } from '../ifMatch.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleRemovedCategory } from './examples.ts'
import { EDITS_OVERLAY, withOwnTag } from './sendLaid.ts'

export function deleteOverlayCategory(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'DELETE',
    url: '/v1/overlay/categories/:code',
    config: { scope: 'catalogue:edit', conditions: ['If-Match'] },
    schema: {
      operationId: 'removeOverlayCategory',
      tags: ['own figures'],
      summary: "Take one of your organisation's own categories away: the shared figure is back",
      description:
        'As one new overlay revision. Nothing is lost: estimates that name an older overlay revision are still worked out ' +
        'with it. A category under a code of your own is gone for later estimates; retired: true keeps it for old ' +
        'inventories instead.',
      params: categoryCodeParameter,
      querystring: reasonQuerySchema,
      response: {
        200: jsonAnswer('What is there now', removedCategorySchema, exampleRemovedCategory),
        ...problemAnswers(...NEEDS_KEY, ...EDITS_OVERLAY, 'unknown-overlay-category'),
      },
    },
    handler: async (request, reply) => {
      const { reason } = editOf({ query: request.query })
      const { code } = fitting(request.params)
      const sender = senderOf(request)
      const { organisation } = authorize(sender, 'catalogue:edit').caller
      const basedOn = basisOfOverlayCategory(request, code, organisation)
      const edit = removeFromOverlay(deps, sender, code, { reason, basedOn })
      const { revision, overlayRevision } = await withOwnTag(request, code, edit)
      reply.header('cache-control', 'no-store')
      return reply.send({
        revision: showOverlayRevision(revision!),
        shared: sharedCategory(deps, code),
        overlayRevision,
      })
    },
  })
}
