import type { Revision } from '../core/catalogue/revision.ts'
import type { Window } from '../stores/window.ts'
import type { Deps } from './deps.ts'
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
  { after, before, limit, keep }: Window<number>,
): Promise<RevisionPart> {
  const newest = Math.min(after === undefined ? total : after - 1, total)
  const oldest = Math.max(before === undefined ? 1 : before + 1, 1)
  const [from, to] =
    keep === 'first'
      ? [Math.max(oldest, newest - limit + 1), newest]
      : [oldest, Math.min(newest, oldest + limit - 1)]
  const items = from > to ? [] : await store.revisions(from, to)
  return { items, hasBefore: to < total, hasAfter: from > 1, total }
}
