import type { Origin } from '../access/caller.ts'

/** What kind of act made a revision. */
export const REVISION_ACTIONS = [
  'seed',
  'create',
  'change',
  'retire',
  'restore',
  'import',
  'accept-proposal',
  'restore-revision',
] as const
export type RevisionAction = (typeof REVISION_ACTIONS)[number]

/** What every edit of the catalogue says of itself. */
export interface RevisionNote {
  readonly action: RevisionAction
  /** The request behind the edit; null where the service itself makes it, as with the sample catalogue. */
  readonly origin: Origin | null
  readonly reason: string
  readonly at: Date
}

/** Who made a revision: the organisation, and which of its keys. `system` without a key is the service itself. */
export interface Author {
  readonly organisation: string
  readonly keyId: string | null
}

export interface Revision {
  readonly number: number
  readonly action: RevisionAction
  readonly author: Author
  readonly reason: string
  readonly at: Date
}

const SYSTEM: Author = { organisation: 'system', keyId: null }

/** The author that a note's origin makes. */
export const authorOf = ({ origin }: Pick<RevisionNote, 'origin'>): Author =>
  origin === null ? SYSTEM : { organisation: origin.caller.organisation, keyId: origin.caller.keyId }
