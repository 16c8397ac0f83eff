import { z } from 'zod'
import { auditEventAnswerSchema, showEvent } from '../../../schemas/auditEvent.ts'
import { readAuditEvent } from '../../../useCases/readAuditEvent.ts'
import { jsonAnswer } from '../answers.ts'
import { NEEDS_KEY, problemAnswers } from '../problem.ts'
import type { RestContext } from '../restContext.ts'
import { senderOf } from '../senderOf.ts'
import { fitting, noQuery, type RestApp } from '../submitted.ts'
import { exampleEvent } from './examples.ts'

export function getAuditEvent(app: RestApp, { deps }: RestContext): void {
  app.route({
    method: 'GET',
    url: '/v1/audit-events/:id',
    config: { scope: 'admin' },
    schema: {
      operationId: 'readAuditEvent',
      tags: ['access'],
      summary: 'Read one event of the audit trail',
      description: 'An event of another organisation is answered like one that does not exist.',
      params: z.strictObject({ id: z.string().max(100).describe('Id of the event') }),
      querystring: noQuery,
      response: {
        200: jsonAnswer('The event', auditEventAnswerSchema, exampleEvent),
        ...problemAnswers(...NEEDS_KEY, 'unknown-audit-event', 'address-too-long'),
      },
    },
    handler: async (request, reply) => {
      fitting(request.query)
      const event = await readAuditEvent(deps, senderOf(request), fitting(request.params).id)
      return reply.header('cache-control', 'no-store').send(showEvent(event))
    },
  })
}
