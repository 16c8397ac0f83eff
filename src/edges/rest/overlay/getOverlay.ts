import { overlayListSchema, overlayQuerySchema } from '../../../schemas/overlay.ts'
import { listOverlay } from '../../../useCases/readOverlay.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { OVERLAY_LIST } from '../../overlayLists.ts'
import { jsonAnswer, notModified } from '../answers.ts'
import { overlayTag, sendOwn } from '../conditional.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleOverlayList } from './examples.ts'
import { OWN_TAG } from './ownTag.ts'

export function getOverlay(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/overlay',
    config: { scope: 'catalogue:edit' },
    schema: {
      operationId: 'listOverlay',
      tags: ['own figures'],
      summary: "List your organisation's own categories",
      description:
        'Those that it has laid over the shared catalogue for its own callers, now or at an older overlay revision, in the ' +
        'order of their codes and in pages. GET /v1/categories shows them in their place among the shared ones.',
      querystring: overlayQuerySchema,
      response: {
        200: jsonAnswer('One page of own categories', overlayListSchema, exampleOverlayList, {
          ...OWN_TAG,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers(...NEEDS_KEY, 'faulty-cursor', 'unknown-overlay-revision'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor, overlayRevision: asked } = fitting(request.query)
      const sender = senderOf(request)
      // The pages of a walk differ in what they ask for only by the cursor, so the list is what the caller asked for.
      const of = { organisation: request.caller?.organisation, asked }
      const after = cursor === undefined ? undefined : readListCursor(cursor, OVERLAY_LIST, of)
      const page = await listOverlay(deps, sender, asked, { limit, after })
      const { items, next, overlayRevision, organisation } = page
      const nextCursor = next === null ? null : writeListCursor(items.at(-1)!, OVERLAY_LIST, of)
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/overlay', { limit, overlayRevision: asked }, nextCursor))
      const tag = overlayTag(organisation, overlayRevision)
      return sendOwn(request, reply, tag, { items, nextCursor, overlayRevision })
    },
  })
}
