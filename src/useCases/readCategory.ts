import { findCategory, nearestCategories } from '../core/catalogue/findCategory.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { DomainError } from '../core/fault.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

export interface FoundCategory {
  readonly category: LabelledCategory
  /** The revision that gave the category this state; an edit is based on it. */
  readonly changedIn: number
  readonly catalogueRevision: number
}

/**
 * One category by its code, name or alias, and the revision that it was read from.
 * @throws DomainError unknown-category, naming the nearest three; unknown-revision
 */
export async function readCategory(deps: Deps, name: string, revision?: number): Promise<FoundCategory> {
  const catalogue = await catalogueOf(deps, revision)
  const category = findCategory(catalogue, name)
  if (category) {
    const changedIn = catalogue.changedIn.get(category.code)!
    return { category: labelled(category), changedIn, catalogueRevision: catalogue.revision }
  }
  const nearest = nearestCategories(catalogue, name).map(({ code, name: full }) => ({ code, name: full }))
  throw new DomainError(
    'unknown-category',
    `There is no category "${name}". The nearest are: ${nearest.map(({ code }) => code).join(', ')}.`,
    { nearest },
  )
}
