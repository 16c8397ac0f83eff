import type { NewAuditEvent } from '../core/access/auditEvent.ts'
import type { Origin } from '../core/access/caller.ts'

interface Versions {
  /** Null where there is none. */
  readonly before: number | null
  readonly after: number | null
}

/**
 * The audit event of something done to an inventory. It names versions and no content: the trail is kept for ever, and what
 * is deleted of a household must be gone.
 */
export const inventoryEvent = (
  action: 'inventory.create' | 'inventory.change' | 'inventory.delete',
  id: string,
  { before, after }: Versions,
  at: Date,
  origin: Origin,
): NewAuditEvent => ({
  at,
  origin,
  action,
  subjectKind: 'inventory',
  subjectId: id,
  before: before === null ? null : { version: before },
  after: after === null ? null : { version: after },
})
