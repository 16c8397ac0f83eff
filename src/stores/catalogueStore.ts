import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'

/** What every edit of the catalogue says of itself. */
export interface RevisionNote {
  /** What kind of edit it is; `edit` where nothing else is said. */
  readonly action?: 'seed' | 'edit'
  readonly author: string
  readonly reason: string
  readonly at: Date
}

export interface Revision extends RevisionNote {
  readonly number: number
}

/** The catalogue's history. Nothing in it is ever changed or removed; an edit appends one revision. */
export interface CatalogueStore {
  /** The newest revision's number; 0 where the catalogue is empty. */
  latestRevision(): Promise<number>
  /** The whole catalogue as it was at a revision, or null where there is no such revision. */
  catalogueAt(revision: number): Promise<Catalogue | null>
  /**
   * Appends one revision holding the new state of the given categories, all or nothing.
   * Refuses with DomainError `stale-revision` where `basedOn` is no longer the newest.
   */
  append(basedOn: number, changed: readonly Category[], note: RevisionNote): Promise<Revision>
}
