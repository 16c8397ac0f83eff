import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { reasonQuerySchema } from '../../../schemas/catalogueEdit.ts'
import { retireReference } from '../../../useCases/retireReference.ts'
import { editOf } from '../catalogue/editOf.ts'
import { basisOfReference } from '../ifMatch.ts'
import { NEEDS_OPERATOR_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { codeParameter, editProblems, type ReferenceResource } from './resource.ts'
import { editedAnswer, sendEdited } from './sendEdited.ts'

const WAYS = {
  retire: {
    method: 'DELETE',
    suffix: '',
    verb: 'Retire',
    description:
      'It goes out of lists and of what is suggested, as one new revision, and nothing of it is lost: estimates that name ' +
      'it still get it, with a warning, and POST …/restore brings it back.',
  },
  restore: {
    method: 'POST',
    suffix: '/restore',
    verb: 'Bring back',
    description: 'As it is, as one new revision. Refused where an emission factor has a twin meanwhile.',
  },
} as const

/** DELETE retires, and POST …/restore brings back. */
export const retireEntry = <K extends ReferenceKind>(
  resource: ReferenceResource<K>,
  way: keyof typeof WAYS,
) => {
  const { kind, path, name, one } = resource
  const { method, suffix, verb, description } = WAYS[way]
  return (app: RestApp, { deps }: RestContext): void => {
    app.route({
      method,
      url: `${path}/:code${suffix}`,
      config: { scope: 'catalogue:edit', conditions: ['If-Match'] },
      schema: {
        operationId: `${way}${name}`,
        tags: ['money and grid'],
        summary: `${verb} ${one}`,
        description,
        params: codeParameter,
        querystring: reasonQuerySchema,
        response: {
          200: editedAnswer(resource, 'As it is now'),
          ...problemAnswers(...NEEDS_OPERATOR_KEY, ...editProblems(resource)),
        },
      },
      handler: async (request, reply) => {
        const { reason } = editOf({ query: request.query })
        const { code } = fitting(request.params)
        const basedOn = basisOfReference(request, kind, code)
        const options = { reason, basedOn, retired: way === 'retire' }
        return sendEdited(reply, resource, retireReference(deps, senderOf(request), kind, code, options))
      },
    })
  }
}
