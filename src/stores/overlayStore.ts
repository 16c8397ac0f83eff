import type { Overlay } from '../core/catalogue/overlay.ts'
import type {
  OverlayEdit,
  OverlayRevision,
  OverlayRevisionChange,
} from '../core/catalogue/overlayRevision.ts'

/**
 * What organisations have laid over the shared catalogue, each with its own history. Nothing is ever changed or removed; an
 * edit appends one revision. Every question names the organisation that it is about, but for the one on what is new.
 */
export interface OverlayStore {
  /** By organisation: the newest revision's number. One that never had an overlay is not in it. */
  latestRevisions(): Promise<ReadonlyMap<string, number>>
  /** An organisation's whole overlay as it was at a revision, or null where there is no such revision. */
  overlayAt(organisation: string, revision: number): Promise<Overlay | null>
  /** The revisions from `oldest` to `newest`, both included, newest first; numbers that are none are left out. */
  revisions(organisation: string, oldest: number, newest: number): Promise<readonly OverlayRevision[]>
  /** A revision with the category before and after, or null where there is no such revision. */
  revision(organisation: string, number: number): Promise<OverlayRevisionChange | null>
  /**
   * Appends one revision, and its audit event, or neither, to the overlay of the organisation that the edit's caller is of.
   * Refuses with DomainError `stale-overlay` where `basedOn` is no longer the newest.
   */
  append(basedOn: number, edit: OverlayEdit): Promise<OverlayRevision>
}
