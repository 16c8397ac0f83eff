import { type CategoryChange, type ChangeCounts, countChanges } from '../core/catalogue/categoryChange.ts'
import { largeChangeRefusal } from '../core/catalogue/checkEdit.ts'
import { compareCatalogues } from '../core/catalogue/compareCatalogues.ts'
import { largeChanges } from '../core/catalogue/largeChanges.ts'
import type { Revision } from '../core/catalogue/revision.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import { basedOnNewest } from './basedOnNewest.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'
import type { ChangeOptions } from './editCategory.ts'
import { storeRevision } from './storeRevision.ts'

export interface RestoredRevision {
  readonly restored: number
  readonly counts: ChangeCounts
  /** The revision that this made; null where the catalogue was as it is wanted already. */
  readonly revision: Revision | null
  readonly catalogueRevision: number
}

/**
 * Makes a new revision in which every category is as it was at an older one, and those that there were none of then are
 * retired. The rules of the trade are not asked again: what once was the catalogue can be so again.
 * @throws DomainError key-required, scope-missing, unknown-revision, precondition-required, stale-revision, large-change
 */
export async function restoreRevision(
  deps: Deps,
  sender: Sender,
  number: number,
  { reason, confirm, basedOn }: ChangeOptions,
): Promise<RestoredRevision> {
  const origin = authorizeOperator(sender, 'catalogue:edit')
  let changes: readonly CategoryChange[] = []
  const stored = await storeRevision(deps, {
    action: 'restore-revision',
    origin,
    reason,
    decide: async (newest) => {
      const past = await catalogueOf(deps, number)
      await basedOnNewest(deps, newest, basedOn)
      changes = compareCatalogues(newest, past)
      const large = changes.flatMap(({ code, before, after }) =>
        before ? largeChanges(before, after).map((change) => ({ category: code, ...change })) : [],
      )
      if (large.length > 0 && !confirm) throw largeChangeRefusal(large)
      return changes.map(({ after }) => after)
    },
  })
  return { restored: number, counts: countChanges(changes), ...stored }
}
