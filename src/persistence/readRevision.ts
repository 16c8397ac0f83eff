import type { Revision, RevisionAction } from '../core/catalogue/revision.ts'

interface StoredRevision {
  readonly number: number
  readonly action: string
  readonly author: string
  readonly keyId: string | null
  readonly reason: string
  readonly at: Date
}

/** A revision from its row. Only this service writes the action, so it is one of the list, or was when it was written. */
export const readRevision = ({ number, action, author, keyId, reason, at }: StoredRevision): Revision => ({
  number,
  action: action as RevisionAction,
  author: { organisation: author, keyId },
  reason,
  at,
})
