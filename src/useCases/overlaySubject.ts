import type { Category } from '../core/catalogue/category.ts'
import type { Overlay } from '../core/catalogue/overlay.ts'

/** What an edit of an overlay is decided on. */
export interface OverlaySubject {
  readonly overlay: Overlay
  /** The organisation's own category, and the shared one that it lies over. */
  readonly own: Category | undefined
  readonly shared: Category | undefined
}
