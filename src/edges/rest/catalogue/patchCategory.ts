import {
  categoryPatchSchema,
  editQuerySchema,
  patchedCategorySchema,
} from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { patchCategory as patch } from '../../../useCases/patchCategory.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { basisOfCategory } from '../ifMatch.ts'
import { MERGE_PATCH, readingMergePatches } from '../mergePatches.ts'
import { NEEDS_BODY, NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { categoryCodeParameter, EDITS_CATEGORY } from './categoryCode.ts'
import { editOf } from './editOf.ts'
import { editedAnswer, sendEdited, withCurrentTag } from './sendEdited.ts'

export const patchCategory = readingMergePatches((app: RestApp, { deps }: RestContext): void => {
  app.route({
    method: 'PATCH',
    url: '/v1/categories/:code',
    config: { scope: 'catalogue:edit', conditions: ['If-Match'], reads: [MERGE_PATCH] },
    schema: {
      operationId: 'patchCategory',
      tags: ['catalogue'],
      summary: 'Change some fields of a category',
      description:
        'By a merge patch (RFC 7396), with If-Match, the ETag of the category as it was read; as one new revision. Lists ' +
        'are replaced as a whole. Pointers of faults speak of the category as it would become. A draw figure that would ' +
        'change by more than a factor of three, or go, needs confirm=true.',
      consumes: [MERGE_PATCH],
      params: categoryCodeParameter,
      querystring: editQuerySchema,
      body: categoryPatchSchema,
      response: {
        200: editedAnswer('The category as it is now'),
        ...problemAnswers(...NEEDS_OPERATOR_KEY, ...NEEDS_BODY, ...EDITS_CATEGORY, 'large-change'),
      },
    },
    preValidation: bodyRequired,
    handler: async (request, reply) => {
      const options = editOf(request)
      const { code } = fitting(request.params)
      const basedOn = basisOfCategory(request, code)
      const readContent = (merged: unknown) => readShape(patchedCategorySchema, merged)
      // The patch as it came: a schema's copy of it would lose what null and __proto__ mean here.
      const { raw } = request.body
      return sendEdited(
        reply,
        await withCurrentTag(patch(deps, senderOf(request), code, raw, readContent, { ...options, basedOn })),
      )
    },
  })
})
