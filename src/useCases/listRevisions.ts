import type { Revision } from '../core/catalogue/revision.ts'
import type { Window } from '../stores/window.ts'
import type { Deps } from './deps.ts'
import type { Part } from './part.ts'

/**
 * Revisions of the catalogue, newest first. A place in the list is a revision's number; they have no gaps, so which ones a
 * window shows can be said without asking the database.
 */
export async function listRevisions(
  { catalogueStore, catalogueMemory }: Deps,
  { after, before, limit, keep }: Window<number>,
): Promise<Part<Revision> & { readonly total: number }> {
  const total = catalogueMemory.current().revision
  const newest = Math.min(after === undefined ? total : after - 1, total)
  const oldest = Math.max(before === undefined ? 1 : before + 1, 1)
  const [from, to] =
    keep === 'first'
      ? [Math.max(oldest, newest - limit + 1), newest]
      : [oldest, Math.min(newest, oldest + limit - 1)]
  const items = from > to ? [] : await catalogueStore.revisions(from, to)
  return { items, hasBefore: to < total, hasAfter: from > 1, total }
}
