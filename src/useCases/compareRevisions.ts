import { type CategoryChange, type ChangeCounts, countChanges } from '../core/catalogue/categoryChange.ts'
import { compareCatalogues } from '../core/catalogue/compareCatalogues.ts'
import type { Window } from '../stores/window.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'
import { type Part, partOf } from './part.ts'

/**
 * What differs between two revisions, or a part of it, in the order of the codes, as a way from the first to the second.
 * @throws DomainError unknown-revision
 */
export async function compareRevisions(
  deps: Deps,
  from: number,
  to: number,
  window: Window<string>,
): Promise<Part<CategoryChange> & { readonly counts: ChangeCounts }> {
  const all = compareCatalogues(await catalogueOf(deps, from), await catalogueOf(deps, to))
  const part = await partOf(window, async ({ after = '', before, limit, keep }) => {
    const between = all.filter(({ code }) => code > after && (before === undefined || code < before))
    return keep === 'first' ? between.slice(0, limit) : between.slice(Math.max(between.length - limit, 0))
  })
  return { ...part, counts: countChanges(all) }
}
