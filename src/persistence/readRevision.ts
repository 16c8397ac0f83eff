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

const LARGEST_INTEGER = 2_147_483_647

/** Whether a number can be that of a revision; the database refuses to be asked for others. */
export const isRevisionNumber = (revision: number) =>
  Number.isInteger(revision) && revision >= 1 && revision <= LARGEST_INTEGER

/** The condition on revisions from `oldest` to `newest`, both included. */
export const revisionsBetween = (oldest: number, newest: number) => ({
  number: { gte: Math.max(oldest, 1), lte: Math.min(newest, LARGEST_INTEGER) },
})
