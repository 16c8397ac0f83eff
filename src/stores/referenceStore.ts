import type { Revision, RevisionNote } from '../core/catalogue/revision.ts'
import type { ReferenceData } from '../core/reference/referenceData.ts'
import type { ReferenceEntry } from '../core/reference/referenceEntry.ts'

/** The history of tariffs and emission factors. Nothing in it is ever changed or removed; an edit appends one revision. */
export interface ReferenceStore {
  /** The newest revision's number; 0 where nothing was stored yet. */
  latestRevision(): Promise<number>
  /** All entries as they were at a revision, or null where there is no such revision. */
  dataAt(revision: number): Promise<ReferenceData | null>
  /** The revisions from `oldest` to `newest`, both included, newest first; numbers that are none are left out. */
  revisions(oldest: number, newest: number): Promise<readonly Revision[]>
  /**
   * Appends one revision holding the new state of the given entries, and its audit event; all or nothing.
   * Refuses with DomainError `stale-revision` where `basedOn` is no longer the newest.
   */
  append(basedOn: number, changed: readonly ReferenceEntry[], note: RevisionNote): Promise<Revision>
}
