import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'
import { categoryChange } from '../core/catalogue/categoryChange.ts'
import { nearestCategories } from '../core/catalogue/findCategory.ts'
import { labelled } from '../core/catalogue/labelledCategory.ts'
import { DomainError } from '../core/fault.ts'
import type { Deps } from './deps.ts'
import { requireKnownState } from './requireKnownState.ts'

/**
 * The category that an editor wants to change, where the editor knows its present state.
 * @param basedOn see ChangeOptions
 * @throws DomainError unknown-category; precondition-required; stale-category, which shows what changed meanwhile
 */
export async function editedState(
  { catalogueStore, catalogueMemory }: Deps,
  newest: Catalogue,
  code: string,
  basedOn: readonly number[] | null,
): Promise<Category> {
  const category = newest.categories.get(code)
  if (category === undefined) throw unknownCategory(newest, code)
  const subject = {
    code,
    staleCode: 'stale-category',
    changedIn: newest.changedIn.get(code)!,
    current: labelled(category),
    revisions: (oldest: number, upTo: number) => catalogueStore.revisions(oldest, upTo),
    changesSince: async (revision: number) => {
      const before = (await catalogueMemory.at(revision))?.categories.get(code)
      return before ? (categoryChange(before, category)?.fields ?? []) : null
    },
  }
  await requireKnownState(subject, basedOn)
  return category
}

/** Edits name a category by its code alone: an alias may lead elsewhere tomorrow. */
function unknownCategory(newest: Catalogue, code: string): DomainError {
  const nearest = nearestCategories(newest, code).map(({ code: near, name }) => ({ code: near, name }))
  return new DomainError(
    'unknown-category',
    `There is no category with the code "${code}". The nearest are: ${nearest.map((near) => near.code).join(', ')}.`,
    { nearest },
  )
}
