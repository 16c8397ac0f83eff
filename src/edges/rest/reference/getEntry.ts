import type { ReferenceKind } from '../../../core/reference/referenceEntry.ts'
import { referenceQuery } from '../../../schemas/referenceQuery.ts'
import { readReference } from '../../../useCases/readReference.ts'
import { jsonAnswer, notModified, REFERENCE_HEADERS } from '../answers.ts'
import { referenceTag, sendTagged } from '../conditional.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { codeParameter, type ReferenceResource } from './resource.ts'

export const getEntry =
  <K extends ReferenceKind>({ kind, path, name, one, answer, example }: ReferenceResource<K>) =>
  (app: RestApp, { deps }: RestContext): void => {
    app.route({
      method: 'GET',
      url: `${path}/:code`,
      schema: {
        operationId: `read${name}`,
        tags: ['money and grid'],
        summary: `Read ${one} by its code`,
        description:
          'A retired one, too; as it is, or as it was at a revision. An unknown code is answered with those that there are.',
        params: codeParameter,
        querystring: referenceQuery,
        response: {
          200: jsonAnswer('What has this code', answer, example, REFERENCE_HEADERS),
          304: notModified,
          ...problemAnswers(`unknown-${kind}`, 'unknown-reference-revision', 'address-too-long'),
        },
      },
      handler: async (request, reply) => {
        const { referenceRevision: asked } = fitting(request.query)
        const { code } = fitting(request.params)
        const { content, changedIn, referenceRevision } = await readReference(deps, kind, code, asked)
        const tag = referenceTag(kind, code, changedIn)
        return sendTagged(request, reply, { tag, referenceRevision }, content)
      },
    })
  }
