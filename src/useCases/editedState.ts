import type { Catalogue } from '../core/catalogue/catalogue.ts'
import type { Category } from '../core/catalogue/category.ts'
import { categoryChange } from '../core/catalogue/categoryChange.ts'
import { nearestCategories } from '../core/catalogue/findCategory.ts'
import { labelled } from '../core/catalogue/labelledCategory.ts'
import { DomainError } from '../core/fault.ts'
import type { Deps } from './deps.ts'

/**
 * The category that an editor wants to change, where the editor knows its present state.
 * @param basedOn see ChangeOptions
 * @throws DomainError unknown-category; precondition-required; stale-category, which shows what changed meanwhile
 */
export async function editedState(
  deps: Deps,
  newest: Catalogue,
  code: string,
  basedOn: readonly number[] | null,
): Promise<Category> {
  const category = newest.categories.get(code)
  if (category === undefined) throw unknownCategory(newest, code)
  if (basedOn === null)
    throw new DomainError(
      'precondition-required',
      `Name the state of ${code} that the edit is based on, so that nobody's edit is overwritten unseen.`,
    )
  const changedIn = newest.changedIn.get(code)!
  if (basedOn.includes(changedIn)) return category
  throw await staleCategory(deps, category, changedIn, basedOn[0])
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

async function staleCategory(
  deps: Deps,
  current: Category,
  changedIn: number,
  basedOn: number | undefined,
): Promise<DomainError> {
  const [lastEdit] = await deps.catalogueStore.revisions(changedIn, changedIn)
  const known = basedOn === undefined ? null : await deps.catalogueMemory.at(basedOn)
  const before = known?.categories.get(current.code)
  return new DomainError(
    'stale-category',
    `${current.code} was changed in revision ${changedIn} by ${lastEdit!.author.organisation} ("${lastEdit!.reason}"). ` +
      'Look at what changed, and edit the present state.',
    {
      changedIn,
      lastEdit,
      current: labelled(current),
      // Where the state that the editor names is not known, nobody can say what changed since.
      changes: before ? (categoryChange(before, current)?.fields ?? []) : null,
    },
  )
}
