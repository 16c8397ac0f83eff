import type { Revision } from '../core/catalogue/revision.ts'
import type { Window } from '../stores/window.ts'
import type { Deps } from './deps.ts'
import { numbersIn } from './numbersIn.ts'
import type { Part } from './part.ts'

type RevisionPart = Part<Revision> & { readonly total: number }

/** Revisions of the catalogue, newest first. A place in the list is a revision's number. */
export const listRevisions = (
  { catalogueStore, catalogueMemory }: Deps,
  window: Window<number>,
): Promise<RevisionPart> => part(catalogueStore, catalogueMemory.current().revision, window)

/** The same of tariffs and emission factors. */
export const listReferenceRevisions = (
  { referenceStore, referenceMemory }: Deps,
  window: Window<number>,
): Promise<RevisionPart> => part(referenceStore, referenceMemory.current().revision, window)

/** Numbers have no gaps, so which ones a window shows can be said without asking the database. */
async function part(
  store: { revisions(oldest: number, newest: number): Promise<readonly Revision[]> },
  total: number,
  window: Window<number>,
): Promise<RevisionPart> {
  const { from, to, ...part } = numbersIn(total, window)
  const items = from > to ? [] : await store.revisions(from, to)
  return { items, ...part, total }
}
