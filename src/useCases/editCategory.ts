import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'
import { categoryChange } from '../core/catalogue/categoryChange.ts'
import { checkEdit } from '../core/catalogue/checkEdit.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import type { Revision, RevisionAction } from '../core/catalogue/revision.ts'
import type { Fault } from '../core/fault.ts'
import { authorizeOperator, type Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { storeRevision } from './storeRevision.ts'

/** What every edit of one category says. */
export interface EditOptions {
  /** Why; kept with the revision. */
  readonly reason: string
  /** Whether draw figures may change by more than a factor of three. */
  readonly confirm: boolean
}

/** What an edit of a category that exists says. */
export interface ChangeOptions extends EditOptions {
  /**
   * The revisions that gave the category the states that the editor knows; one of them must be its present one. Null is
   * a state that the editor did not name.
   */
  readonly basedOn: readonly number[] | null
}

export interface EditedCategory {
  readonly category: LabelledCategory
  /** The revision that gave the category its present state. */
  readonly changedIn: number
  readonly catalogueRevision: number
  /** The revision that the edit made; null where nothing changed. */
  readonly revision: Revision | null
}

/** A category as it is to become, and faults of the shape in which it was sent. */
export interface Intended {
  readonly category: Category
  readonly faults?: readonly Fault[]
}

/**
 * The one way by which a single category is edited: the caller's scope, the rules of the trade, large changes, one revision.
 * @param intend what the category is to become, given the newest catalogue
 * @throws DomainError key-required, scope-missing, large-change; FaultyInput; whatever `intend` throws
 */
export async function editCategory(
  deps: Deps,
  sender: Sender,
  { action, reason, confirm }: EditOptions & { readonly action: RevisionAction },
  intend: (newest: Catalogue) => Promise<Intended> | Intended,
): Promise<EditedCategory> {
  const origin = authorizeOperator(sender, 'catalogue:edit')
  let result: { category: Category; changedIn: number } | undefined
  const stored = await storeRevision(deps, {
    action,
    origin,
    reason,
    decide: async (newest) => {
      const { category, faults = [] } = await intend(newest)
      const before = newest.categories.get(category.code) ?? null
      // What only goes out of sight need not follow rules that came after it.
      if (action !== 'retire') checkEdit(newest, category, { confirm, faults })
      const changes = categoryChange(before, category) !== null
      result = { category, changedIn: newest.changedIn.get(category.code) ?? 0 }
      return changes ? [category] : []
    },
  })
  const { category, changedIn } = result!
  return { ...stored, category: labelled(category), changedIn: stored.revision?.number ?? changedIn }
}
