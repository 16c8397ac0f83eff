import type { Category } from '../core/catalogue/category.ts'
import type { OverlayRevision } from '../core/catalogue/overlayRevision.ts'
import type { StoredList } from './listCursor.ts'

/** The same for both edges; whose overlay it is, and at which revision, the cursor's filter says. */
export const OVERLAY_LIST: StoredList<Pick<Category, 'code'>, string> = {
  name: 'overlay',
  form: /^[a-z0-9-]{1,64}$/,
  write: ({ code }) => code,
  read: (code) => code,
}

export const OVERLAY_REVISION_LIST: StoredList<Pick<OverlayRevision, 'number'>, number> = {
  name: 'overlay-revisions',
  form: /^[1-9]\d{0,9}$/,
  write: ({ number }) => String(number),
  read: Number,
}
