import {
  categoryPatchSchema,
  editQuerySchema,
  patchedCategorySchema,
} from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { authorize } from '../../../useCases/authorize.ts'
import { patchOverlay } from '../../../useCases/patchOverlay.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { categoryCodeParameter } from '../catalogue/categoryCode.ts'
import { editOf } from '../catalogue/editOf.ts'
import { basisInOverlay } from '../ifMatch.ts'
import { MERGE_PATCH, readingMergePatches } from '../mergePatches.ts'
import { NEEDS_BODY, NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { EDITS_OVERLAY, LAID_ANSWERS, sendLaid, withOwnTag } from './sendLaid.ts'

export const patchOverlayCategory = readingMergePatches((app: RestApp, { deps }: RestContext): void => {
  app.route({
    method: 'PATCH',
    url: '/v1/overlay/categories/:code',
    config: { scope: 'catalogue:edit', conditions: ['If-Match', 'If-None-Match'], reads: [MERGE_PATCH] },
    schema: {
      operationId: 'patchOverlayCategory',
      tags: ['own figures'],
      summary: 'Change some fields of a category for your own callers alone',
      description:
        'By a merge patch (RFC 7396). With If-Match of your own category; with If-None-Match: * where there is none yet: then ' +
        'the shared category with these changes becomes your own. Lists are replaced as a whole. Pointers of faults speak of ' +
        'the category as it would become.',
      consumes: [MERGE_PATCH],
      params: categoryCodeParameter,
      querystring: editQuerySchema,
      body: categoryPatchSchema,
      response: {
        ...LAID_ANSWERS,
        ...problemAnswers(
          ...NEEDS_KEY,
          ...NEEDS_BODY,
          ...EDITS_OVERLAY,
          'unknown-category',
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
      const readContent = (merged: unknown) => readShape(patchedCategorySchema, merged)
      // The patch as it came: a schema's copy of it would lose what null and __proto__ mean here.
      const { raw } = request.body
      const edit = patchOverlay(deps, sender, code, raw, readContent, { ...options, basedOn })
      return sendLaid(reply, organisation, await withOwnTag(request, code, edit))
    },
  })
})
