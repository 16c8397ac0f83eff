import { tariffListSchema, tariffQuerySchema } from '../../../schemas/tariff.ts'
import { listTariffs } from '../../../useCases/listTariffs.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer, notModified, REFERENCE_HEADERS } from '../answers.ts'
import { referenceDataTag, sendTagged } from '../conditional.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleTariffList } from './examples.ts'
import { TARIFFS } from './lists.ts'

export function getTariffs(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/tariffs',
    schema: {
      operationId: 'listTariffs',
      tags: ['money and grid'],
      summary: 'List the tariffs that the service knows',
      description:
        'In the order of their codes, in pages. An estimate names one by tariffCode, or brings its own. Flat, rising and ' +
        'falling blocks, time-of-use, and several of them added up; feed-in prices and demand charges are out.',
      querystring: tariffQuerySchema,
      response: {
        200: jsonAnswer('One page of tariffs', tariffListSchema, exampleTariffList, {
          ...REFERENCE_HEADERS,
          ...LINK_HEADER,
        }),
        304: notModified,
        ...problemAnswers('faulty-cursor', 'unknown-reference-revision'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor, ...filter } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, TARIFFS, filter)
      const { items, next, referenceRevision } = await listTariffs(deps, filter, { limit, after })
      const nextCursor = next === null ? null : writeListCursor({ code: next }, TARIFFS, filter)
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/tariffs', { ...filter, limit }, nextCursor))
      const tagged = { tag: referenceDataTag(referenceRevision), referenceRevision }
      return sendTagged(request, reply, tagged, { items, nextCursor, referenceRevision })
    },
  })
}
