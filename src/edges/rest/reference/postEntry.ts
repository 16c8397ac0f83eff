import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { createReference } from '../../../useCases/createReference.ts'
import { bodyRequired } from '../bodyRequired.ts'
import { editOf } from '../catalogue/editOf.ts'
import { NEEDS_BODY, NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import type { RestApp } from '../submitted.ts'
import type { ReferenceResource } from './resource.ts'
import { createdAnswer, sendEdited } from './sendEdited.ts'

export const postEntry = <K extends ReferenceKind>(resource: ReferenceResource<K>) => {
  const { kind, path, name, one, rules, content } = resource
  return (app: RestApp, { deps }: RestContext): void => {
    app.route({
      method: 'POST',
      url: path,
      config: { scope: 'catalogue:edit' },
      schema: {
        operationId: `create${name}`,
        tags: ['money and grid'],
        summary: `Add ${one}`,
        description: `As one new revision. ${rules} The code must never have been used; a second attempt is refused with 409, so it can safely be sent again.`,
        querystring: reasonQuerySchema,
        body: content,
        response: {
          201: createdAnswer(resource),
          ...problemAnswers(...NEEDS_OPERATOR_KEY, ...NEEDS_BODY, `${kind}-exists`),
        },
      },
      preValidation: bodyRequired,
      handler: async (request, reply) => {
        const options = editOf(request)
        const draft = readShape(content, request.body.raw)
        return sendEdited(
          reply,
          resource,
          createReference(deps, senderOf(request), kind, draft, options),
          201,
        )
      },
    })
  }
}
