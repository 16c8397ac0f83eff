import type { Category } from '../core/catalogue/category.ts'
import { checkCategory } from '../core/catalogue/checkCategory.ts'
import { FaultyInput } from '../core/fault.ts'
import type { Deps } from './deps.ts'
import { storedFirst } from './storedFirst.ts'

const REASON = 'Sample catalogue, loaded once into an empty store'

/**
 * Puts the sample catalogue into an empty store, as revision 1. A catalogue that has any revision is left as it
 * is, so an operator's edits are never overwritten. Two processes that seed at once end with one revision 1.
 * @returns the number of categories stored; 0 where the catalogue was not empty
 * @throws FaultyInput
 */
export async function seedCatalogue(
  { catalogueStore, catalogueMemory, clock }: Deps,
  categories: readonly Category[],
): Promise<number> {
  if ((await catalogueStore.latestRevision()) > 0) return 0
  const faults = categories.flatMap((category, index) => checkCategory(category, `/${index}`))
  if (faults.length > 0) throw new FaultyInput(faults)
  const stored = await storedFirst(catalogueStore, categories, { reason: REASON, at: clock() })
  await catalogueMemory.refresh()
  return stored ? categories.length : 0
}
