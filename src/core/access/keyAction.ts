import { type ApiKey, withoutDigest } from './apiKey.ts'
import type { NewAuditEvent } from './auditEvent.ts'
import type { Origin } from './caller.ts'
import type { Organisation } from './organisation.ts'

/** What can be done to keys and organisations, as the audit trail calls it. */
type KeyAction = 'api-key.issue' | 'api-key.revoke' | 'api-key.rotate'

/** The audit event of something done to a key; the digest is left out. */
export function keyAction(
  action: KeyAction,
  { before, after }: { readonly before: ApiKey | null; readonly after: ApiKey },
  at: Date,
  origin: Origin | null,
): NewAuditEvent {
  return {
    at,
    origin,
    action,
    subjectKind: 'api-key',
    subjectId: after.id,
    concerns: after.organisation,
    before: before && withoutDigest(before),
    after: withoutDigest(after),
  }
}

/** The audit event of a new organisation. */
export const organisationMade = (organisation: Organisation, origin: Origin | null): NewAuditEvent => ({
  at: organisation.madeAt,
  origin,
  action: 'organisation.make',
  subjectKind: 'organisation',
  subjectId: organisation.code,
  concerns: organisation.code,
  before: null,
  after: { code: organisation.code, name: organisation.name },
})
