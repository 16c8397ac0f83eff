import { z } from 'zod'
import type { AuditEvent } from '../core/access/auditEvent.ts'
import { instant } from './apiKey.ts'
import { shortText } from './common.ts'
import { organisationCode } from './organisation.ts'
import { pageOf, pageQuery } from './paging.ts'
import { writeTable } from './writeTable.ts'

const auditEventSchema = z
  .strictObject({
    id: z.string(),
    at: z.iso.datetime(),
    organisation: z.string().nullable().describe('Whose key did it; null: the service itself'),
    keyId: z.string().nullable(),
    requestId: z.string().nullable(),
    action: z.string(),
    subjectKind: z.string(),
    subjectId: z.string(),
    concerns: z.string().nullable().describe('The organisation whose matter it is; null: the operator alone'),
    before: z.unknown().describe('The subject before; null where there was none'),
    after: z.unknown().describe('The subject after; null where there is none'),
  })
  .meta({ id: 'AuditEvent', description: 'One write: who, what, when, before and after' })
type ShownEvent = z.output<typeof auditEventSchema>

export const auditEventAnswerSchema = auditEventSchema
export const auditEventListSchema = pageOf(auditEventSchema).meta({ id: 'AuditEventList' })

/** What both edges filter by. */
const auditFilterShape = {
  organisation: organisationCode.optional(),
  action: shortText.optional(),
  subjectKind: shortText.optional(),
  subjectId: shortText.optional(),
  from: instant.optional().describe('Only events from this time on'),
  to: instant.optional().describe('Only events before this time'),
}
export const auditFilterSchema = z.strictObject(auditFilterShape)
export const auditQuerySchema = z.strictObject({ ...auditFilterShape, ...pageQuery })

/** An event as answers show it. */
export const showEvent = (event: AuditEvent): ShownEvent => ({
  id: event.id,
  at: event.at.toISOString(),
  organisation: event.organisation,
  keyId: event.keyId,
  requestId: event.requestId,
  action: event.action,
  subjectKind: event.subjectKind,
  subjectId: event.subjectId,
  concerns: event.concerns,
  before: event.before,
  after: event.after,
})

const COLUMNS = [
  'id',
  'at',
  'organisation',
  'keyId',
  'requestId',
  'action',
  'subjectKind',
  'subjectId',
  'concerns',
  'before',
  'after',
] as const

/** Events as a CSV file with a header row; what was before and after is JSON in its cell, and what is null is empty. */
export const writeAuditCsv = (events: readonly AuditEvent[]): string =>
  writeTable(
    COLUMNS,
    events.map((event) => {
      const { before, after, ...texts } = showEvent(event)
      const filled = Object.entries(texts).map(([name, value]) => [name, value ?? ''])
      return {
        ...(Object.fromEntries(filled) as Record<keyof typeof texts, string>),
        before: before === null ? '' : JSON.stringify(before),
        after: after === null ? '' : JSON.stringify(after),
      }
    }),
  )
