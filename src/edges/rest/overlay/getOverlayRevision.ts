import { overlayRevisionAnswerSchema, showOverlayChange } from '../../../schemas/overlay.ts'
import { authorize } from '../../../useCases/authorize.ts'
import { readOverlayRevision } from '../../../useCases/readOverlay.ts'
import { jsonAnswer, notModified } from '../answers.ts'
import { revisionParameter } from '../catalogue/getRevision.ts'
import { overlayTag, sendOwn } from '../conditional.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleOverlayRevision } from './examples.ts'
import { OWN_TAG } from './ownTag.ts'

export function getOverlayRevision(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/overlay/revisions/:number',
    config: { scope: 'catalogue:edit' },
    schema: {
      operationId: 'readOverlayRevision',
      tags: ['own figures'],
      summary: "Read one revision of your organisation's own figures: who made it, and what it changed",
      description:
        'The category that it is about, before and after and field by field. All that lay over the shared catalogue then ' +
        'is at GET /v1/overlay?overlayRevision=…',
      params: revisionParameter,
      querystring: noQuery,
      response: {
        200: jsonAnswer('The revision', overlayRevisionAnswerSchema, exampleOverlayRevision, OWN_TAG),
        304: notModified,
        ...problemAnswers(...NEEDS_KEY, 'unknown-overlay-revision', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const { number } = fitting(request.params)
      const sender = senderOf(request)
      const { organisation } = authorize(sender, 'catalogue:edit').caller
      const revision = await readOverlayRevision(deps, sender, number)
      return sendOwn(request, reply, overlayTag(organisation, number), showOverlayChange(revision))
    },
  })
}
