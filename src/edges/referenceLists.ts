import type { Revision } from '../core/catalogue/revision.ts'
import { REVISION_LIST } from './catalogueLists.ts'
import type { StoredList } from './listCursor.ts'

/** As the list of catalogue revisions; only that a cursor of the one is none of the other. */
export const REFERENCE_REVISION_LIST: StoredList<Revision, number> = {
  ...REVISION_LIST,
  name: 'reference-revisions',
}
