import type { CategoryChange } from '../core/catalogue/categoryChange.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import type { StoredList } from './listCursor.ts'

/** The same for both edges, so that a cursor that either gave out is good for the other. */
export const REVISION_LIST: StoredList<Revision, number> = {
  name: 'catalogue-revisions',
  form: /^[1-9]\d{0,9}$/,
  write: ({ number }) => String(number),
  read: Number,
}

/** The changes of one revision, or between two; which, the cursor's filter says. */
export const CHANGE_LIST: StoredList<Pick<CategoryChange, 'code'>, string> = {
  name: 'catalogue-changes',
  form: /^[a-z0-9-]{1,64}$/,
  write: ({ code }) => code,
  read: (code) => code,
}
