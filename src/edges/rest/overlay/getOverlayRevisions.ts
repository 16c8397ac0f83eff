import {
  overlayRevisionListQuerySchema,
  overlayRevisionListSchema,
  showOverlayRevision,
} from '../../../schemas/overlay.ts'
import { listOverlayRevisions } from '../../../useCases/readOverlay.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { OVERLAY_REVISION_LIST } from '../../overlayLists.ts'
import { jsonAnswer, notModified } from '../answers.ts'
import { overlayTag, sendOwn } from '../conditional.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleOverlayRevisionList } from './examples.ts'
import { OWN_TAG } from './ownTag.ts'

export function getOverlayRevisions(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/overlay/revisions',
    config: { scope: 'catalogue:edit' },
    schema: {
      operationId: 'listOverlayRevisions',
      tags: ['own figures'],
      summary: "List the revisions of your organisation's own figures: who edited them, when and why",
      description: 'Newest first, in pages. Each edit made one, and none is ever changed or removed.',
      querystring: overlayRevisionListQuerySchema,
      response: {
        200: jsonAnswer('One page of revisions', overlayRevisionListSchema, exampleOverlayRevisionList, {
          ...OWN_TAG,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers(...NEEDS_KEY, 'faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor } = fitting(request.query)
      const of = { organisation: request.caller?.organisation }
      const after = cursor === undefined ? undefined : readListCursor(cursor, OVERLAY_REVISION_LIST, of)
      const part = await listOverlayRevisions(deps, senderOf(request), { after, limit, keep: 'first' })
      const { items, hasAfter, total, organisation } = part
      const nextCursor = hasAfter ? writeListCursor(items.at(-1)!, OVERLAY_REVISION_LIST, of) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/overlay/revisions', { limit }, nextCursor))
      return sendOwn(request, reply, overlayTag(organisation, total), {
        items: items.map(showOverlayRevision),
        nextCursor,
        overlayRevision: total,
      })
    },
  })
}
