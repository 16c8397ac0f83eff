import { keyListSchema, keyQuerySchema, showKey } from '../../../schemas/apiKey.ts'
import { listKeys } from '../../../useCases/listKeys.ts'
import { KEY_LIST } from '../../accessLists.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer } from '../answers.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleKeyList } from './examples.ts'

export function getApiKeys(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/api-keys',
    config: { scope: 'admin' },
    schema: {
      operationId: 'listApiKeys',
      tags: ['access'],
      summary: 'List the API keys, without their secrets',
      description:
        "Newest first, in pages, expired and revoked ones too: those of your organisation, or, for the operator's admins, " +
        'of all.',
      querystring: keyQuerySchema,
      response: {
        200: jsonAnswer('One page of keys', keyListSchema, exampleKeyList, LINK_HEADER),
        ...problemAnswers(...NEEDS_KEY, 'faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor, ...filter } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, KEY_LIST, filter)
      const part = await listKeys(deps, senderOf(request), filter, { after, limit, keep: 'first' })
      const nextCursor = part.hasAfter ? writeListCursor(part.items.at(-1)!, KEY_LIST, filter) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/api-keys', { ...filter, limit }, nextCursor))
      const now = deps.clock()
      return reply
        .header('cache-control', 'no-store')
        .send({ items: part.items.map((key) => showKey(key, now)), nextCursor })
    },
  })
}
