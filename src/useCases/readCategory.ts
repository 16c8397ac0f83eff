import { findCategory, nearestCategories } from '../core/catalogue/findCategory.ts'
import { type LabelledCategory, labelled } from '../core/catalogue/labelledCategory.ts'
import { DomainError } from '../core/fault.ts'
import { catalogueOf } from './catalogueOf.ts'
import type { Deps } from './deps.ts'

/**
 * One category by its code, name or alias, and the revision that it was read from.
 * @throws DomainError unknown-category, naming the nearest three; unknown-revision
 */
export async function readCategory(
  deps: Deps,
  name: string,
  revision?: number,
): Promise<{ category: LabelledCategory; catalogueRevision: number }> {
  const catalogue = await catalogueOf(deps, revision)
  const category = findCategory(catalogue, name)
  if (category) return { category: labelled(category), catalogueRevision: catalogue.revision }
  const nearest = nearestCategories(catalogue, name).map(({ code, name: full }) => ({ code, name: full }))
  throw new DomainError(
    'unknown-category',
    `There is no category "${name}". The nearest are: ${nearest.map(({ code }) => code).join(', ')}.`,
    { nearest },
  )
}
