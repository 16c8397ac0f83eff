import { auditFilterSchema } from '../../../schemas/auditEvent.ts'
import { readShape } from '../../../schemas/readShape.ts'
import { countAuditEvents, listAuditEvents } from '../../../useCases/listAuditEvents.ts'
import { AUDIT_LIST } from '../../accessLists.ts'
import { builder } from '../builder.ts'
import { connectionOf, listWindow } from '../listWindow.ts'
import { pageArgumentsSchema, pageCost } from '../pageArguments.ts'
import { AuditEventType } from '../types/auditEvent.ts'
import { withoutNulls } from '../withoutNulls.ts'

builder.queryField('auditEvents', (t) =>
  t.connection(
    {
      type: AuditEventType,
      nullable: true,
      description:
        "The audit trail, newest first: what concerns your organisation, or, for the operator's admins, everything. Needs a key with the scope admin.",
      args: {
        organisation: t.arg.string({ description: 'Only what concerns the organisation with this code.' }),
        action: t.arg.string({ description: 'Only this action, such as api-key.issue.' }),
        subjectKind: t.arg.string({ description: 'Only what was done to this kind of subject.' }),
        subjectId: t.arg.string({ description: 'Only what was done to the subject of this name.' }),
        from: t.arg.string({ description: 'Only events from this time on (RFC 3339).' }),
        to: t.arg.string({ description: 'Only events before this time (RFC 3339).' }),
      },
      complexity: pageCost,
      resolve: async (_root, { first, last, after, before, ...rest }, { deps, sender }) => {
        const page = readShape(pageArgumentsSchema, withoutNulls({ first, last, after, before }))
        const asked = readShape(auditFilterSchema, withoutNulls(rest))
        const { filter, window } = listWindow(AUDIT_LIST, page, asked)
        const part = await listAuditEvents(deps, sender, filter, window)
        return {
          ...connectionOf(AUDIT_LIST, part, filter),
          count: () => countAuditEvents(deps, sender, filter),
        }
      },
    },
    {
      name: 'AuditEventConnection',
      description: 'A page of the audit trail.',
      fields: (connection) => ({
        totalCount: connection.int({
          description: 'Number of events that the filter lets through, on all pages.',
          resolve: ({ count }) => count(),
        }),
      }),
    },
    { name: 'AuditEventEdge', description: 'An event and its place in the trail.' },
  ),
)
