import type { Origin } from '../access/caller.ts'
import type { Category } from './category.ts'
import type { Author } from './revision.ts'

/** What an organisation can do to its overlay: lay a category over the shared catalogue, change it, take it away. */
export const OVERLAY_ACTIONS = ['lay', 'change', 'remove'] as const
export type OverlayAction = (typeof OVERLAY_ACTIONS)[number]

/** One edit of an overlay; each makes one revision. */
export interface OverlayEdit {
  readonly action: OverlayAction
  readonly code: string
  /** As it is to be; null takes it away. */
  readonly category: Category | null
  /** The request behind the edit; its caller's organisation is the one whose overlay it is. */
  readonly origin: Origin
  readonly reason: string
  readonly at: Date
}

/** One numbered state of an organisation's overlay, and what its author said of it. */
export interface OverlayRevision {
  readonly number: number
  readonly action: OverlayAction
  /** The one category that it is about. */
  readonly code: string
  readonly author: Author
  readonly reason: string
  readonly at: Date
}

/** The same with the category as it was and as it became; null where it did not lie over the shared catalogue. */
export interface OverlayRevisionChange extends OverlayRevision {
  readonly before: Category | null
  readonly after: Category | null
}
