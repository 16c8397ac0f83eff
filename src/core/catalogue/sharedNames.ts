import type { Category } from './category.ts'
import { plainName } from './findCategory.ts'

export interface SharedName {
  /** As look-up compares it: small letters, single spaces. */
  readonly name: string
  /** Codes of the categories that all answer to it. */
  readonly codes: readonly string[]
}

/**
 * Names that more than one category answers to, by code, name or alias. Look-up gives such a name to one of them
 * (see findCategory.ts), so that the others cannot be found by it.
 */
export function sharedNames(categories: Iterable<Category>): SharedName[] {
  const owners = new Map<string, Set<string>>()
  for (const { code, name, aliases } of categories)
    for (const known of [code, name, ...aliases].map(plainName))
      owners.set(known, (owners.get(known) ?? new Set()).add(code))
  return [...owners]
    .filter(([, codes]) => codes.size > 1)
    .map(([name, codes]) => ({ name, codes: [...codes] }))
}
