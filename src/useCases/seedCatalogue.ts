import type { Category } from '../core/catalogue/category.ts'
import { checkCategory } from '../core/catalogue/checkCategory.ts'
import { DomainError, FaultyInput } from '../core/fault.ts'
import type { Deps } from './deps.ts'

/**
 * Puts the sample catalogue into an empty store, as revision 1. A catalogue that has any revision is left as it
 * is, so an operator's edits are never overwritten. Two processes that seed at once end with one revision 1.
 * @returns the number of categories stored; 0 where the catalogue was not empty
 * @throws FaultyInput
 */
export async function seedCatalogue(deps: Deps, categories: readonly Category[]): Promise<number> {
  if ((await deps.catalogueStore.latestRevision()) > 0) return 0
  const faults = categories.flatMap((category, index) => checkCategory(category, `/${index}`))
  if (faults.length > 0) throw new FaultyInput(faults)
  const stored = await appendFirst(deps, categories)
  await deps.catalogueMemory.refresh()
  return stored ? categories.length : 0
}

/** False where another process stored revision 1 first. */
async function appendFirst(deps: Deps, categories: readonly Category[]): Promise<boolean> {
  const reason = 'Sample catalogue, loaded once into an empty store'
  try {
    await deps.catalogueStore.append(0, categories, {
      action: 'seed',
      origin: null,
      reason,
      at: deps.clock(),
    })
    return true
  } catch (error) {
    if (error instanceof DomainError && error.code === 'stale-revision') return false
    throw error
  }
}
