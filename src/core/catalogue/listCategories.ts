import type { Catalogue } from './catalogue.ts'
import type { Category, Group } from './category.ts'
import { plainName } from './findCategory.ts'

export interface CategoryFilter {
  readonly group?: Group | undefined
  /** Words, all of which occur in the code, the name or one alias. */
  readonly search?: string | undefined
  readonly includeRetired?: boolean | undefined
}

/** The categories that a filter lets through, in the order of their codes. */
export function listCategories(catalogue: Catalogue, filter: CategoryFilter): Category[] {
  const words = filter.search === undefined ? [] : plainName(filter.search).split(' ')
  return [...catalogue.categories.values()].filter((category) => {
    if (filter.group !== undefined && category.group !== filter.group) return false
    if (category.retired && filter.includeRetired !== true) return false
    const names = [category.code, category.name, ...category.aliases].map(plainName)
    return words.every((word) => word !== '' && names.some((known) => known.includes(word)))
  })
}
