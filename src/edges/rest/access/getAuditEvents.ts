import { Readable } from 'node:stream'
import { z } from 'zod'
import {
  auditEventListSchema,
  auditQuerySchema,
  showEvent,
  writeAuditCsv,
} from '../../../schemas/auditEvent.ts'
import { exportAuditEvents } from '../../../useCases/exportAuditEvents.ts'
import { listAuditEvents } from '../../../useCases/listAuditEvents.ts'
import { AUDIT_LIST } from '../../accessLists.ts'
import { readListCursor, writeListCursor } from '../../listCursor.ts'
import { preferred } from '../accepts.ts'
import { jsonAnswer } from '../answers.ts'
import { LINK_HEADER, linkToNext } from '../linkToNext.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, type RestApp } from '../submitted.ts'
import { exampleEventList } from './examples.ts'

const FORMS = ['application/json', 'text/csv'] as const

export function getAuditEvents(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/audit-events',
    config: { scope: 'admin', produces: FORMS },
    schema: {
      operationId: 'listAuditEvents',
      tags: ['access'],
      summary: 'List or export the audit trail: who changed what, and when',
      description:
        "Newest first: what concerns your organisation, or, for the operator's admins, everything. JSON comes in pages; " +
        'with Accept: text/csv the answer is everything that the filter lets through, as one file. Nothing can change or ' +
        'remove an event.',
      querystring: auditQuerySchema,
      response: { 200: ANSWER, ...problemAnswers(...NEEDS_KEY, 'faulty-cursor') },
    },
    handler: async (request, reply) => {
      const { limit, cursor, ...filter } = fitting(request.query)
      const after = cursor === undefined ? undefined : readListCursor(cursor, AUDIT_LIST, filter)
      reply.headers({ 'cache-control': 'no-store', vary: 'accept' })
      if (preferred(request.headers.accept, FORMS) === 'text/csv') {
        const pages = exportAuditEvents(deps, senderOf(request), filter, after)
        return reply
          .headers({ 'content-disposition': 'attachment; filename="audit-events.csv"' })
          .type('text/csv; charset=utf-8; header=present')
          .send(Readable.from(inOneFile(pages)))
      }
      const part = await listAuditEvents(deps, senderOf(request), filter, { after, limit, keep: 'first' })
      const nextCursor = part.hasAfter ? writeListCursor(part.items.at(-1)!, AUDIT_LIST, filter) : null
      if (nextCursor !== null)
        reply.header('link', linkToNext('/v1/audit-events', { ...filter, limit }, nextCursor))
      return reply.send({ items: part.items.map(showEvent), nextCursor })
    },
  })
}

const json = jsonAnswer(
  'One page of events, or as CSV all of them',
  auditEventListSchema,
  exampleEventList,
  LINK_HEADER,
)
const ANSWER = {
  ...json,
  content: {
    ...json.content,
    'text/csv': {
      schema: z.string(),
      examples: { example: { value: writeAuditCsv([{ ...exampleEventList.items[0]!, at: new Date(0) }]) } },
    },
  },
}

/** Only the first page keeps its header row. */
async function* inOneFile(pages: ReturnType<typeof exportAuditEvents>): AsyncGenerator<string> {
  let isFirst = true
  for await (const events of pages) {
    const text = writeAuditCsv(events)
    yield isFirst ? text : text.slice(text.indexOf('\r\n') + 2)
    isFirst = false
  }
}
