import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { changeReference } from '../../../useCases/changeReference.ts'
import { createReference } from '../../../useCases/createReference.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { editOf } from '../catalogue/editOf.ts'
import { asksForNothingThere, basisOfReference } from '../ifMatch.ts'
import { NEEDS_BODY, NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { codeParameter, editProblems, type ReferenceResource } from './resource.ts'
import { createdAnswer, editedAnswer, sendEdited } from './sendEdited.ts'

export const putEntry = <K extends ReferenceKind>(resource: ReferenceResource<K>) => {
  const { kind, path, name, one, rules, content } = resource
  return (app: RestApp, { deps }: RestContext): void => {
    app.route({
      method: 'PUT',
      url: `${path}/:code`,
      config: { scope: 'catalogue:edit', conditions: ['If-Match', 'If-None-Match'] },
      schema: {
        operationId: `replace${name}`,
        tags: ['money and grid'],
        summary: `Replace ${one} as a whole, or make it where there is none`,
        description: `With If-Match, the ETag of what was read, as one new revision; content that is the same makes none. With If-None-Match: * only where there is nothing yet. ${rules}`,
        params: codeParameter,
        querystring: reasonQuerySchema,
        body: content,
        response: {
          200: editedAnswer(resource, 'As it is now'),
          201: createdAnswer(resource),
          ...problemAnswers(...NEEDS_OPERATOR_KEY, ...NEEDS_BODY, ...editProblems(resource), 'already-there'),
        },
      },
      preValidation: bodyRequired,
      handler: async (request, reply) => {
        const { reason } = editOf(request)
        const { code } = fitting(request.params)
        const draft = readShape(content, request.body.raw)
        const sender = senderOf(request)
        if (asksForNothingThere(request))
          return sendEdited(
            reply,
            resource,
            createReference(deps, sender, kind, draft, { reason, code }),
            201,
          )
        const options = { reason, basedOn: basisOfReference(request, kind, code) }
        return sendEdited(
          reply,
          resource,
          changeReference(deps, sender, kind, code, () => draft, options),
        )
      },
    })
  }
}
