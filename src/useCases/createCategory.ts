import { type CategoryContent, categoryFrom, fixedFieldFaults } from '../core/catalogue/categoryContent.ts'
import { DomainError, FaultyInput, type Submitted } from '../core/fault.ts'
import type { Sender } from './authorize.ts'
import type { Deps } from './deps.ts'
import { type EditedCategory, type EditOptions, editCategory } from './editCategory.ts'

/**
 * Adds a category under a code that was never used.
 * @param options.code where the address names it too, and asks that there be nothing at it
 * @throws DomainError category-exists or, with a code, already-there; what editCategory throws; FaultyInput
 */
export async function createCategory(
  deps: Deps,
  sender: Sender,
  submitted: Submitted<CategoryContent>,
  options: EditOptions & { readonly code?: string },
): Promise<EditedCategory> {
  return editCategory(deps, sender, { ...options, action: 'create' }, (newest) => {
    const content = submitted.value
    const code = options.code ?? content?.code
    if (code !== undefined && newest.categories.has(code))
      throw options.code === undefined ? categoryExists(code) : alreadyThere(code)
    if (content === null) throw new FaultyInput(submitted.faults)
    const faults = [...submitted.faults, ...fixedFieldFaults(content, code ?? content.code, false)]
    return { category: categoryFrom(content, false), faults }
  })
}

const categoryExists = (code: string) =>
  new DomainError(
    'category-exists',
    `There is a category ${code} already; a code is never used twice, also not after the category was retired.`,
    { code },
  )

const alreadyThere = (code: string) =>
  new DomainError(
    'already-there',
    `There is a category ${code} already, and the request asks that there be none.`,
    {
      code,
    },
  )
