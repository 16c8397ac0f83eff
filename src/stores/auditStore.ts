import type { AuditEvent } from '../core/access/auditEvent.ts'
import type { Window } from './window.ts'

export interface AuditFilter {
  /** Only what concerns this organisation. */
  readonly organisation?: string | undefined
  readonly action?: string | undefined
  readonly subjectKind?: string | undefined
  readonly subjectId?: string | undefined
  /** From this time on. */
  readonly from?: Date | undefined
  /** Before this time. */
  readonly to?: Date | undefined
}

/** The audit trail, to read. Events come in with the writes that they speak of, and nothing takes one out. */
export interface AuditStore {
  find(id: string): Promise<AuditEvent | null>
  /** Newest first; places are ids of events. */
  list(filter: AuditFilter, window: Window<string>): Promise<readonly AuditEvent[]>
  count(filter: AuditFilter): Promise<number>
}
