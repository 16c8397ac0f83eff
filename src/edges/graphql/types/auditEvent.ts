import type { AuditEvent } from '../../../core/access/auditEvent.ts'
import { readAuditEvent } from '../../../useCases/readAuditEvent.ts'
import { builder } from '../builder.ts'
import { nodeOrNull } from '../nodeOrNull.ts'

const asText = (value: unknown) => (value === null ? null : JSON.stringify(value))

export const AuditEventType = builder.node(builder.objectRef<AuditEvent>('AuditEvent'), {
  description: 'One write: who, what, when, before and after. Nothing can change or remove it.',
  id: { description: 'Opaque name of the event, unique in the whole service.', resolve: ({ id }) => id },
  loadOne: (id, { deps, sender }) => nodeOrNull(() => readAuditEvent(deps, sender, id)),
  fields: (t) => ({
    eventId: t.exposeString('id', { description: 'Number of the event; a later one has a greater number.' }),
    at: t.string({ description: 'When (RFC 3339).', resolve: ({ at }) => at.toISOString() }),
    organisation: t.exposeString('organisation', {
      nullable: true,
      description: 'Code of the organisation whose key did it; null where it was the service itself.',
    }),
    keyId: t.exposeString('keyId', { nullable: true, description: 'The key that did it.' }),
    requestId: t.exposeString('requestId', { nullable: true, description: 'The request that did it.' }),
    action: t.exposeString('action', { description: 'What was done, such as api-key.issue.' }),
    subjectKind: t.exposeString('subjectKind', { description: 'Kind of what it was done to.' }),
    subjectId: t.exposeString('subjectId', { description: 'Name of what it was done to, among its kind.' }),
    concerns: t.exposeString('concerns', {
      nullable: true,
      description: "Code of the organisation whose matter it is; null where it is the operator's alone.",
    }),
    before: t.string({
      nullable: true,
      description: 'The subject before, as JSON; null where there was none.',
      resolve: ({ before }) => asText(before),
    }),
    after: t.string({
      nullable: true,
      description: 'The subject after, as JSON; null where there is none.',
      resolve: ({ after }) => asText(after),
    }),
  }),
})
