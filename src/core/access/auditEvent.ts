import type { Origin } from './caller.ts'

/** What a write says of itself; stored in the same transaction as the write it speaks of, or not at all. */
export interface NewAuditEvent {
  readonly at: Date
  /** The request behind the write; null where the service itself wrote, such as at its first start. */
  readonly origin: Origin | null
  /** What was done, such as `api-key.issue` or `catalogue.edit`. */
  readonly action: string
  /** What it was done to: its kind, such as `api-key`, and its name among its kind. */
  readonly subjectKind: string
  readonly subjectId: string
  /**
   * The organisation whose matter it is and whose admins may read it; the caller's own where nothing is said. Another one
   * where the operator acts on what is another's, such as its keys.
   */
  readonly concerns?: string
  /** The subject before and after; null where there was or is none. Anything that JSON can hold, and never a secret. */
  readonly before: unknown
  readonly after: unknown
}

/** One event of the audit trail, as it was stored. Nothing in it is ever changed or removed. */
export interface AuditEvent {
  /** A whole number as text; a later event has a greater one. */
  readonly id: string
  readonly at: Date
  /** Who did it; all three are null where it was the service itself. */
  readonly organisation: string | null
  readonly keyId: string | null
  readonly requestId: string | null
  readonly action: string
  readonly subjectKind: string
  readonly subjectId: string
  /** Null where it is the operator's matter alone. */
  readonly concerns: string | null
  readonly before: unknown
  readonly after: unknown
}
