import type { Catalogue, CategoryState } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'
import type { Revision, RevisionNote } from '../core/catalogue/revision.ts'
import type { Window } from './window.ts'

/** A category as a revision left it, and as it was before; null where the revision made it. */
export interface CategoryBeforeAfter {
  readonly before: Category | null
  readonly after: Category
}

/** The catalogue's history. Nothing in it is ever changed or removed; an edit appends one revision. */
export interface CatalogueStore {
  /** The newest revision's number; 0 where the catalogue is empty. */
  latestRevision(): Promise<number>
  /** The whole catalogue as it was at a revision, or null where there is no such revision. */
  catalogueAt(revision: number): Promise<Catalogue | null>
  /** What has to be laid over the catalogue at `after` to make it the one at `upTo`: the last state of each category between them. */
  statesBetween(after: number, upTo: number): Promise<readonly CategoryState[]>
  /** The revisions from `oldest` to `newest`, both included, newest first; numbers that are none are left out. */
  revisions(oldest: number, newest: number): Promise<readonly Revision[]>
  /** What a revision changed, in the order of the codes; a place is a code. */
  changesIn(revision: number, window: Window<string>): Promise<readonly CategoryBeforeAfter[]>
  /** How many categories a revision changed. */
  countChangesIn(revision: number): Promise<number>
  /**
   * Appends one revision holding the new state of the given categories, and its audit event; all or nothing.
   * Refuses with DomainError `stale-revision` where `basedOn` is no longer the newest.
   * @param onProgress hears how many categories are written so far, of how many
   */
  append(
    basedOn: number,
    changed: readonly Category[],
    note: RevisionNote,
    onProgress?: (done: number, total: number) => void,
  ): Promise<Revision>
}
