import { limitListSchema, limitQuerySchema } from '../../../schemas/limit.ts'
import { listLimits } from '../../../useCases/listLimits.ts'
import { readListCursor, type StoredList, writeListCursor } from '../../listCursor.ts'
import { jsonAnswer } from '../answers.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleLimitList } from './examples.ts'

/** In the order of their codes; the place of a page is the code before it. */
const LIST: StoredList<{ readonly code: string }, string> = {
  name: 'limits',
  form: /^[A-Za-z0-9_.:-]{1,64}$/,
  read: (text) => text,
  write: ({ code }) => code,
}

export function getLimits(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/limits',
    schema: {
      operationId: 'listLimits',
      tags: ['limits and cautions'],
      summary: 'List the published limits on standby power',
      description:
        'In the order of their codes, in pages: regulation, annex and point, the dates between which a device must have ' +
        'been placed on the market, mode and condition, the limit in W, the verification tolerance, source and mark.',
      querystring: limitQuerySchema,
      response: {
        200: jsonAnswer('One page of limits', limitListSchema, exampleLimitList, LINK_HEADER),
        ...problemAnswers('faulty-cursor'),
      },
    },
    handler: async (request, reply) => {
      const { limit, cursor, ...filter } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, LIST, filter)
      const { items, next } = listLimits(deps, filter, { limit, after })
      const nextCursor = next === null ? null : writeListCursor({ code: next }, LIST, filter)
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/limits', { ...filter, limit }, nextCursor))
      reply.header('cache-control', 'no-cache')
      return { items: [...items], nextCursor }
    },
  })
}
