import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { patchReference } from '../../../useCases/patchReference.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { editOf } from '../catalogue/editOf.ts'
import { basisOfReference } from '../ifMatch.ts'
import { MERGE_PATCH, readingMergePatches } from '../mergePatches.ts'
import { NEEDS_BODY, NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { codeParameter, editProblems, type ReferenceResource } from './resource.ts'
import { editedAnswer, sendEdited } from './sendEdited.ts'

export const patchEntry = <K extends ReferenceKind>(resource: ReferenceResource<K>) =>
  readingMergePatches((app: RestApp, { deps }: RestContext): void => {
    const { kind, path, name, one, rules, content, patch } = resource
    app.route({
      method: 'PATCH',
      url: `${path}/:code`,
      config: { scope: 'catalogue:edit', conditions: ['If-Match'], reads: [MERGE_PATCH] },
      schema: {
        operationId: `patch${name}`,
        tags: ['money and grid'],
        summary: `Change some fields of ${one}`,
        description: `By a merge patch (RFC 7396), with If-Match, the ETag of what was read; as one new revision. Lists are replaced as a whole. Pointers of faults speak of what it would become. ${rules}`,
        consumes: [MERGE_PATCH],
        params: codeParameter,
        querystring: reasonQuerySchema,
        body: patch,
        response: {
          200: editedAnswer(resource, 'As it is now'),
          ...problemAnswers(...NEEDS_OPERATOR_KEY, ...NEEDS_BODY, ...editProblems(resource)),
        },
      },
      preValidation: bodyRequired,
      handler: async (request, reply) => {
        const { reason } = editOf(request)
        const { code } = fitting(request.params)
        const options = { reason, basedOn: basisOfReference(request, kind, code) }
        const readDraft = (merged: unknown) => readShape(content, merged)
        // As it came: a schema's copy of it would lose what null and __proto__ mean here.
        const { raw } = request.body
        const edit = patchReference(deps, senderOf(request), kind, code, raw, readDraft, options)
        return sendEdited(reply, resource, edit)
      },
    })
  })
